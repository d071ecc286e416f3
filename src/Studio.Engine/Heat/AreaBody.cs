using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>
/// The round body that stands for a mould of which only the areas are known: at every height the mould's area, in every layer its volume. A step or
/// an undercut becomes a short steep slope on its wider side, with planes close enough to follow it; lines that ran level along a ledge would carry heat of their own.
/// </summary>
internal sealed class AreaBody
{
    // at both ends an area may begin from nothing; the body begins with what it has here [mm]
    private const double CapMm = 1.5;
    private const double LeastRadiusMm = 0.5;

    // of a ledge's slope, outwards over upwards: made steeper where a layer would lose more than its share to the slope
    private const double Slope = 8;
    private const double SteepestSlope = 256;
    private const double MostLost = 0.1;

    private const int Samples = 1000;
    private const int MostPlanes = 240;
    private const double LeastApartMm = 0.1;

    // how much of the wall stands square to a ledge that is flatter than 45°
    private const double SquareToLedge = 0.7;

    private readonly double wallMm;
    private readonly double[] inside;
    private readonly double[] radii;

    private AreaBody(double[] planes, double[] inside, double[] radii, double wallMm) => (PlanesMm, this.inside, this.radii, this.wallMm) = (planes, inside, radii, wallMm);

    /// <summary>All planes of the grid, floor and roof among them [mm].</summary>
    public double[] PlanesMm { get; }

    /// <summary>Lays a body.</summary>
    /// <param name="planes">Every layer's bottom and top among them [mm].</param>
    /// <param name="across">Cells from the middle to the wall.</param>
    public static AreaBody Of(HeatInput input, MouldBody mould, double[] planes, int across)
    {
        var tops = input.Layers.Select(l => l.ToMm).ToList();
        var areas = Sampled(mould);
        for (var slope = Slope; ; slope *= 2)
        {
            var line = new Line(mould.HeightMm, Limited(areas, slope, mould.HeightMm / Samples));
            var fine = Refined(planes, line, input.Wall.ThicknessMm, across, mould.HeightMm);
            double[] levels = [.. fine.Where(z => z >= 0 && z <= mould.HeightMm)];
            double[] widths = [.. levels.Select(line.At)];
            if (slope >= SteepestSlope || Layers(tops).All(l => Math.Abs(Lost(mould, levels, widths, l)) < MostLost))
            {
                foreach (var layer in Layers(tops))
                {
                    Fill(mould, levels, widths, layer);
                }

                return new(fine, levels, widths, input.Wall.ThicknessMm);
            }
        }
    }

    /// <summary>Radius at a height [mm]; straight between the planes, and below and above as at the ends.</summary>
    public double RadiusMm(double zMm)
    {
        var k = Math.Clamp(Array.FindLastIndex(inside, p => p <= zMm), 0, inside.Length - 2);
        var share = Math.Clamp((zMm - inside[k]) / (inside[k + 1] - inside[k]), 0, 1);
        return radii[k] + (share * (radii[k + 1] - radii[k]));
    }

    /// <summary>The wall's outer radius at a height [mm]: its thickness measured level, and over and under a ledge nowhere much thinner than that.</summary>
    public double OuterMm(double zMm) => Outer(RadiusMm, inside, wallMm, Math.Clamp(zMm, 0, inside[^1]));

    // where no face is flatter than 45°, the level thickness is the most of them
    private static double Outer(Func<double, double> radius, IEnumerable<double> heights, double wallMm, double z) =>
        heights.Select(h => radius(h) + (wallMm * (1 - SquareToLedge)) - (Slope * Math.Max(0, Math.Abs(h - z) - (wallMm * SquareToLedge)))).Append(radius(z) + wallMm).Max();

    private static IEnumerable<(double From, double To)> Layers(List<double> tops) => tops.Select((to, i) => (i == 0 ? 0 : tops[i - 1], to));

    // by the volume between two heights, so that it does not matter which side of a ledge an area at its height belongs to
    private static double[] Sampled(MouldBody mould)
    {
        var (high, cap) = (mould.HeightMm, Math.Min(CapMm, mould.HeightMm / 10));
        var step = high / Samples;
        var half = Math.Min(step, cap) / 2;
        return [.. Enumerable.Range(0, Samples + 1).Select(i => Radius(Math.Clamp(i * step, cap, high - cap)))];

        double Radius(double z) => Math.Max(LeastRadiusMm, Math.Sqrt(Math.Max(0, mould.VolumeMl(z + half) - mould.VolumeMl(z - half)) * 1000 / (2 * half) / Math.PI));
    }

