using NetTopologySuite.Geometries;
using Studio.Engine.Meshes;

namespace Studio.Engine.Sheets;

/// <summary>Where a sheet's plane runs through the box that keeps room for lights.</summary>
internal static class SheetThroughBox
{
    /// <summary>The part of an area of the sheet inside the box, on the sheet's plane.</summary>
    public static Geometry Area(SheetPlane plane, IReadOnlyList<SheetArea> area, SheetFormer box)
    {
        var around = SheetBox.Around(area);
        List<SheetPoint> part =
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
    private static IEnumerable<Func<Point3, double>> Walls(SheetFormer box) =>
    [
        p => (box.WidthMm / 2) - p.X, p => (box.WidthMm / 2) + p.X, p => (box.DepthMm / 2) - p.Y, p => (box.DepthMm / 2) + p.Y, p => p.Z - box.FromMm,
    ];

    // Sutherland and Hodgman, Reentrant polygon clipping, 1974
    private static List<SheetPoint> Keep(List<SheetPoint> ring, Func<SheetPoint, double> inside)
    {
        var kept = new List<SheetPoint>();
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
