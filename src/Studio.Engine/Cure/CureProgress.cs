namespace Studio.Engine.Cure;

/// <summary>
/// Integrates a milestone's pace over the room's temperature. The temperature is linear in time and the logarithm of the pace
/// linear in the temperature, so each stretch is the integral of an exponential and is solved in closed form, not stepped.
/// </summary>
internal static class CureProgress
{
    /// <summary>When the milestone is reached [h] for a layer poured at <paramref name="fromHours"/> [h]; always finite.</summary>
    internal static double ReachedAt(RoomCurve room, CurePace pace, double fromHours)
    {
        var left = 1.0;
        foreach (var part in room.From(fromHours).SelectMany(s => Straight(s, pace)))
        {
            var (logRate, endLogRate) = (pace.LogRate(part.FromC), pace.LogRate(part.ToC));
            var rate = Math.Exp(logRate);
            var length = part.ToHours - part.FromHours;
            var growth = double.IsInfinity(length) ? 0 : (endLogRate - logRate) / length;
            var done = rate * length * MeanOfExp(endLogRate - logRate);
            if (done >= left)
            {
                return part.FromHours + Math.Min(TimeFor(left, rate, growth), length);
            }

            left -= done;
        }

        throw new InvalidOperationException("The stretch after the last reading never ends, so this is not reached.");
    }

    // cuts a stretch where the pace's line bends
    private static IEnumerable<RoomStretch> Straight(RoomStretch s, CurePace pace)
    {
        var rise = s.ToC - s.FromC;
        if (rise == 0)
        {
            return [s];
        }

        var cuts = pace.Bends.Where(c => (c - s.FromC) * (c - s.ToC) < 0)
            .Select(c => (Hours: s.FromHours + ((c - s.FromC) / rise * (s.ToHours - s.FromHours)), C: c))
            .Where(c => c.Hours > s.FromHours && c.Hours < s.ToHours)
            .Distinct().OrderBy(c => c.Hours).ToArray();
        (double Hours, double C)[] ends = [(s.FromHours, s.FromC), .. cuts, (s.ToHours, s.ToC)];
        return ends.Zip(ends.Skip(1), (a, b) => new RoomStretch(a.Hours, b.Hours, a.C, b.C));
    }

    // solves rate·(e^(growth·t) − 1)/growth = share for t
    private static double TimeFor(double share, double rate, double growth)
    {
        var flat = share / rate;
        return growth == 0 ? flat : flat * LogOnePlusOver(growth * flat);
    }

    // (e^x − 1)/x without loss of digits near zero (Kahan's form, from memory)
    private static double MeanOfExp(double x)
    {
        var e = Math.Exp(x);
        return e == 1 ? 1 : (e - 1) / Math.Log(e);
    }

    // ln(1 + x)/x likewise
    private static double LogOnePlusOver(double x)
    {
        var one = 1 + x;
        return one == 1 ? 1 : Math.Log(one) / (one - 1);
    }
}
