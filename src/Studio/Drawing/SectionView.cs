using System.Runtime.InteropServices;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>How far a layer is; said in words and by pattern before colour.</summary>
public enum LayerState
{
    /// <summary>Drawn, not yet poured: pale, with a dashed line.</summary>
    Planned,

    /// <summary>In the mould and past its curing: full colour.</summary>
    Poured,

    /// <summary>In the mould and curing: full colour, hatched.</summary>
    Curing,

    /// <summary>The one the page is about: thick line.</summary>
    Now,
}

/// <summary>A point of the section [mm]: x from the middle axis to the right, z upwards from the lowest line drawn.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SectionPoint(double XMm, double ZMm);

/// <summary>One layer as it is drawn. Heights count from the mould's lowest inner point as it stands for casting [mm].</summary>
/// <param name="Colour">Such as <c>#7a5c99</c>.</param>
/// <param name="Note">A second line under its name, such as "412 g"; may be empty.</param>
/// <param name="Key">What a page knows it by; handed back when its line is moved.</param>
public sealed record SectionLayer(string Name, double FromMm, double ToMm, string Colour, LayerState State, string Note = "", int Key = 0)
{
    /// <summary>Loose filling is in it: drawn with specks.</summary>
    public bool Scatter { get; init; }

    /// <summary>Names of what is set in by hand, each drawn as a small plate.</summary>
    public IReadOnlyList<string> Placed { get; init; } = [];

    /// <summary>It lies open on the page: drawn with a thick line.</summary>
    public bool Picked { get; init; }

    /// <summary>The line at its top may be moved.</summary>
    public bool Movable { get; init; }
}

/// <summary>A layer with its outlines in the section, already turned over when the view is; inside is what an odd number of them encloses.</summary>
public sealed record SectionBand(SectionLayer Layer, int Number, IReadOnlyList<IReadOnlyList<SectionPoint>> Rings)
{
    /// <summary>Nothing of it lies in the mould.</summary>
    public bool Empty => Rings.Count == 0;
}

/// <summary>A part of the former in section, left out of the resin.</summary>
/// <param name="Open">True for the room it keeps free, false for its solid walls.</param>
public sealed record SectionBox(double LeftMm, double RightMm, double LowMm, double HighMm, bool Open);

/// <summary>A piece cut through the middle, to scale in mm: what every drawing of a piece, on a page or on paper, is made from.</summary>
public sealed record SectionView
{
    /// <summary>A chord may miss a curved wall by this much: thinner than a line on paper.</summary>
    public const double FineMm = 0.02;

    /// <summary>The same for a drawing of a thumb's size, where a millimetre is less than a pixel.</summary>
    public const double SmallMm = 0.4;

    /// <summary>Such as "Pyramid".</summary>
    public required string MouldName { get; init; }

    /// <summary>From the lowest inner point to the rim [mm].</summary>
    public required double HeightMm { get; init; }

    /// <summary>The greatest width of the section [mm].</summary>
    public required double WidestMm { get; init; }

    /// <summary>True as it stands in the mould for casting, false as the family will see it, turned over.</summary>
    public required bool AsStands { get; init; }

    /// <summary>The leftmost x of the section [mm].</summary>
    public required double LeftMm { get; init; }

    /// <summary>The inside of the mould: outlines and holes.</summary>
    public required IReadOnlyList<IReadOnlyList<SectionPoint>> Outline { get; init; }

    /// <summary>In pouring order.</summary>
    public required IReadOnlyList<SectionBand> Bands { get; init; }

    public required IReadOnlyList<SectionBox> Former { get; init; }

    /// <summary>Photographs and other sheets, as this drawing sees them.</summary>
    public IReadOnlyList<SectionFilm> Sheets { get; init; } = [];

    /// <summary>The former's outer size in words of a drawing [mm]; null without one.</summary>
    public FormerSpec? FormerSpec { get; init; }

    /// <summary>Height of the centre of mass as it stands for casting [mm]; drawn where it is given.</summary>
    public double? CentreOfMassMm { get; init; }

    /// <summary>What it was made from, for a plan and for a view that turns.</summary>
    public required MouldBody Mould { get; init; }

    /// <summary>The sheets in space, as it stands for casting.</summary>
    public IReadOnlyList<DrawnFilm> SheetsInSpace { get; init; } = [];

    /// <summary>Where a height, as it stands for casting, runs inside the mould, from left to right [mm].</summary>
    public required Func<double, IReadOnlyList<(double Left, double Right)>> SpansMm { get; init; }

    /// <summary>What the drawing shows, in one sentence.</summary>
    public string Words => SectionWords.Of(this);

    /// <summary>What a reader must know of the outline, such as that nobody knows it; empty for most.</summary>
    public string Caveat => SectionWords.Caveat(this);

    /// <summary>The rightmost x of the section [mm].</summary>
    public double RightMm => LeftMm + WidestMm;

