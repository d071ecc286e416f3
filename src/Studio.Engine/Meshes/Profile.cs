namespace Studio.Engine.Meshes;

/// <summary>The right-hand edge of the upright section through the middle, over height, and the length along it.</summary>
public sealed class Profile
{
    // levels beyond this many are thinned out: a tape measure cannot tell
    private const int MostLevels = 2000;

    private readonly double[] levels;
    private readonly double[] bottoms;
    private readonly double[] tops;
    private readonly double[] marks;

    /// <summary>Takes the section's polygons (x and z).</summary>
    /// <param name="section">As <see cref="Section.Upright"/> gives them.</param>
    /// <param name="heightMm">Height of the mesh [mm].</param>
    public Profile(IReadOnlyList<IReadOnlyList<Point3>> section, double heightMm)
    {
        levels = Thin([.. section.SelectMany(p => p).Select(p => p.Z).Append(0).Append(heightMm).Distinct().Order()]);
        (bottoms, tops) = (new double[levels.Length - 1], new double[levels.Length - 1]);
        Array.Fill(bottoms, double.NegativeInfinity);
        Array.Fill(tops, double.NegativeInfinity);
        foreach (var polygon in section)
        {
            for (var k = 0; k < polygon.Count; k++)
            {
                Sweep(polygon[k], polygon[(k + 1) % polygon.Count]);
            }
        }

        marks = Lengths();
    }

    /// <summary>The largest x at a height [mm]; 0 where the section has nothing.</summary>
    public double RightMm(double zMm)
    {
        var (i, t) = Find(zMm);
        return double.IsFinite(bottoms[i]) ? bottoms[i] + (t * (tops[i] - bottoms[i])) : 0;
    }

    /// <summary>Length along the right-hand edge up to a height [mm], ledges included, straight up where there is no wall.</summary>
    public double MarkMm(double zMm)
    {
        var (i, t) = Find(zMm);
        return marks[i] + (t * Piece(i));
    }

    private static double[] Thin(double[] all) =>
        all.Length <= MostLevels ? all : [.. Enumerable.Range(0, MostLevels).Select(k => all[(int)((long)k * (all.Length - 1) / (MostLevels - 1))])];

    private (int Level, double Share) Find(double zMm)
    {
        var found = Array.BinarySearch(levels, zMm);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, bottoms.Length - 1);
        return (i, Math.Clamp((zMm - levels[i]) / (levels[i + 1] - levels[i]), 0, 1));
    }

    private void Sweep(Point3 a, Point3 b)
    {
        var (low, high) = a.Z < b.Z ? (a, b) : (b, a);
        for (var i = Find(low.Z).Level; i < bottoms.Length && levels[i] < high.Z; i++)
        {
            if (levels[i + 1] > low.Z)
            {
                bottoms[i] = Math.Max(bottoms[i], At(low, high, levels[i]));
                tops[i] = Math.Max(tops[i], At(low, high, levels[i + 1]));
            }
        }
    }

    private static double At(Point3 low, Point3 high, double z)
    {
        var t = Math.Clamp((z - low.Z) / (high.Z - low.Z), 0, 1);
        return ((1 - t) * low.X) + (t * high.X);
    }

    private double Piece(int i)
    {
        var (across, up) = (double.IsFinite(bottoms[i]) ? tops[i] - bottoms[i] : 0, levels[i + 1] - levels[i]);
        return Math.Sqrt((across * across) + (up * up));
    }

    private double[] Lengths()
    {
        var sums = new double[levels.Length];
        for (var i = 0; i < bottoms.Length; i++)
        {
            var ledge = i > 0 && double.IsFinite(bottoms[i]) && double.IsFinite(tops[i - 1]) ? Math.Abs(bottoms[i] - tops[i - 1]) : 0;
            sums[i] += ledge;
            sums[i + 1] = sums[i] + Piece(i);
        }

        return sums;
    }
}
