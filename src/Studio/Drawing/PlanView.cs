using Studio.Engine.Layers;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>A round hole in plan, such as for a cable or a screw.</summary>
public sealed record PlanHole(string Name, double XMm, double YMm, double DiameterMm);

/// <summary>A sheet seen from above.</summary>
/// <param name="Rings">Outlines and holes, or its two ends where it stands upright and is seen on edge.</param>
/// <param name="Filled">True where its face is seen.</param>
public sealed record PlanFilm(string Name, IReadOnlyList<IReadOnlyList<PlanPoint>> Rings, bool Filled);

/// <summary>A piece seen from above, to scale in mm: x to the right, y away from the viewer.</summary>
public sealed record PlanView
{
    private const double EdgeMm = 0.5;
    private const int Looks = 40;

    /// <summary>Such as "Pyramid".</summary>
    public required string MouldName { get; init; }

    /// <summary>The height it is cut at, as it stands for casting [mm].</summary>
    public required double AtMm { get; init; }

    /// <summary>That height is the rim.</summary>
    public required bool AtRim { get; init; }

    /// <summary>The mould's inside at that height: outlines and holes.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanPoint>> Outline { get; init; }

    /// <summary>The inside at the rim where another height is shown, at the bottom, and where the mould is widest if that is neither.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanPoint>> Beyond { get; init; }

    /// <summary>The layer one looks down on: the one that stands at that height, else the topmost below it; null where nothing is below.</summary>
    public SectionLayer? Layer { get; init; }

    /// <summary>The surface one looks down on, at that height or below it.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanPoint>> Surface { get; init; }

    /// <summary>The box that keeps room for lights; null where the height lies below it.</summary>
    public FormerSpec? Former { get; init; }

    /// <summary>Resin stands inside the former at that height.</summary>
    public bool ResinInFormer { get; init; }

    public IReadOnlyList<PlanFilm> Sheets { get; init; } = [];

    public IReadOnlyList<PlanHole> Holes { get; init; } = [];

    /// <summary>The outline is made up: a water fill alone says how large it is.</summary>
    public required bool Unknown { get; init; }

    /// <summary>What the drawing shows, in a sentence or two.</summary>
    public string Words => PlanWords.Of(this);

    /// <summary>Least and greatest coordinates of the outline [mm].</summary>
    public (PlanPoint Low, PlanPoint High) Extent => Bounds(Outline);

    /// <summary>Least and greatest coordinates of everything drawn [mm].</summary>
    public (PlanPoint Low, PlanPoint High) Whole => Bounds(Outline.Concat(Beyond).Concat(Surface).Concat(Sheets.SelectMany(s => s.Rings)));

    /// <summary>Seen from above at a height.</summary>
    /// <param name="view">The piece.</param>
    /// <param name="atMm">As it stands for casting; null for the rim.</param>
    /// <param name="holes">Holes to show.</param>
    public static PlanView Of(SectionView view, double? atMm = null, IReadOnlyList<PlanHole>? holes = null)
    {
        var at = Math.Clamp(atMm ?? view.HeightMm, 0, view.HeightMm);
        var rim = at >= view.HeightMm - 1e-9;
        var former = view.FormerSpec is { } f && f.FromMm < view.HeightMm && (at > f.FromMm || rim) ? f : null;
        var layer = view.Bands.Where(b => !b.Empty).Select(b => b.Layer).LastOrDefault(l => l.FromMm < at);
        return new PlanView
        {
            MouldName = view.MouldName,
            AtMm = at,
            AtRim = rim,
            Outline = Cut(view.Mould, at),
            Beyond = [.. rim ? [] : Cut(view.Mould, view.HeightMm), .. at <= 0 ? [] : Cut(view.Mould, 0), .. Widest(view.Mould) is { } wide ? Cut(view.Mould, wide) : []],
            Layer = layer,
            Surface = layer is null ? [] : Cut(view.Mould, Math.Min(at, layer.ToMm)),
            Former = former,
            ResinInFormer = former is { Solid: false, FloorMm: { } floor } && at <= floor,
            Sheets = [.. view.SheetsInSpace.Select(From)],
            Holes = holes ?? [],
            Unknown = view.Mould.Shape.Needs is MouldNeeds.Readings,
        };
    }

    // a mould that narrows towards its rim: a sphere, a vase
    private static double? Widest(MouldBody mould)
    {
        var heights = mould.Shape.Needs == MouldNeeds.Mesh ? [.. Enumerable.Range(0, Looks + 1).Select(k => mould.HeightMm * k / Looks)] : mould.SurfaceHeightsMm;
        var widest = heights.MaxBy(mould.AreaMm2);
        return mould.AreaMm2(widest) > 1.02 * Math.Max(mould.AreaMm2(0), mould.AreaMm2(mould.HeightMm)) ? widest : null;
    }

    private static PlanFilm From(DrawnFilm sheet)
    {
        var (rings, filled) = FlatLine.Of(sheet.Rings.Select(r => r.Select(p => (p.X, p.Y))), EdgeMm);
        return new PlanFilm(sheet.Name, [.. rings.Select(r => (IReadOnlyList<PlanPoint>)[.. r.Select(p => new PlanPoint(p.X, p.Y))])], filled);
    }

    private static IReadOnlyList<IReadOnlyList<PlanPoint>> Cut(MouldBody mould, double atMm)
    {
        if (mould.Shape.Needs == MouldNeeds.Mesh)
        {
            return [.. MeshSlab.Area(mould.Surface(), atMm, fromBelow: atMm > 0).Simpler(SectionView.FineMm).Rings.Select(r => (IReadOnlyList<PlanPoint>)[.. r.Select(p => new PlanPoint(p.U, p.V))])];
        }

        var corners = mould.Outline.PlanAt(atMm);
        return corners.Max(p => Math.Max(Math.Abs(p.XMm), Math.Abs(p.YMm))) > 1e-9 ? [corners] : [];
    }

    private static (PlanPoint Low, PlanPoint High) Bounds(IEnumerable<IReadOnlyList<PlanPoint>> rings)
    {
        var all = rings.SelectMany(r => r).ToList();
        return all.Count == 0 ? default : (new(all.Min(p => p.XMm), all.Min(p => p.YMm)), new(all.Max(p => p.XMm), all.Max(p => p.YMm)));
    }
}
