using System.Globalization;
using System.Runtime.CompilerServices;
using Studio.Engine.Meshes;

namespace Studio.Drawing;

/// <summary>A piece in space, made from the mould's own surface cut at the layers' heights, small enough to be sent to a browser.</summary>
public sealed class TurningScene
{
    /// <summary>A surface of more triangles than this is shown with fewer.</summary>
    public const int MostTriangles = 60_000;

    private const double SharpDegrees = 25;

    private static readonly ConditionalWeakTable<TriangleMesh, TriangleMesh> Thinned = [];

    private readonly List<TurningPart> parts = [];
    private readonly SectionView view;
    private readonly TriangleMesh surface;
    private readonly Point3 middle;
    private readonly double radius;
    private readonly double fillMm;

    private TurningScene(SectionView view)
    {
        this.view = view;
        var whole = view.Mould.Surface();
        surface = Thinned.GetValue(whole, m => MeshThinning.ToAtMost(m, MostTriangles));
        Lighter = !ReferenceEquals(whole, surface);
        var (low, high) = surface.Bounds();
        middle = (low + high) * 0.5;
        radius = Math.Max(Enumerable.Range(0, surface.VertexCount).Select(i => (surface.Vertex(i) - middle).Length).DefaultIfEmpty(0).Max(), 1e-6);
        fillMm = view.Bands.Where(b => !b.Empty).Select(b => Math.Min(b.Layer.ToMm, view.HeightMm)).DefaultIfEmpty(0).Max();
        AddLayers();
        AddMould();
        AddFormer();
        AddSheets();
    }

    /// <summary>In no particular order.</summary>
    public IReadOnlyList<TurningPart> Parts => parts;

    /// <summary>The mesh has more triangles than are shown.</summary>
    public bool Lighter { get; }

    /// <summary>Makes the scene of a piece, the way up that the view shows it.</summary>
    public static TurningScene Of(SectionView view) => new(view);

    /// <summary>The same for two views that look the same, so that nothing is made or sent twice.</summary>
    public static string Key(SectionView view) => string.Join('|',
        [
            view.Mould.Shape.Key,
            .. new[] { view.HeightMm, view.WidestMm, view.LeftMm, view.Mould.AreaMm2(view.HeightMm / 3), view.Mould.AreaMm2(view.HeightMm / 2), view.Mould.AreaMm2(view.HeightMm) }.Select(n => n.ToString("R", CultureInfo.InvariantCulture)),
            view.AsStands.ToString(),
            .. view.Bands.Select(b => string.Create(CultureInfo.InvariantCulture, $"{b.Layer.FromMm:R} {b.Layer.ToMm:R} {b.Layer.Colour} {b.Layer.State}")),
            view.FormerSpec?.ToString() ?? "",
            .. view.SheetsInSpace.SelectMany(s => s.Rings).SelectMany(r => r).Select(p => p.ToString()),
        ]);

    private void AddLayers()
    {
        foreach (var band in view.Bands.Where(b => !b.Empty))
        {
            var l = band.Layer;
            var (low, high) = (Math.Max(l.FromMm, 0), Math.Min(l.ToMm, view.HeightMm));
            var (colour, strength) = (SectionDrawing.Colour(l.Colour), l.State is LayerState.Planned ? 0.42 : 0.66);
            Add(TurningKind.Layer, colour, strength, MeshSlab.WallBetween(surface, low, high));
            if (low <= 0)
            {
                Add(TurningKind.Layer, colour, strength, MeshSlab.Face(MeshSlab.Area(surface, 0, fromBelow: false), 0, up: false));
            }

            var top = MeshSlab.Area(surface, high);
            Add(TurningKind.Top, colour, strength, MeshSlab.Face(top.Less(Former(high)), high, up: true));
            AddLines(top.Rings.SelectMany(r => r.Zip(r.Skip(1).Append(r[0]))).Select(e => (new Point3(e.First.U, e.First.V, high), new Point3(e.Second.U, e.Second.V, high))), 0.8);
        }
    }

    // what stays empty of the mould is glass; a piece that has been turned over has left its mould
    private void AddMould()
    {
        if (view.AsStands && fillMm < view.HeightMm)
        {
            Add(TurningKind.Glass, "", 0.1, MeshSlab.WallBetween(surface, fillMm, view.HeightMm));
            AddLines(MeshSlab.Area(surface, view.HeightMm).Rings.SelectMany(r => r.Zip(r.Skip(1).Append(r[0]))).Select(e => (new Point3(e.First.U, e.First.V, view.HeightMm), new Point3(e.Second.U, e.Second.V, view.HeightMm))), 0.9);
        }

        if (!Lighter)
        {
            var to = view.AsStands ? view.HeightMm : fillMm;
            AddLines(MeshEdges.Sharp(surface, SharpDegrees).Where(e => Math.Min(e.A.Z, e.B.Z) < to).Select(e => (Below(e.A, e.B, to), Below(e.B, e.A, to))), 0.9);
        }
    }