    /// <summary>Leftmost and rightmost x at a height as it stands for casting [mm]; both zero where nothing is inside.</summary>
    public (double Left, double Right) SpanMm(double castZMm) => SpansMm(castZMm) is { Count: > 0 } spans ? (spans[0].Left, spans[^1].Right) : (0, 0);

    /// <summary>Full width of the section at a height as it stands for casting [mm].</summary>
    public double WidthMm(double castZMm)
    {
        var (left, right) = SpanMm(castZMm);
        return right - left;
    }

    /// <summary>Where a height of the casting is drawn [mm from the lowest line].</summary>
    public double Drawn(double castZMm) => AsStands ? castZMm : HeightMm - castZMm;

    /// <summary>The same piece the other way up.</summary>
    public SectionView TurnedOver() => For(Mould, Bands.Select(b => b.Layer), FormerSpec, !AsStands, SheetsInSpace) with { CentreOfMassMm = CentreOfMassMm };

    /// <summary>The casting without the part of the mould that stays empty; what stands in it is cut at its top.</summary>
    public SectionView CastOnly()
    {
        var top = Bands.Where(b => !b.Empty).Select(b => Math.Min(b.Layer.ToMm, HeightMm)).DefaultIfEmpty(HeightMm).Max();
        var rings = SectionCut.Of(Mould, FineMm).Between(0, top);
        return this with
        {
            Sheets = [.. Sheets.Select(s => AsStands ? s.Between(0, top) : s.Between(HeightMm - top, HeightMm))],
            Outline = AsStands ? rings : [.. rings.Select(r => (IReadOnlyList<SectionPoint>)[.. r.Select(p => p with { ZMm = HeightMm - p.ZMm })])],
            Former = [.. Former.Select(b => AsStands ? b with { HighMm = Math.Min(b.HighMm, top) } : b with { LowMm = Math.Max(b.LowMm, HeightMm - top) }).Where(b => b.HighMm > b.LowMm)],
        };
    }

    /// <summary>Makes the view from the engine's mould.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="layers">In pouring order; what reaches beyond the mould is cut at its rim.</param>
    /// <param name="former">The box that keeps room for lights, or null.</param>
    /// <param name="asStands">False turns it over: open top down, as the finished piece stands.</param>
    /// <param name="sheets">Photographs, in space as it stands for casting.</param>
    /// <param name="toleranceMm">How far a curved wall's chords may lie from it; <see cref="SmallMm"/> for a drawing of a thumb's size.</param>
    public static SectionView For(MouldBody mould, IEnumerable<SectionLayer> layers, FormerSpec? former = null, bool asStands = true, IEnumerable<DrawnFilm>? sheets = null, double toleranceMm = FineMm)
    {
        var cut = SectionCut.Of(mould, toleranceMm);
        var (left, right) = cut.Extent;
        IReadOnlyList<DrawnFilm> inSpace = [.. sheets ?? []];
        return new SectionView
        {
            Mould = mould,
            MouldName = mould.DisplayName,
            HeightMm = mould.HeightMm,
            LeftMm = left,
            WidestMm = right - left,
            AsStands = asStands,
            Outline = Turn(cut.Between(0, mould.HeightMm)),
            Bands = [.. layers.Select((l, i) => new SectionBand(l, i + 1, Turn(cut.Between(l.FromMm, l.ToMm))))],
            Former = former is null ? [] : [.. cut.Boxes(former).Select(b => asStands ? b : b with { LowMm = mould.HeightMm - b.HighMm, HighMm = mould.HeightMm - b.LowMm })],
            FormerSpec = former,
            Sheets = [.. inSpace.Select(SectionFilm.Of).Select(s => s with { Rings = Turn(s.Rings) })],
            SheetsInSpace = inSpace,
            SpansMm = cut.Spans,
        };

        IReadOnlyList<IReadOnlyList<SectionPoint>> Turn(IReadOnlyList<IReadOnlyList<SectionPoint>> rings) => asStands ? rings : [.. rings.Select(Turned)];

        IReadOnlyList<SectionPoint> Turned(IReadOnlyList<SectionPoint> points) => asStands ? points : [.. points.Select(p => p with { ZMm = mould.HeightMm - p.ZMm })];
    }

    /// <summary>As <see cref="For(MouldBody, IEnumerable{SectionLayer}, FormerSpec?, bool, IEnumerable{DrawnFilm}?, double)"/>, from a mould's description; null when it cannot be made.</summary>
    public static SectionView? For(MouldSpec mould, IEnumerable<SectionLayer> layers, FormerSpec? former = null, bool asStands = true, IEnumerable<DrawnFilm>? sheets = null, double toleranceMm = FineMm) =>
        MouldShapes.Make(mould) is { Ok: true } made ? For(made.Value, layers, former, asStands, sheets, toleranceMm) : null;
}
