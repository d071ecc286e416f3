namespace Studio.Engine.Cure;

/// <summary>
/// How fast one milestone comes nearer at a temperature: 1 / (hours it takes at that temperature), as its logarithm, which is
/// piecewise linear in the temperature: through the printed rows, and by the resin's factor per 10 °C beyond them.
/// </summary>
internal sealed class CurePace
{
    private readonly (double C, double LogHours)[] rows;
    private readonly double logFactorPerC;
    private readonly double lowestC;
    private readonly double highestC;

    /// <summary>Lays the line through the printed rows.</summary>
    /// <param name="rows">Printed hours by temperature, at least one, in any order.</param>
    /// <param name="factorPer10C">How much faster per 10 °C.</param>
    /// <param name="towardsLater">True for a time before which one must wait, false for one after which it is too late.</param>
    /// <param name="lowestC">Colder than this counts as this [°C].</param>
    /// <param name="highestC">Warmer than this counts as this [°C].</param>
    internal CurePace(IEnumerable<(double C, double Hours)> rows, double factorPer10C, bool towardsLater, double lowestC, double highestC)
    {
        this.rows = Falling([.. rows.OrderBy(r => r.C)], towardsLater);
        logFactorPerC = Math.Log(factorPer10C) / 10;
        (this.lowestC, this.highestC) = (lowestC, highestC);
    }

    /// <summary>Temperatures [°C] where the line bends.</summary>
    internal IEnumerable<double> Bends => rows.Select(r => r.C).Append(lowestC).Append(highestC).Where(double.IsFinite);

    /// <summary>Natural logarithm of the share done per hour at a temperature [°C].</summary>
    internal double LogRate(double celsius)
    {
        var c = Math.Max(lowestC, Math.Min(celsius, highestC));
        var (first, last) = (rows[0], rows[^1]);
        if (c <= first.C)
        {
            return ((c - first.C) * logFactorPerC) - first.LogHours;
        }

        if (c >= last.C)
        {
            return ((c - last.C) * logFactorPerC) - last.LogHours;
        }

        var above = Array.FindIndex(rows, r => r.C > c);
        var (a, b) = (rows[above - 1], rows[above]);
        return -(a.LogHours + ((c - a.C) / (b.C - a.C) * (b.LogHours - a.LogHours)));
    }

    // A sheet on which a warmer room takes longer contradicts itself. The careful reading of it is the longer time where one must wait
    // and the shorter one where it may be too late; either way a warmer room is never later. Two rows at one temperature likewise.
    private static (double C, double LogHours)[] Falling((double C, double Hours)[] sorted, bool towardsLater)
    {
        var hours = sorted.Select(r => r.Hours).ToArray();
        for (var i = 1; i < hours.Length && !towardsLater; i++)
        {
            hours[i] = Math.Min(hours[i], hours[i - 1]);
        }

        for (var i = hours.Length - 2; i >= 0 && towardsLater; i--)
        {
            hours[i] = Math.Max(hours[i], hours[i + 1]);
        }

        return [.. sorted.Select((r, i) => (r.C, LogHours: Math.Log(hours[i])))
            .GroupBy(r => r.C)
            .Select(g => (g.Key, towardsLater ? g.Max(r => r.LogHours) : g.Min(r => r.LogHours)))];
    }
}
