namespace Studio.Bench.Tools.OtherResins;

/// <summary>The resin's two outer edges, below and above, which gel last: their temperature is drawn on from the cells beside them, and their own conversion followed.</summary>
internal sealed class RoundCorners(RoundBody body, DrawnKinetics kinetics, double gel)
{
    private readonly double[] conversion = new double[2];
    private readonly double[] gelHours = [double.PositiveInfinity, double.PositiveInfinity];

    /// <summary>When the later of them gelled [h]; infinite where one has not.</summary>
    public double LastGelHours => Math.Max(gelHours[0], gelHours[1]);

    /// <summary>Follows a step, by the midpoint rule.</summary>
    public void See(double fromS, double dt, double[] before, double[] after)
    {
        for (var e = 0; e < 2; e++)
        {
            var (was, becomes) = (Celsius(before, e == 1), Celsius(after, e == 1));
            var half = conversion[e] + (dt / 2 * kinetics.Rate(conversion[e], was));
            var now = Math.Min(1, conversion[e] + (dt * kinetics.Rate(half, (was + becomes) / 2)));
            if (conversion[e] < gel && now >= gel)
            {
                gelHours[e] = (fromS + (dt * (gel - conversion[e]) / (now - conversion[e]))) / 3600;
            }

            conversion[e] = now;
        }
    }

    private double Celsius(double[] t, bool above)
    {
        var (edge, inward) = above ? (body.LevelCount - 1, body.LevelCount - 2) : (body.FloorLevels, body.FloorLevels + 1);
        return (1.5 * Outer(t, edge)) - (0.5 * Outer(t, inward));
    }

    // straight over the radius' square
    private double Outer(double[] t, int level)
    {
        var ring = body.ResinRings - 1;
        var last = t[body.Cell(ring, level)];
        var face = body.Radii[ring + 1];
        return ring == 0 ? last : last + ((last - t[body.Cell(ring - 1, level)]) * ((face * face) - body.Square(ring)) / (body.Square(ring) - body.Square(ring - 1)));
    }
}
