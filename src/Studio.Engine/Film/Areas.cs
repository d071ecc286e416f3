using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Buffer;

namespace Studio.Engine.Film;

/// <summary>Areas on the sheet's plane, by NetTopologySuite: from rings and back, set in, clipped, cleaned.</summary>
internal static class Areas
{
    /// <summary>An area smaller than this, or narrower than a tenth of a millimetre, is a sliver that nobody cuts [mm²].</summary>
    public const double SliverMm2 = 0.5;

    private const double NarrowMm = 0.1;
    private const double StraightMm = 1e-9;
    private static readonly GeometryFactory Factory = new();
    private static readonly BufferParameters Mitred = new(8, EndCapStyle.Flat, JoinStyle.Mitre, 10) { SimplifyFactor = 0 };

    public static Geometry Nothing => Factory.CreatePolygon();

    /// <summary>What an odd number of rings encloses, so that a ring in a ring is a hole.</summary>
    public static Geometry Of(IEnumerable<IReadOnlyList<FilmPoint>> rings) =>
        rings.Select(Ring).Where(g => !g.IsEmpty).OrderByDescending(g => g.Area).Aggregate(Nothing, (sum, ring) => sum.IsEmpty ? ring : sum.SymmetricDifference(ring));

    public static Geometry Of(IReadOnlyList<FilmArea> areas) => Of(areas.SelectMany(a => a.Rings));

    public static Geometry Ring(IReadOnlyList<FilmPoint> points)
    {
        var clean = WithoutStraight(points);
        if (clean.Count < 3)
        {
            return Nothing;
        }

        var polygon = Factory.CreatePolygon([.. clean.Append(clean[0]).Select(p => new Coordinate(p.UMm, p.VMm))]);
        return polygon.IsValid ? polygon : GeometryFixer.Fix(polygon);
    }

    public static Geometry Box(double left, double bottom, double right, double top) => Factory.ToGeometry(new Envelope(left, right, bottom, top));

    /// <summary>Smaller all round by so many mm, corners kept sharp; larger where it is negative.</summary>
    public static Geometry Inset(Geometry area, double mm) => mm == 0 || area.IsEmpty ? area : BufferOp.Buffer(area, -mm, Mitred);

    public static IReadOnlyList<FilmArea> WithoutSlivers(Geometry area) =>
        [.. Polygons(area).Where(p => p.Area >= SliverMm2 && !p.Buffer(-NarrowMm / 2).IsEmpty).OrderByDescending(p => p.Area).Select(Area)];

    public static IEnumerable<Polygon> Polygons(Geometry area) => PolygonExtracter.GetPolygons(area).OfType<Polygon>();

    private static FilmArea Area(Polygon polygon) => new(Points(polygon.ExteriorRing, anticlockwise: true), [.. polygon.InteriorRings.Select(r => Points(r, anticlockwise: false))]);

    private static IReadOnlyList<FilmPoint> Points(LineString ring, bool anticlockwise)
    {
        var points = ring.Coordinates.Take(ring.NumPoints - 1).Select(c => new FilmPoint(c.X, c.Y));
        return WithoutStraight(((LinearRing)ring).IsCCW == anticlockwise ? [.. points] : [.. points.Reverse()]);
    }

    // a mesh's triangles leave points along straight edges, and twice in one place
    private static List<FilmPoint> WithoutStraight(IReadOnlyList<FilmPoint> points)
    {
        var kept = points.Where((p, i) => Apart(p, points[(i + 1) % points.Count])).ToList();
        for (var i = 0; i < kept.Count && kept.Count > 2;)
        {
            var (a, b, c) = (kept[(i + kept.Count - 1) % kept.Count], kept[i], kept[(i + 1) % kept.Count]);
            var (du, dv) = (c.UMm - a.UMm, c.VMm - a.VMm);
            var off = Math.Abs((du * (b.VMm - a.VMm)) - (dv * (b.UMm - a.UMm))) / Math.Max(Math.Sqrt((du * du) + (dv * dv)), StraightMm);
            var between = ((b.UMm - a.UMm) * (c.UMm - b.UMm)) + ((b.VMm - a.VMm) * (c.VMm - b.VMm)) > 0;
            if (off < StraightMm && between)
            {
                kept.RemoveAt(i);
            }
            else
            {
                i++;
            }
        }

        return kept;
    }

    private static bool Apart(FilmPoint a, FilmPoint b) => Math.Abs(a.UMm - b.UMm) > StraightMm || Math.Abs(a.VMm - b.VMm) > StraightMm;
}