    // the widest line under the radii that nowhere leans more
    private static double[] Limited(double[] radii, double slope, double step)
    {
        double[] line = [.. radii];
        for (var i = 1; i < line.Length; i++)
        {
            line[i] = Math.Min(line[i], line[i - 1] + (slope * step));
        }

        for (var i = line.Length - 2; i >= 0; i--)
        {
            line[i] = Math.Min(line[i], line[i + 1] + (slope * step));
        }

        return line;
    }

    // halves a cell where the body or its wall leans by more than two cells' breadth, or bulges between its planes
    private static double[] Refined(double[] planes, Line line, double wallMm, int across, double highMm)
    {
        var breadth = line.Widest / across;
        double[] heights = [.. Enumerable.Range(0, Samples + 1).Select(i => highMm * i / Samples)];
        var outers = new Dictionary<double, double>();
        List<double> fine = [.. planes];
        for (var k = 0; k + 1 < fine.Count && fine.Count < MostPlanes; k++)
        {
            var (from, to) = (fine[k], fine[k + 1]);
            var middle = (from + to) / 2;
            while (middle > 0 && middle < highMm && to - from > 2 * LeastApartMm && fine.Count < MostPlanes && (Leans(from, to) || Bulges(from, middle, to)))
            {
                fine.Insert(k + 1, middle);
                to = middle;
                middle = (from + to) / 2;
            }
        }

        return [.. fine];

        bool Leans(double a, double b) => Math.Abs(line.At(a) - line.At(b)) > 2 * breadth || (wallMm > 0 && Math.Abs(Outside(a) - Outside(b)) > Math.Max(2 * breadth, wallMm));

        bool Bulges(double a, double b, double c) => Math.Abs(line.At(b) - ((line.At(a) + line.At(c)) / 2)) > breadth / 4;

        double Outside(double z) => outers.TryGetValue(z, out var known) ? known : outers[z] = Outer(line.At, heights, wallMm, z);
    }

    private static double Lost(MouldBody mould, double[] planes, double[] radii, (double From, double To) layer)
    {
        var whole = (mould.VolumeMl(layer.To) - mould.VolumeMl(layer.From)) * 1000;
        return 1 - (Volume(planes, radii, layer, 1) / Math.Max(1e-9, whole));
    }

    // the planes between a layer's own widen or narrow until its volume is the mould's
    private static void Fill(MouldBody mould, double[] planes, double[] radii, (double From, double To) layer)
    {
        var wanted = (mould.VolumeMl(layer.To) - mould.VolumeMl(layer.From)) * 1000;
        var (low, high) = (0.1, 10.0);
        for (var turn = 0; turn < 60; turn++)
        {
            var middle = (low + high) / 2;
            (low, high) = Volume(planes, radii, layer, middle) < wanted ? (middle, high) : (low, middle);
        }

        for (var k = 0; k < planes.Length; k++)
        {
            radii[k] = Within(planes[k], layer) ? Math.Max(LeastRadiusMm, radii[k] * high) : radii[k];
        }
    }

    private static bool Within(double z, (double From, double To) layer) => z > layer.From + 1e-9 && z < layer.To - 1e-9;

    // frustums, the planes within taken times a factor [mm³]
    private static double Volume(double[] planes, double[] radii, (double From, double To) layer, double factor)
    {
        double sum = 0;
        for (var k = 0; k + 1 < planes.Length; k++)
        {
            if (planes[k] >= layer.From - 1e-9 && planes[k + 1] <= layer.To + 1e-9)
            {
                var (a, b) = (At(k), At(k + 1));
                sum += Math.PI / 3 * (planes[k + 1] - planes[k]) * ((a * a) + (a * b) + (b * b));
            }
        }

        return sum;

        double At(int k) => Within(planes[k], layer) ? Math.Max(LeastRadiusMm, radii[k] * factor) : radii[k];
    }

    // radii at even heights
    private sealed class Line(double highMm, double[] radii)
    {
        public double Widest { get; } = radii.Max();

        public double At(double z)
        {
            var at = Math.Clamp(z / highMm, 0, 1) * (radii.Length - 1);
            var k = Math.Min((int)at, radii.Length - 2);
            return radii[k] + ((at - k) * (radii[k + 1] - radii[k]));
        }
    }
}
