using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>Lays a grid into a mould.</summary>
internal static class HeatModel
{
    // a tip of no width would have cells of no volume
    private const double LeastHalfMm = 0.5;

    // a sphere's grid begins where its cap is this high [mm]
    private const double CapMm = 0.01;

    // of the cone that stands for a square pyramid in the preview: times the radius of equal area (1.10 × the half width)
    private const double PreviewShare = 0.975;

    // how much a cell may be higher than its neighbour above
    private const double Grading = 1.6;

    // the widest box in a body of areas, as a share of the body's radius
    private const double MostBox = 0.95;

    /// <summary>The grid of an input.</summary>
    /// <param name="preview">True for a body of revolution in place of a mould with sides: faster, without its cold corners.</param>
    public static HeatGrid Grid(HeatInput input, MouldBody mould, HeatFineness fineness, bool preview)
    {
        var sides = Sides(input.Mould);
        var symmetry = sides == 0 || preview ? HeatSymmetry.Round
            : mould.Shape.Grid is { Oblong: true } || (sides == 4 && input.Former is { } f && Math.Abs(f.OuterWidthMm - f.OuterDepthMm) > 1e-9) ? HeatSymmetry.Quarter
            : HeatSymmetry.Sector;
        var planes = Planes(input, mould, fineness);
        var body = Laid(mould.Shape).AreasOnly ? AreaBody.Of(input, mould, planes, fineness.Across) : null;
        planes = body?.PlanesMm ?? planes;
        var box = input.Former is null ? null : new Box(input, symmetry, sides);
        var (boxCells, inner) = (box is null ? 0 : BoxCells(fineness), fineness.Across);
        var halves = (Func<double, (double X, double Y)>)(z => body is null ? Half(mould, symmetry, sides, preview, z) : (body.RadiusMm(z), 0));
        var across = planes.Select(z => Lines(p => p.X, box?.HalfX, z)).ToArray();
        var along = symmetry switch
        {
            HeatSymmetry.Quarter => planes.Select(z => Lines(p => p.Y, box?.HalfY, z)).ToArray(),
            _ => [.. planes.Select(_ => Even(0, 1, Math.Max(2, fineness.Across * 2 / 3)))],
        };
        return new HeatGrid(symmetry, Math.Max(3, sides), planes, across, along, Region);

        // from the middle outwards: the box, the resin around it, the wall
        double[] Lines(Func<(double X, double Y), double> pick, double? boxHalf, double z)
        {
            var half = pick(halves(z));
            var outer = body?.OuterMm(z) ?? (Math.Max(half, Laid(mould.Shape).BlockHalfMm?.Invoke(input.Mould) ?? 0) + input.Wall.ThicknessMm);
            var wall = input.Wall.ThicknessMm > 0 ? Even(half, outer, WallCells(input.Wall.ThicknessMm, fineness)).Skip(1) : [];
            if (boxHalf is not { } b)
            {
                return [.. Even(0, half, fineness.Across), .. wall];
            }

            // where a body narrows more than the mould does between two readings, resin still stands around the box
            var line = z >= box!.FromMm ? b : Math.Min(b, b * half / pick(halves(box.FromMm)));
            line = body is null ? line : Math.Min(line, half * MostBox);
            return [.. Even(0, line, boxCells), .. Even(line, half, fineness.Across - boxCells).Skip(1), .. wall];
        }

        HeatRegion Region(int i, int j, int k)
        {
            var middle = (planes[k] + planes[k + 1]) / 2;
            var inside = i < inner && (symmetry is not HeatSymmetry.Quarter || j < inner) && middle > 0 && middle < mould.HeightMm;
            if (!inside)
            {
                return HeatRegion.Mould;
            }

            var inBox = i < boxCells && (symmetry is not HeatSymmetry.Quarter || j < boxCells) && middle > box!.FromMm;
            return !inBox ? HeatRegion.Inside : input.Fill is { Silicone: true } ? HeatRegion.Mould : HeatRegion.Room;
        }
    }

    /// <summary>Number of sides of the cross-section; 0 for a round one.</summary>
    public static int Sides(MouldSpec mould) => Laid(MouldShapes.Find(mould.Shape)).Sides(mould);

    private static MouldGrid Laid(MouldShape? shape) => shape?.Grid ?? throw new ArgumentException($"No grid is laid into the shape '{shape?.Key}': ask its Grid first.", nameof(shape));

    private static (double X, double Y) Half(MouldBody mould, HeatSymmetry symmetry, int sides, bool preview, double z)
    {
        var laid = Laid(mould.Shape);
        var at = Math.Clamp(z, laid.PoleBelow ? CapMm : 0, laid.PoleAbove ? mould.HeightMm - CapMm : mould.HeightMm);
        at = Math.Clamp(at, 0, mould.HeightMm);
        if (symmetry is HeatSymmetry.Round)
        {
            var radius = Math.Sqrt(mould.AreaMm2(at) / Math.PI) * (preview && sides > 0 ? PreviewShare : 1);
            return (Math.Max(LeastHalfMm, radius), 0);
        }

        if (symmetry is HeatSymmetry.Sector)
        {
            var apothem = Math.Max(LeastHalfMm, Math.Sqrt(mould.AreaMm2(at) / (sides * Math.Tan(Math.PI / sides))));
            return (apothem, apothem);
        }

        var plan = mould.Outline.PlanAt(at);
        return (Math.Max(LeastHalfMm, plan.Max(p => p.XMm)), Math.Max(LeastHalfMm, plan.Max(p => p.YMm)));
    }

