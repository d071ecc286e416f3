using NetTopologySuite.Geometries;
using Studio.Engine.Meshes;

namespace Studio.Engine.Film;

/// <summary>Where a sheet's plane runs through the box that keeps room for lights.</summary>
internal static class FilmThroughBox
{
    /// <summary>The part of an area of the sheet inside the box, on the sheet's plane.</summary>
    public static Geometry Area(FilmPlane plane, IReadOnlyList<FilmArea> area, FilmFormer box)
    {
        var around = FilmBox.Around(area);
        List<FilmPoint> part =
        [
            new(around.LeftMm - 1, around.BottomMm - 1), new(around.RightMm + 1, around.BottomMm - 1),
            new(around.RightMm + 1, around.TopMm + 1), new(around.LeftMm - 1, around.TopMm + 1),
        ];
        foreach (var inside in Walls(box))
        {
            part = Keep(part, p => inside(plane.At(p)));
        }

        return Areas.Ring(part).Intersection(Areas.Of(area));
    }

    // how far inside each of the box's faces a point lies; its top is open
    private static IEnumerable<Func<Point3, double>> Walls(FilmFormer box) =>
    [
        p => (box.WidthMm / 2) - p.X, p => (box.WidthMm / 2) + p.X, p => (box.DepthMm / 2) - p.Y, p => (box.DepthMm / 2) + p.Y, p => p.Z - box.FromMm,
    ];

    // Sutherland and Hodgman, Reentrant polygon clipping, 1974
    private static List<FilmPoint> Keep(List<FilmPoint> ring, Func<FilmPoint, double> inside)
    {
        var kept = new List<FilmPoint>();
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
            var (da, db) = (inside(a), inside(b));
            if (da >= 0)
            {
                kept.Add(a);
            }

            if ((da >= 0) != (db >= 0))
            {
                var t = da / (da - db);
                kept.Add(new(a.UMm + ((b.UMm - a.UMm) * t), a.VMm + ((b.VMm - a.VMm) * t)));
            }
        }

        return kept;
    }
}
