namespace Studio.Bench.Tools.OtherResins;

/// <summary>Watches the resin of a round body.</summary>
internal sealed class RoundWatch
{
    private readonly RoundBody body;
    private readonly RoundCorners? corners;
    private readonly int[] cells;
    private readonly double gel;
    private readonly double[] last;
    private readonly List<(double Hours, double HottestC)> curve = [];
    private double peakC = double.NegativeInfinity;
    private double firstGel = double.PositiveInfinity;
    private double lastGel = double.NegativeInfinity;
    private double lastH;
    private int gelled;
    private double least;
    private double most;

    public RoundWatch(RoundBody body, bool[] resin, double gel, RoundCorners? corners)
    {
        (this.body, this.gel, this.corners) = (body, gel, corners);
        cells = [.. Enumerable.Range(0, resin.Length).Where(c => resin[c])];
        last = new double[resin.Length];
    }

    public double HottestC => curve[^1].HottestC;

    /// <summary>Hours until all gelled, its edges last; infinite before that.</summary>
    public double LastGelHours => gelled < cells.Length ? double.PositiveInfinity : Math.Max(lastGel, corners?.LastGelHours ?? 0);

    /// <summary>A step that was taken.</summary>
    public void Step(double fromS, double dt, double[] before, double[] after) => corners?.See(fromS, dt, before, after);

    public void See(double hours, double[] t, double[] conversion)
    {
        foreach (var c in cells)
        {
            var now = conversion[c];
            if (last[c] < gel && now >= gel)
            {
                var at = lastH + ((hours - lastH) * (gel - last[c]) / (now - last[c]));
                (firstGel, lastGel, gelled) = (Math.Min(firstGel, at), Math.Max(lastGel, at), gelled + 1);
            }

            (least, most) = (Math.Min(least, now), Math.Max(most, now));
            last[c] = now;
        }

        var hot = Hottest(t);
        peakC = Math.Max(peakC, hot);
        lastH = hours;
        curve.Add((hours, hot));
    }

    /// <summary>Whether all gelled and the rise has fallen below a share of its greatest.</summary>
    public bool Cooled(double roomC, double share) => double.IsFinite(LastGelHours) && HottestC - roomC < share * (peakC - roomC);

    public RoundTold Tell(double[] t, double[] conversion, double[] volume, double hours, double miss, int steps) => new()
    {
        PeakC = peakC,
        FirstGelHours = firstGel,
        LastGelHours = LastGelHours,
        EndHours = hours,
        Curve = curve,
        EnergyMiss = miss,
        LeastConversion = Math.Min(least, cells.Min(c => conversion[c])),
        MostConversion = most,
        MeanC = cells.Sum(c => t[c] * volume[c]) / cells.Sum(c => volume[c]),
        Steps = steps,
    };

    // on the middle line by the parabola through the two innermost rings, then along it by the one through three levels
    private double Hottest(double[] t)
    {
        var count = body.LevelCount - body.FloorLevels;
        Span<double> line = stackalloc double[count];
        var top = 0;
        for (var k = 0; k < count; k++)
        {
            line[k] = Middle(t, k + body.FloorLevels);
            top = line[k] > line[top] ? k : top;
        }

        if (top == 0 || top == count - 1)
        {
            return line[top];
        }

        var (slope, bend) = ((line[top + 1] - line[top - 1]) / 2, line[top + 1] - (2 * line[top]) + line[top - 1]);
        return bend < 0 ? line[top] - (slope * slope / 2 / bend) : line[top];
    }

    /// <summary>Temperature on the middle line at a level.</summary>
    private double Middle(double[] t, int level)
    {
        var first = t[body.Cell(0, level)];
        if (body.ResinRings < 2)
        {
            return first;
        }

        var (one, two) = (body.Square(0), body.Square(1));
        return first + ((first - t[body.Cell(1, level)]) * one / (two - one));
    }
}
