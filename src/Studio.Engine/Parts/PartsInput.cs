using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>What the parts to cut and fit are worked out from.</summary>
public sealed record PartsInput
{
    /// <summary>The mould; null while it cannot be made.</summary>
    public MouldBody? Mould { get; init; }

    /// <summary>The box that keeps room for lights.</summary>
    public FormerSpec? Former { get; init; }

    public CutSpec Cut { get; init; } = new();

    /// <summary>Null where nothing closes the opening.</summary>
    public CoverSpec? Cover { get; init; }

    /// <summary>Null where the piece stands without feet.</summary>
    public FeetSpec? Feet { get; init; }

    public IReadOnlyList<FittingSpec> Fittings { get; init; } = [];

    /// <summary>Null where nothing was said of current and cells.</summary>
    public LightSpec? Light { get; init; }
}

/// <summary>The sheet and how it is cut.</summary>
public sealed record CutSpec
{
    /// <summary>Thickness of the sheet [mm]; null for that of the former's wall.</summary>
    public double? SheetMm { get; init; }

    /// <summary>What the blade or beam takes away [mm].</summary>
    public double KerfMm { get; init; } = 1;

    /// <summary>Width of a whole sheet [mm].</summary>
    public double SheetWidthMm { get; init; } = 600;

    /// <summary>Height of a whole sheet as it lies [mm].</summary>
    public double SheetHeightMm { get; init; } = 300;

    /// <summary>Which pair of sides runs through, the other sitting between it: a key of <see cref="Through"/>.</summary>
    public string Through { get; init; } = Parts.Through.Width;

    /// <summary>How far the box stands above the rim, to be planed off before closing [mm].</summary>
    public double ProudMm { get; init; } = 1;

    /// <summary>A plate inside closes the box at its lower end.</summary>
    public bool FloorPlate { get; init; }

    /// <summary>Parts may lie turned by a quarter on the sheet; false where a grain must run one way.</summary>
    public bool MayTurn { get; init; } = true;

    /// <summary>One diagonal as measured on the box put together, outside [mm]; null where nobody measured.</summary>
    public double? OneDiagonalMm { get; init; }

    /// <summary>The other one [mm].</summary>
    public double? OtherDiagonalMm { get; init; }
}

/// <summary>Which pair of the box's sides runs through at the butt joints.</summary>
public static class Through
{
    /// <summary>Front and back are as wide as the box; the ends sit between them.</summary>
    public const string Width = "width";

    /// <summary>The ends are as deep as the box; front and back sit between them.</summary>
    public const string Depth = "depth";
}

/// <summary>The plate that closes the opening, and what holds it.</summary>
public sealed record CoverSpec
{
    /// <summary>Thickness of the plate [mm]; null for the box's own sheet.</summary>
    public double? SheetMm { get; init; }

    /// <summary>How far it reaches beyond the opening on every side, or how wide the recess's ledge is [mm].</summary>
    public double OverlapMm { get; init; } = 14;

    /// <summary>Let into a recess of that width, flush with the base; else it lies on the base.</summary>
    public bool Recessed { get; init; }

    /// <summary>Gap between plate and recess on every side [mm].</summary>
    public double GapMm { get; init; } = 0.5;

    /// <summary>A key of <see cref="HeldBy"/>.</summary>
    public string HeldBy { get; init; } = Parts.HeldBy.Screws;

    /// <summary>A key of <see cref="HolesAt"/>.</summary>
    public string HolesAt { get; init; } = Parts.HolesAt.Corners;

    /// <summary>Hole in the plate through which the screw passes [mm]. 3.5 for a 3 mm screw: common practice, no source.</summary>
    public double ScrewHoleMm { get; init; } = 3.5;

    /// <summary>Pilot hole in the base [mm]. 2 for a 3 mm screw: common practice, no source.</summary>
    public double PilotMm { get; init; } = 2;

    /// <summary>Depth of the pilot hole [mm].</summary>
    public double PilotDepthMm { get; init; } = 10;

    /// <summary>From the plate's edge out to a turn button's screw [mm].</summary>
    public double ButtonOffMm { get; init; } = 6;
}

/// <summary>What holds a cover.</summary>
public static class HeldBy
{
    /// <summary>Screws through the plate into the base.</summary>
    public const string Screws = "screws";

    /// <summary>Turn buttons screwed to the base beside the plate.</summary>
    public const string Buttons = "buttons";

    /// <summary>No holes.</summary>
    public const string Nothing = "nothing";
}

/// <summary>Where a cover is held.</summary>
public static class HolesAt
{
    public const string Corners = "corners";

    /// <summary>The middles of the left and the right side.</summary>
    public const string TwoSides = "two-sides";

    /// <summary>The middles of all four sides.</summary>
    public const string FourSides = "four-sides";
}

/// <summary>Feet under the base, one in every corner.</summary>
public sealed record FeetSpec
{
    public double DiameterMm { get; init; } = 10;

    /// <summary>From the base's edges to the foot's own edge [mm].</summary>
    public double InsetMm { get; init; } = 4;
}

/// <summary>A thing that must find room in the cavity, as a box.</summary>
public sealed record FittingSpec
{
    public string Name { get; init; } = "";

    public double WidthMm { get; init; }

    public double DepthMm { get; init; }

    public double HeightMm { get; init; }

    /// <summary>Room kept free all round [mm].</summary>
    public double ClearanceMm { get; init; } = 1;
}

/// <summary>What the light draws and what feeds it.</summary>
public sealed record LightSpec
{
    /// <summary>Drawn by all lamps together [mA].</summary>
    public double CurrentMa { get; init; }

    /// <summary>A key of <see cref="Cells.All"/>, or <c>own</c>.</summary>
    public string Cell { get; init; } = "aa";

    /// <summary>Cells one behind the other: their volts add up.</summary>
    public int Series { get; init; } = 3;

    /// <summary>Such rows side by side: their capacities add up.</summary>
    public int Parallel { get; init; } = 1;

    /// <summary>For <c>own</c>: capacity of one cell [mAh].</summary>
    public double? CapacityMah { get; init; }

    /// <summary>For <c>own</c>: the load it was stated at [mA].</summary>
    public double? AtMa { get; init; }

    /// <summary>For <c>own</c>: where that is printed.</summary>
    public string Source { get; init; } = "";
}
