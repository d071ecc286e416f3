using Studio.Engine.Moulds;

namespace Studio.Engine.Fit;

/// <summary>Where a log fits badly, or only by a resin far from what was known: would it fit with its clock set by an hour, or with a thermometer that lags?</summary>
internal sealed class LogDoubts(FitState before, LayerLog log, MouldBody mould, IReadOnlyList<LogReading> readings)
{
    // how much better one explanation must be, as a difference of squared deviations
    private const double Better = 6;
    private const double Misfit = 0.5;
    private const double Far = 2;
    private const int LeastReadings = 8;

    /// <summary>Says what explains the log better than the resin alone, if anything does.</summary>
    public Finding? Of(GaussFound found)
    {
        if (readings.Count < LeastReadings || (Math.Sqrt(found.Residuals.Average(r => r * r)) < Misfit && found.FarSd2 < Far))
        {
            return null;
        }

        (double ShiftH, double LagH)[] others = [(1, 0), (-1, 0), (0, 0.1), (0, 0.3)];
        var (shiftH, lagH, cost) = others.Select(o => (o.ShiftH, o.LagH, Cost: Cost(o.ShiftH, o.LagH))).MinBy(o => o.Cost);
        return cost > PerReading(found, readings.Count) - Better ? null : shiftH != 0
            ? new("log-clock-off", Severity.Warn, "readings", $"The log fits much better with its clock set an hour {(shiftH > 0 ? "ahead" : "back")}. Look at daylight saving and at the time of the pour; correct them, then fit again.", "our rule")
            : new("log-thermometer-lags", Severity.Warn, "readings", FormattableString.Invariant(
                $"The log fits much better for a thermometer that lags by about {lagH * 60:0} min. A thin probe, in the resin itself, follows; a thick one tells too low a peak, too late."), "our rule");
    }

    private double Cost(double shiftH, double lagH)
    {
        List<LogReading> moved = [.. readings.Select(r => r with { AfterHours = r.AfterHours + shiftH }).Where(r => r.AfterHours >= 0)];
        if (moved.Count < LeastReadings)
        {
            return double.PositiveInfinity;
        }

        var trial = new LogTrial(log, mould, moved, before.LogDoubt, lagH);
        return PerReading(GaussNewton.Fit(before, x => trial.Residuals(before.Resin(x))), readings.Count);
    }

    // as if none had been moved out of the log
    private static double PerReading(GaussFound found, int count) => found.FarSd2 + (count * found.Residuals.Average(r => r * r));
}
