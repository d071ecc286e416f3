using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

/// <summary>A few of the made-up resins that the bench's command <c>fit</c> measures by the hundred (docs/measurements.md), with looser bounds.</summary>
public sealed class FitCoverageTests(ITestOutputHelper output)
{
    [Fact]
    [Trait("Slow", "solver")]
    public void Intervals_hold_the_truth_and_one_log_sharpens_the_peak()
    {
        var made = ResinClass.All.SelectMany(c => Enumerable.Range(0, 2).Select(i => new MadeResin(c.Key, 500 + i, otherForm: i == 1))).ToList();
        var trials = made.ConvertAll(m => FitTrial.Run(m, 24, second: false));
        var (sheet, log) = (trials.SelectMany(t => t.BySheet).ToList(), trials.SelectMany(t => t.ByLog).ToList());
        output.WriteLine($"held {sheet.Count(f => f.Held)} and {log.Count(f => f.Held)} of {sheet.Count}");
        sheet.Count(f => f.Held).ShouldBeGreaterThan(23);
        log.Count(f => f.Held).ShouldBeGreaterThan(22);
        double Typical(List<Foretold> all, string what, Func<Foretold, double> pick) => all.Where(f => f.What == what).Select(pick).Order().ElementAt(3);
        Typical(sheet, FitTrial.Layer, f => f.Error).ShouldBeGreaterThan(2 * Typical(log, FitTrial.Layer, f => f.Error)); // threefold and more by the hundred; six are few

        output.WriteLine(string.Join(" ", log.Where(f => f.What is FitTrial.Warm or FitTrial.Layer).Select(f => FormattableString.Invariant($"{f.What} {f.Width:0.0}"))));
    }
}
