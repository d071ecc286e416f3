namespace Studio.Engine.Moulds;

/// <summary>One mark of a water check: what went in up to it, against what was computed.</summary>
/// <param name="HeightMm">The mark's height above the lowest inner point [mm].</param>
/// <param name="MeasuredMl">Water that went in [ml]; a gram is a millilitre.</param>
/// <param name="ComputedMl">Volume of the mould up to there as its measures say [ml].</param>
/// <param name="ReadingMl">What <see cref="WaterCheckSum.ReadingMm"/> of height hold there [ml].</param>
public sealed record WaterMark(double HeightMm, double MeasuredMl, double ComputedMl, double ReadingMl)
{
    /// <summary>Measured over computed.</summary>
    public double Ratio => MeasuredMl / ComputedMl;
}

/// <summary>What a water check comes to.</summary>
public sealed record WaterCheckResult
{
    /// <summary>In the order they were given.</summary>
    public required IReadOnlyList<WaterMark> Marks { get; init; }

    /// <summary>The one factor that scales the computed volumes best [ratio].</summary>
    public required double Factor { get; init; }

    /// <summary>How far the factor may be off [%], to either side.</summary>
    public required double SpreadPercent { get; init; }

    /// <summary>True where the spread is that of the marks among themselves; false where reading a height to a millimetre says more.</summary>
    public required bool MarksDisagree { get; init; }

    /// <summary>Doubts; paths begin with the check, such as <c>checks[1]</c>.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>True where a mould may be scaled by the factor.</summary>
    public bool Usable => Factor is >= WaterCheckSum.LeastFactor and <= WaterCheckSum.MostFactor;
}

/// <summary>
/// Compares a mould with the water that went into it. The factor is Σ measured / Σ computed: the least-squares line through zero where
/// the scatter grows with the volume, so that a mark counts by the water that stands under it. The spread is half the range of the
/// ratios over the factor, but never less than a millimetre read wrongly at each mark explains (independent errors, added in squares:
/// JCGM 100:2008, 5.1.2); for a single mark it is that alone.
/// </summary>
public static class WaterCheckSum
{
    /// <summary>How well a water level is read against a mark [mm]; common practice, no source.</summary>
    public const double ReadingMm = 1;

    /// <summary>Smallest factor a mould may be scaled by.</summary>
    public const double LeastFactor = 0.5;

    /// <summary>Largest factor a mould may be scaled by.</summary>
    public const double MostFactor = 2;

    private const double FarOff = 0.10;
    private const double Drift = 0.03;
    private const double MostMl = 1e9;

    /// <summary>Works a check out.</summary>
    /// <param name="drawn">The mould as its measures say, not scaled by an earlier check.</param>
    /// <param name="fills">Mark and water, in any order; a mark may come twice.</param>
    /// <param name="path">Where errors and findings are reported, such as <c>checks</c>.</param>
    /// <returns>The result, or every fill that cannot be used.</returns>
    public static Outcome<WaterCheckResult> Run(MouldBody drawn, IReadOnlyList<FillReading> fills, string path = "checks")
    {
        var errors = new InputErrors();
        if (fills.Count == 0)
        {
            errors.Add(path, "A water check needs at least one mark: fill the mould up to it and give the water that went in.");
        }

        for (var i = 0; i < fills.Count; i++)
        {
            Usable(drawn, fills[i], FormattableString.Invariant($"{path}[{i}]"), errors);
        }

        return errors.None ? Outcome<WaterCheckResult>.Of(Sum([.. fills.Select(f => Mark(drawn, f))], path)) : Outcome<WaterCheckResult>.Refused(errors.All);
    }

