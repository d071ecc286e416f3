namespace Studio.Engine.Cure;

/// <summary>Where a function of time passes zero upwards; always the side on which it has passed, so that nothing is early.</summary>
internal static class CureRoot
{
    private const int Most = 200;

    /// <summary>For a function that is below zero at <paramref name="low"/> and not at <paramref name="high"/>: the far end of a bracket as narrow as numbers go.</summary>
    internal static double Rising(Func<double, double> f, double low, double high)
    {
        var (fLow, fHigh, same) = (f(low), f(high), 0);
        for (var i = 0; i < Most && high - low > 4e-16 * Math.Max(Math.Abs(low), Math.Abs(high)); i++)
        {
            // the straight line between the ends (Illinois rule: an end that stays put counts half), every fourth time the middle
            var line = ((low * fHigh) - (high * fLow)) / (fHigh - fLow);
            var t = i % 4 == 3 || !(line > low && line < high) ? low + ((high - low) / 2) : line;
            if (t <= low || t >= high)
            {
                return high;
            }

            var value = f(t);
            (low, fLow, high, fHigh, same) = value >= 0
                ? (low, same > 0 ? fLow / 2 : fLow, t, value, 1)
                : (t, value, high, same < 0 ? fHigh / 2 : fHigh, -1);
        }

        return high;
    }

    /// <summary>First time at which a function that bends one way is not below zero; null when it stays below.</summary>
    internal static double? FirstAbove(Func<double, double> f, double from, double to)
    {
        if (f(from) >= 0)
        {
            return from;
        }

        if (f(to) >= 0)
        {
            return Rising(f, from, to);
        }

        // both ends below: it may have been above between them
        return Top(f, from, to) is { } top && f(top) >= 0 ? Rising(f, from, top) : null;
    }

    // golden section, only where the function rises at the start and falls at the end: a temperature that runs along with the glass transition
    private static double? Top(Func<double, double> f, double low, double high)
    {
        const double golden = 0.6180339887498949;
        var near = 1e-3 * (high - low);
        if (f(low + near) <= f(low) || f(high - near) <= f(high))
        {
            return null;
        }

        for (var i = 0; i < 40; i++)
        {
            var (a, b) = (high - (golden * (high - low)), low + (golden * (high - low)));
            (low, high) = f(a) > f(b) ? (low, b) : (a, high);
        }

        return (low + high) / 2;
    }
}
