using System.Runtime.InteropServices;
using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>Everything to cut and fit. A part that cannot be worked out is null, and <see cref="Errors"/> says why; the others stand.</summary>
public sealed record PartsPlan
{
    /// <summary>The box of sheet; null for a solid former too.</summary>
    public BoxPlan? Box { get; init; }

    /// <summary>The room that is left for fittings.</summary>
    public CavityPlan? Cavity { get; init; }

    public CoverPlan? Cover { get; init; }

    public IReadOnlyList<FootPlace> Feet { get; init; } = [];

    /// <summary>The base's outline at the mould's rim, as it is seen from below when the piece stands [mm].</summary>
    public IReadOnlyList<PlanPoint> Base { get; init; } = [];

    /// <summary>Every part, one row a kind.</summary>
    public IReadOnlyList<SheetPart> Parts { get; init; } = [];

    /// <summary>How they lie on whole sheets, one for each thickness.</summary>
    public IReadOnlyList<SheetUse> Sheets { get; init; } = [];

    public FitPlan? Fit { get; init; }

    public LightPlan? Light { get; init; }

    public IReadOnlyList<InputError> Errors { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>The box put together.</summary>
/// <param name="HeightMm">Of its walls, with what stands proud of the rim [mm].</param>
/// <param name="DiagonalMm">Corner to corner outside when it is square: √(w² + d²) [mm].</param>
/// <param name="LeanPerMm">How far a side leans out of square over the depth for every millimetre between the two diagonals [mm/mm].</param>
/// <param name="WallMl">Volume of its walls below the rim [ml].</param>
public sealed record BoxPlan(double OuterWidthMm, double OuterDepthMm, double InnerWidthMm, double InnerDepthMm, double SheetMm, double HeightMm, double DiagonalMm, double LeanPerMm, double WallMl);

/// <summary>The room inside the box [mm], from what lies at its bottom to the rim or the cover's underside.</summary>
public sealed record CavityPlan(double WidthMm, double DepthMm, double HeightMm);

/// <summary>A rectangle to cut, its size the finished one: the cut runs half a kerf outside its line.</summary>
/// <param name="Key">Stable name, such as <c>front-and-back</c>.</param>
/// <param name="Count">How many alike.</param>
/// <param name="Holes">From the part's lower left corner.</param>
public sealed record SheetPart(string Key, string Name, int Count, double WidthMm, double HeightMm, double SheetMm, IReadOnlyList<PartHole> Holes);

/// <summary>A hole in a part, from its lower left corner [mm].</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PartHole(string Key, double XMm, double YMm, double DiameterMm);

/// <summary>A part as it lies on a sheet, from the sheet's lower left corner [mm].</summary>
/// <param name="Number">Which of the alike, from 1.</param>
/// <param name="Turned">By a quarter.</param>
public sealed record PlacedPart(SheetPart Part, int Number, double XMm, double YMm, bool Turned)
{
    public double WidthMm => Turned ? Part.HeightMm : Part.WidthMm;

    public double HeightMm => Turned ? Part.WidthMm : Part.HeightMm;
}

/// <summary>Whole sheets of one thickness and what lies on each.</summary>
/// <param name="UsedPercent">Share of the sheets' area that becomes parts [%].</param>
/// <param name="TooLarge">Parts that no sheet holds.</param>
public sealed record SheetUse(double SheetMm, double WidthMm, double HeightMm, IReadOnlyList<IReadOnlyList<PlacedPart>> Sheets, double UsedPercent, IReadOnlyList<SheetPart> TooLarge);

/// <summary>The plate over the opening.</summary>
/// <param name="RecessWidthMm">Width of the recess where it is let in, else null.</param>
/// <param name="Holds">Where screws or turn buttons go into the base, from its middle.</param>
public sealed record CoverPlan(double WidthMm, double DepthMm, double SheetMm, double OpeningWidthMm, double OpeningDepthMm, double? RecessWidthMm, double? RecessDepthMm, IReadOnlyList<HoldPlace> Holds);

/// <summary>A pilot hole in the base, from the base's middle [mm].</summary>
/// <param name="Name">In words, such as 'back left'.</param>
/// <param name="ToOpeningMm">From its middle to the opening [mm].</param>
/// <param name="ToFaceMm">From its axis to the nearest face, square to it, anywhere along its depth [mm]; negative where it breaks through.</param>
/// <param name="Stands">Far enough from every edge.</param>
public sealed record HoldPlace(string Key, string Name, double XMm, double YMm, double PilotMm, double ToOpeningMm, double ToFaceMm, bool Stands);

/// <summary>A foot, from the base's middle [mm].</summary>
public sealed record FootPlace(double XMm, double YMm, double DiameterMm, bool Stands);

/// <summary>Whether the fittings find room together.</summary>
/// <param name="Places">Where each stands, from the cavity's left, front and bottom; empty when they do not fit.</param>
public sealed record FitPlan(bool Fits, IReadOnlyList<FittingPlace> Places);

/// <summary>A fitting in the cavity as it is turned there: its own size and its nearest corner, clearance left free around it [mm].</summary>
public sealed record FittingPlace(int Index, string Name, double XMm, double YMm, double ZMm, double WidthMm, double DepthMm, double HeightMm);

/// <summary>How long the light burns on one set of cells.</summary>
/// <param name="FromHours">By the more careful capacity [h].</param>
/// <param name="ToHours">By the other one, the same where there is only one [h].</param>
/// <param name="CellMa">Load on each cell [mA].</param>
/// <param name="Volts">Of the whole set, nominal; null for a cell of the maker's own.</param>
/// <param name="RestsOn">The capacities taken, each with its load and source.</param>
public sealed record LightPlan(double FromHours, double ToHours, double CellMa, double? Volts, IReadOnlyList<string> RestsOn);
