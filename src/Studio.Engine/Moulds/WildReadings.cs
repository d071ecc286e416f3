namespace Studio.Engine.Moulds;

/// <summary>
/// Points at readings of a water fill that do not go with the others. Every reading is predicted from the four nearest others by the cubic
/// through them: exact for boxes, pyramids, cones, their frusta and spheres, whose volumes are cubics of the height. A reading stands out
/// when it is further off than three times what a millimetre of height, misread at each of the five, explains (errors added in squares). Of
/// those that stand out, the one goes first without which the others agree best; then the rest are looked at again. Our rule.
/// </summary>
public static class WildReadings
{
    /// <summary>Fewest readings, the empty mould included, of which one can be doubted.</summary>
    public const int Fewest = 6;

    private const double Times = 3;
    private const int Neighbours = 4;
    private const int MostTried = 4;

    /// <summary>The readings to look at again, from the bottom up. Never refuses; a mould with a step in its wall may be right.</summary>
    /// <param name="readings">As <see cref="FillCheck"/> lets them pass.</param>
    /// <param name="path">Field that they are reported at, such as <c>readings</c>.</param>
    public static IReadOnlyList<Finding> Find(IReadOnlyList<FillReading> readings, string path = "readings")
    {
        var left = readings.Select((r, i) => new Reading(i, r.HeightMm, r.VolumeMl)).ToList();
        if (left.Count > 0 && left[0].HeightMm > 0)
        {
            left.Insert(0, new Reading(-1, 0, 0));
        }

        var wild = new List<(Reading Reading, double OffMl)>();
        while (left.Count >= Fewest && wild.Count < readings.Count / 3 && Worst(left) is { } worst)
        {
            wild.Add((worst, Off(left, left.IndexOf(worst)).Ml));
            left.Remove(worst);
        }

        return [.. wild.OrderBy(w => w.Reading.Number).Select(w => Finding(w.Reading, w.OffMl, path))];
    }

    private static Finding Finding(Reading reading, double offMl, string path) => new(
        "wild-reading", Severity.Warn, FormattableString.Invariant($"{path}[{reading.Number}]"),
        FormattableString.Invariant($"The reading at {reading.HeightMm:0.##} mm does not go with the others: {reading.VolumeMl:0.#} ml, where they suggest about {reading.VolumeMl - offMl:0.#} ml. Read that mark again, unless the mould has a step there."),
        "our rule: three times what 1 mm of height explains");

    private static Reading? Worst(List<Reading> left)
    {
        var out3 = Enumerable.Range(0, left.Count).Where(i => left[i].Number >= 0 && left[i].HeightMm > 0)
            .Select(i => (Reading: left[i], Off(left, i).Times)).Where(o => o.Times > Times)
            .OrderByDescending(o => o.Times).Take(MostTried).Select(o => o.Reading).ToList();
        return out3.Count < 2 ? out3.FirstOrDefault() : out3.MinBy(r => Disagreement(left.Where(l => l != r).ToList()));
    }

    private static double Disagreement(List<Reading> readings) => Enumerable.Range(0, readings.Count).Max(i => Off(readings, i).Times);

    // how far reading i lies from the cubic through its four nearest others [ml], and in multiples of what a millimetre explains
    private static (double Ml, double Times) Off(List<Reading> readings, int i)
    {
        var first = Math.Clamp(i - (Neighbours / 2), 0, readings.Count - Neighbours - 1);
        var others = Enumerable.Range(first, Neighbours + 1).Where(k => k != i).ToList();
        var (off, square) = (readings[i].VolumeMl, Square(MillimetreMl(readings, i)));
        foreach (var k in others)
        {
            var weight = others.Where(o => o != k).Aggregate(1.0, (w, o) => w * (readings[i].HeightMm - readings[o].HeightMm) / (readings[k].HeightMm - readings[o].HeightMm));
            off -= weight * readings[k].VolumeMl;
            square += Square(weight * MillimetreMl(readings, k));
        }

        return (off, Math.Abs(off) / Math.Sqrt(square));
    }

    // what a millimetre holds there, from the readings on both sides; the empty mould is not read
    private static double MillimetreMl(List<Reading> readings, int i)
    {
        var (low, high) = (readings[Math.Max(0, i - 1)], readings[Math.Min(readings.Count - 1, i + 1)]);
        return readings[i].HeightMm == 0 ? 0 : (high.VolumeMl - low.VolumeMl) / (high.HeightMm - low.HeightMm);
    }

    private static double Square(double value) => value * value;

    private sealed record Reading(int Number, double HeightMm, double VolumeMl);
}