    private static void Usable(MouldBody drawn, FillReading fill, string path, InputErrors errors)
    {
        if (fill.HeightMm > drawn.HeightMm && fill.HeightMm <= Dimension.LongestMm)
        {
            errors.Add(path + ".heightMm", FormattableString.Invariant($"The mark at {fill.HeightMm} mm lies above the rim, which is at {drawn.HeightMm:0.##} mm. Measure it again from the lowest inner point, or mend the mould's height."));
        }
        else if (errors.Positive(path + ".heightMm", fill.HeightMm, Dimension.LongestMm, "mm") && !(drawn.VolumeMl(fill.HeightMm) > 0))
        {
            errors.Add(path + ".heightMm", FormattableString.Invariant($"Up to {fill.HeightMm} mm the mould holds nothing by its measures, so there is nothing to compare with."));
        }

        errors.Positive(path + ".volumeMl", fill.VolumeMl, MostMl, "ml");
    }

    private static WaterMark Mark(MouldBody drawn, FillReading fill) =>
        new(fill.HeightMm, fill.VolumeMl, drawn.VolumeMl(fill.HeightMm), drawn.AreaMm2(fill.HeightMm) * ReadingMm / 1000);

    private static WaterCheckResult Sum(IReadOnlyList<WaterMark> marks, string path)
    {
        var computed = marks.Sum(m => m.ComputedMl);
        var factor = marks.Sum(m => m.MeasuredMl) / computed;
        var range = (marks.Max(m => m.Ratio) - marks.Min(m => m.Ratio)) / 2 / factor;
        var reading = Math.Sqrt(marks.Sum(m => m.ReadingMl * m.ReadingMl)) / computed;
        return new WaterCheckResult
        {
            Marks = marks,
            Factor = factor,
            SpreadPercent = 100 * Math.Max(range, reading),
            MarksDisagree = range > reading,
            Findings = [.. FarFindings(marks, path), .. Whole(marks, path)],
        };
    }

    private static IEnumerable<Finding> FarFindings(IReadOnlyList<WaterMark> marks, string path) =>
        marks.Select((m, i) => (Mark: m, Path: FormattableString.Invariant($"{path}[{i}]"))).Where(m => Math.Abs(m.Mark.Ratio - 1) > FarOff)
            .Select(m => new Finding(
                "check-far-off", Severity.Warn, m.Path,
                FormattableString.Invariant($"Up to {m.Mark.HeightMm:0.##} mm went {m.Mark.MeasuredMl:0.#} ml, {Math.Abs(m.Mark.Ratio - 1) * 100:0} % {(m.Mark.Ratio > 1 ? "more" : "less")} than the {m.Mark.ComputedMl:0.#} ml computed. Check the unit, the mark's height and the mould's measures before you scale anything by it."),
                "our rule: more than 10 %"));

    private static IEnumerable<Finding> Whole(IReadOnlyList<WaterMark> marks, string path)
    {
        var rising = marks.GroupBy(m => m.HeightMm).OrderBy(g => g.Key).Select(g => (HeightMm: g.Key, Ratio: g.Average(m => m.Ratio), Reading: g.Max(m => m.ReadingMl / m.ComputedMl))).ToList();
        if (rising.Count == 1)
        {
            yield return new("one-mark", Severity.Note, path, "One mark says how much the mould holds, but not whether its shape is right. Fill it to a second mark at about half that height as well.", "our rule");
        }
        else if (Steady(rising.ConvertAll(r => r.Ratio)) && Math.Abs(rising[^1].Ratio - rising[0].Ratio) > Math.Max(Drift, rising[^1].Reading + rising[0].Reading))
        {
            yield return new(
                "shape-differs", Severity.Warn, path,
                FormattableString.Invariant($"The further up, the {(rising[^1].Ratio > rising[0].Ratio ? "more" : "less")} it holds against the computed volume: {rising[0].Ratio:0.00} times at {rising[0].HeightMm:0.##} mm, {rising[^1].Ratio:0.00} times at {rising[^1].HeightMm:0.##} mm. Then the shape is wrong rather than its size: measure the mould again, or enter the fill as a measured mould."),
                "our rule: more than 3 % from the lowest to the highest mark, and more than 1 mm of height explains");
        }
    }

    // all steps up, or all steps down
    private static bool Steady(List<double> ratios)
    {
        var steps = ratios.Zip(ratios.Skip(1), (a, b) => b - a).ToList();
        return steps.TrueForAll(s => s > 0) || steps.TrueForAll(s => s < 0);
    }
}
