using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Simplify;
using NetTopologySuite.Triangulate.Polygon;

namespace Studio.Engine.Meshes;

/// <summary>An area in a plane, of any number of pieces with any number of holes; u to the right, v upwards [mm].</summary>
public sealed class FlatArea
{
    private static readonly GeometryFactory Factory = new();

    private readonly Geometry area;

    private FlatArea(Geometry area)
    {
        this.area = area;
        Rings = [.. Polygons(area).SelectMany(p => p.InteriorRings.Prepend(p.ExteriorRing)).Select(Ring)];
    }

    /// <summary>Every outline and every hole, each without its first point repeated; by the even-odd rule they are the area.</summary>
    public IReadOnlyList<IReadOnlyList<(double U, double V)>> Rings { get; }

    /// <summary>Its size [mm²].</summary>
    public double AreaMm2 => area.Area;

    /// <summary>From closed lines: inside is what an odd number of them encloses.</summary>
    public static FlatArea Of(IEnumerable<IReadOnlyList<(double U, double V)>> loops)
    {
        Geometry all = Factory.CreatePolygon();
        foreach (var loop in loops.Where(l => l.Count > 2))
        {
            var ring = GeometryFixer.Fix(Factory.CreatePolygon([.. loop.Append(loop[0]).Select(p => new Coordinate(p.U, p.V))]));
            all = all.IsEmpty ? ring : OverlayNGRobust.Overlay(all, ring, NetTopologySuite.Operation.Overlay.SpatialFunction.SymDifference);
        }

        return new FlatArea(all);
    }

    /// <summary>The part between two levels.</summary>
    public FlatArea Between(double lowV, double highV)
    {
        if (area.IsEmpty || !(highV > lowV))
        {
            return new FlatArea(Factory.CreatePolygon());
        }

        var whole = area.EnvelopeInternal;
        if (lowV <= whole.MinY && highV >= whole.MaxY)
        {
            return this;
        }

        var strip = Factory.ToGeometry(new Envelope(whole.MinX - 1, whole.MaxX + 1, Math.Max(lowV, whole.MinY - 1), Math.Min(highV, whole.MaxY + 1)));
        return new FlatArea(OverlayNGRobust.Overlay(area, strip, NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection));
    }

    /// <summary>What is left when another area is taken away.</summary>
    public FlatArea Less(FlatArea other) => area.IsEmpty || other.area.IsEmpty
        ? this
        : new FlatArea(OverlayNGRobust.Overlay(area, other.area, NetTopologySuite.Operation.Overlay.SpatialFunction.Difference));

    /// <summary>A centred rectangle.</summary>
    public static FlatArea Rectangle(double width, double depth) => Of([[(-width / 2, -depth / 2), (width / 2, -depth / 2), (width / 2, depth / 2), (-width / 2, depth / 2)]]);

    /// <summary>With fewer points, none of them further than this from where the line ran [mm].</summary>
    public FlatArea Simpler(double byMm) => area.IsEmpty ? this : new FlatArea(TopologyPreservingSimplifier.Simplify(area, byMm));

    /// <summary>Where a level runs inside, from left to right.</summary>
    public IReadOnlyList<(double Left, double Right)> Spans(double v)
    {
        var cuts = new List<double>();
        foreach (var ring in Rings)
        {
            for (var i = 0; i < ring.Count; i++)
            {
                var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
                if (a.V <= v != b.V <= v)
                {
                    cuts.Add(a.U + ((v - a.V) / (b.V - a.V) * (b.U - a.U)));
                }
            }
        }

        cuts.Sort();
        return [.. Enumerable.Range(0, cuts.Count / 2).Select(k => (cuts[2 * k], cuts[(2 * k) + 1])).Where(s => s.Item2 > s.Item1)];
    }

    /// <summary>Three corners a triangle, anticlockwise, that cover the area.</summary>
    public IEnumerable<((double U, double V) A, (double U, double V) B, (double U, double V) C)> Triangles() =>
        Polygons(area).SelectMany(p => new PolygonTriangulator(p).GetResult() is { } all ? Polygons(all) : []).Select(t => t.ExteriorRing.Coordinates).Select(c =>
            ((c[1].X - c[0].X) * (c[2].Y - c[0].Y)) - ((c[1].Y - c[0].Y) * (c[2].X - c[0].X)) >= 0 ? (At(c[0]), At(c[1]), At(c[2])) : (At(c[0]), At(c[2]), At(c[1])));

    private static IEnumerable<Polygon> Polygons(Geometry geometry) =>
        Enumerable.Range(0, geometry.NumGeometries).Select(geometry.GetGeometryN).OfType<Polygon>().Where(p => !p.IsEmpty);

    private static IReadOnlyList<(double U, double V)> Ring(LineString ring) => [.. ring.Coordinates.SkipLast(1).Select(At)];

    private static (double U, double V) At(Coordinate c) => (c.X, c.Y);
}