    private void AddFormer()
    {
        if (view.FormerSpec is not { } f || !(f.FromMm < view.HeightMm) || view.Former.Count == 0)
        {
            return;
        }

        var high = view.AsStands ? view.HeightMm : Math.Max(fillMm, f.FromMm);
        Add(TurningKind.Former, "", 1, Box(f.OuterWidthMm, f.OuterDepthMm, f.FromMm, high));
        if (!f.Solid && f.WallMm is { } wall)
        {
            var floor = f.FloorMm ?? f.FromMm;
            Add(TurningKind.Former, "", 1, Box(f.OuterWidthMm - (2 * wall), f.OuterDepthMm - (2 * wall), floor, high));
            Add(TurningKind.Former, "", 1, MeshSlab.Face(FlatArea.Rectangle(f.OuterWidthMm - (2 * wall), f.OuterDepthMm - (2 * wall)), floor, up: true));
            Add(TurningKind.Former, "", 1, MeshSlab.Face(FlatArea.Rectangle(f.OuterWidthMm, f.OuterDepthMm).Less(FlatArea.Rectangle(f.OuterWidthMm - (2 * wall), f.OuterDepthMm - (2 * wall))), high, up: true));
        }
        else
        {
            Add(TurningKind.Former, "", 1, MeshSlab.Face(FlatArea.Rectangle(f.OuterWidthMm, f.OuterDepthMm), high, up: true));
        }

        Add(TurningKind.Former, "", 1, MeshSlab.Face(FlatArea.Rectangle(f.OuterWidthMm, f.OuterDepthMm), f.FromMm, up: false));
        AddLines(Edges(f.OuterWidthMm, f.OuterDepthMm, f.FromMm, high), 0.8);
    }

    private void AddSheets()
    {
        foreach (var sheet in view.SheetsInSpace)
        {
            Add(TurningKind.Sheet, "#E6CFA0", 0.95, sheet.Face());
            AddLines(sheet.Rings.SelectMany(r => r.Zip(r.Skip(1).Append(r[0]))), 1);
        }
    }

    private void Add(TurningKind kind, string colour, double strength, TriangleMesh mesh)
    {
        if (mesh.TriangleCount > 0)
        {
            parts.Add(TurningPart.Of(kind, colour, strength, mesh, Place));
        }
    }

    private void AddLines(IEnumerable<(Point3 A, Point3 B)> lines, double strength)
    {
        var ends = lines.SelectMany(l => new[] { l.A, l.B }).ToList();
        if (ends.Count > 0)
        {
            parts.Add(TurningPart.Of(TurningKind.Line, "", strength, new TriangleMesh([.. ends.SelectMany(p => new[] { p.X, p.Y, p.Z })], [.. Enumerable.Range(0, ends.Count)]), Place));
        }
    }

    // turned over it is turned about the x axis, which keeps the facets' outsides outside
    private Point3 Place(Point3 p)
    {
        var q = (p - middle) * (1 / radius);
        return view.AsStands ? q : new Point3(q.X, -q.Y, -q.Z);
    }

    private FlatArea Former(double zMm)
    {
        if (view.FormerSpec is not { } f || zMm <= f.FromMm)
        {
            return FlatArea.Of([]);
        }

        var box = FlatArea.Rectangle(f.OuterWidthMm, f.OuterDepthMm);
        return !f.Solid && f.WallMm is { } wall && zMm <= (f.FloorMm ?? f.FromMm) ? box.Less(FlatArea.Rectangle(f.OuterWidthMm - (2 * wall), f.OuterDepthMm - (2 * wall))) : box;
    }

    private static Point3 Below(Point3 a, Point3 b, double toMm) => a.Z <= toMm ? a : a + ((b - a) * ((toMm - a.Z) / (b.Z - a.Z)));

    private static TriangleMesh Box(double width, double depth, double low, double high) =>
        MeshSlab.WallBetween(Loft.Through([Corners(width, depth, low), Corners(width, depth, high)]), low, high);

    private static IEnumerable<(Point3, Point3)> Edges(double width, double depth, double low, double high)
    {
        var (bottom, top) = (Corners(width, depth, low), Corners(width, depth, high));
        return Enumerable.Range(0, 4).SelectMany(i => new[] { (bottom[i], bottom[(i + 1) % 4]), (top[i], top[(i + 1) % 4]), (bottom[i], top[i]) });
    }

    private static IReadOnlyList<Point3> Corners(double width, double depth, double z) => [new(width / 2, -depth / 2, z), new(width / 2, depth / 2, z), new(-width / 2, depth / 2, z), new(-width / 2, -depth / 2, z)];
}