    // a thick wall stores what a thin one lets through, so its cells are no thicker than this: 4 mm where three are asked for
    private const double WallCellMm = 12;
    private const int MostWallCells = 12;

    // a coarse grid stays one: no more than so many of each cell that it asks for
    private const int MostOfEach = 4;

    private static int WallCells(double mm, HeatFineness fineness) => Math.Clamp((int)Math.Ceiling(mm * fineness.InWall / WallCellMm), fineness.InWall, Math.Min(MostWallCells, MostOfEach * fineness.InWall));

    private static int BoxCells(HeatFineness fineness) => Math.Max(2, fineness.Across / 2);

    private static double[] Even(double from, double to, int cells) => [.. Enumerable.Range(0, cells + 1).Select(k => from + ((to - from) * k / cells))];

    // even cells, but finer towards a thinner layer above, whose heat a thick cell would swallow whole
    private static double[] Graded(double from, double to, int cells, double above)
    {
        var even = (to - from) / cells;
        if (above * Grading >= even)
        {
            return Even(from, to, cells);
        }

        var planes = new List<double> { to };
        for (var step = above; step < even && planes[^1] - (step * Grading) > from; step *= Grading)
        {
            planes.Add(planes[^1] - step);
        }

        var rest = planes[^1] - from;
        var left = Math.Max(1, (int)Math.Ceiling(rest / even));
        planes.AddRange(Enumerable.Range(1, left).Select(k => planes[^1] - (rest * k / left)).ToList());
        planes[^1] = from;
        planes.Reverse();
        return [.. planes];
    }

    private static double[] Planes(HeatInput input, MouldBody mould, HeatFineness fineness)
    {
        var filled = input.Layers.Max(l => l.ToMm);
        var planes = new List<double>();
        if (input.Wall.FloorMm > 0)
        {
            planes.AddRange(Even(-input.Wall.FloorMm, 0, WallCells(input.Wall.FloorMm, fineness)).SkipLast(1));
        }

        planes.Add(0);
        var edges = input.Layers.Select(l => (l.ToMm, Cells: fineness.Through)).ToList();
        if (filled < mould.HeightMm - 1e-6)
        {
            edges.Add((mould.HeightMm, Math.Clamp((int)Math.Ceiling((mould.HeightMm - filled) / mould.HeightMm * 12), 2, 12)));
        }

        var cut = input.Former is { } f ? input.Former.Solid ? f.FromMm : f.FloorMm ?? f.FromMm : (double?)null;
        for (var e = 0; e < edges.Count; e++)
        {
            var (to, cells) = edges[e];
            var from = planes[^1];
            var above = e + 1 < input.Layers.Count ? (edges[e + 1].ToMm - to) / edges[e + 1].Cells : double.PositiveInfinity;
            var inside = cut > from + 1e-6 && cut < to - 1e-6;
            var low = inside ? Math.Clamp((int)Math.Round(cells * (cut!.Value - from) / (to - from)), 2, Math.Max(2, cells - 2)) : cells;
            planes.AddRange(Graded(from, inside ? cut!.Value : to, low, inside ? double.PositiveInfinity : above).Skip(1));
            if (inside)
            {
                planes.AddRange(Graded(cut!.Value, to, Math.Max(2, cells - low), above).Skip(1));
            }
        }

        if (input.Wall.RoofMm > 0)
        {
            planes.AddRange(Even(mould.HeightMm, mould.HeightMm + input.Wall.RoofMm, WallCells(input.Wall.RoofMm, fineness)).Skip(1));
        }

        return [.. planes];
    }

    // the former in the grid's own directions; in a round or many-sided mould it is taken as a room of the same shape and area
    private sealed class Box
    {
        public Box(HeatInput input, HeatSymmetry symmetry, int sides)
        {
            var former = input.Former!;
            FromMm = former.Solid ? former.FromMm : former.FloorMm ?? former.FromMm;
            var area = former.OuterWidthMm * former.OuterDepthMm;
            (HalfX, HalfY) = symmetry switch
            {
                HeatSymmetry.Round => (Math.Sqrt(area / Math.PI), 0),
                HeatSymmetry.Sector => (Math.Sqrt(area / (sides * Math.Tan(Math.PI / sides))), 0),
                _ => (former.OuterWidthMm / 2, former.OuterDepthMm / 2),
            };
        }

        public double FromMm { get; }

        public double HalfX { get; }

        public double HalfY { get; }
    }
}
