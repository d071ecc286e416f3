using Studio.Engine.Moulds;

namespace Studio.Engine.Fit;

/// <summary>
/// Refits a resin lot to what a thermometer and a person observed of a real layer, starting from what was known of it before (the sheet, or an earlier log).
/// A function: it changes nothing, whoever asked accepts or declines.
/// </summary>
public static class LogFit
{
    private const int DrawnMembers = 24;
    private const double MostMisfit = 2;

    /// <summary>Refits, or says everything that is wrong with the log.</summary>
    public static Outcome<LogRefit> Run(FitState before, LayerLog log)
    {
        before = before.Whole();
        var errors = new List<InputError>();
        Check(log, errors);
        if (errors.Count > 0)
        {
            return Outcome<LogRefit>.Refused(errors);
        }

        var findings = new List<Finding>();
        var endH = log.Layer + 1 < log.Piece.Layers.Count ? log.Piece.Layers[log.Layer + 1].PouredAtHours - log.Piece.Layers[log.Layer].PouredAtHours : double.PositiveInfinity;
        var readings = LogFaults.Used(log, endH, findings);
        var mould = MouldShapes.Make(log.Piece.Mould).Value;
        var trial = new LogTrial(log, mould, readings, before.LogDoubt);
        return trial.Count == 0
            ? Outcome<LogRefit>.Refused([new("readings", "No usable reading, gel or demould time is left. Log the layer while it cures, best every ten minutes past its peak.")])
            : Outcome<LogRefit>.Of(Fit(before, trial, readings, new LogDoubts(before, log, mould, readings), findings));
    }

    private static LogRefit Fit(FitState before, LogTrial trial, IReadOnlyList<LogReading> readings, LogDoubts doubts, List<Finding> findings)
    {
        LogProbe.NoCure(readings, trial.Foretold(before.Best()), findings);
        var found = GaussNewton.Fit(before, x => trial.Residuals(before.Resin(x)));
        var misfit = Math.Sqrt(found.Residuals.Average(r => r * r));
        var after = before with
        {
            Mean = found.Mean,
            SeenCelsius = [.. before.SeenCelsius, trial.SeenC],
            Spread = [.. found.Spread.Select(row => (IReadOnlyList<double>)[.. row.Select(x => x * Math.Max(1, misfit))])],
        };
        after = after with { Kept = FitMembers.Of(before, after, found, x => trial.Residuals(before.Resin(x)), Math.Max(1, misfit)) };
        if (doubts.Of(found) is { } doubt)
        {
            findings.Add(doubt);
        }

        if (misfit > MostMisfit)
        {
            findings.Add(new(
                "log-does-not-fit", Severity.Warn, "readings",
                "No resin near the one on the data sheet would have shown this. Look at the room's readings, the layer's depth, the thermometer's place and the mixing before you accept the refit.",
                "our rule: misfit above 2"));
        }

        return new(ResinFit.Of(after, trial.Tell(after.Best()), findings), Series(before, after, trial, readings));
    }

    private static IReadOnlyList<LogMoment> Series(FitState before, FitState after, LogTrial trial, IReadOnlyList<LogReading> readings)
    {
        var (was, becomes) = (trial.Foretold(before.Best()), trial.Foretold(after.Best()));
        var (wasAll, becomesAll) = (All(before), All(after));
        return [.. readings.Select((r, i) => new LogMoment(
            r.AfterHours, r.Celsius, was[i], FitInterval.Of(wasAll.Select(m => m[i])), becomes[i], FitInterval.Of(becomesAll.Select(m => m[i]))))];

        List<double[]> All(FitState state) => [.. state.Members(DrawnMembers).Select(trial.Foretold)];
    }

    private static void Check(LayerLog log, List<InputError> errors)
    {
        if (log.Layer < 0 || log.Layer >= log.Piece.Layers.Count)
        {
            errors.Add(new("layer", $"There is no layer {log.Layer}; the piece has {log.Piece.Layers.Count}, counted from 0."));
            return;
        }

        if (!log.SameLot.Contains(log.Layer))
        {
            errors.Add(new("sameLot", "The observed layer must be of the lot that is fitted."));
        }

        var layer = log.Piece.Layers[log.Layer];
        if (log.Place is LogPlace.Height && !(log.HeightMm >= layer.FromMm && log.HeightMm <= layer.ToMm))
        {
            errors.Add(new("heightMm", FormattableString.Invariant($"The thermometer must be inside its layer, between {layer.FromMm:0.#} and {layer.ToMm:0.#} mm.")));
        }

        if (LogFaults.Fahrenheit(log.Readings, layer.PouredCelsius))
        {
            errors.Add(new("readings", FormattableString.Invariant($"The log begins at {log.Readings.MinBy(r => r.AfterHours)!.Celsius:0.#}, but the layer was poured at {layer.PouredCelsius:0.#} °C: this looks like °F. Convert it and give it again.")));
        }

        Positive("gelAfterHours", log.GelAfterHours);
        Positive("demouldAfterHours", log.DemouldAfterHours);
        if (!(log.ReadingSdK is >= 0.2 and <= 10))
        {
            errors.Add(new("readingSdK", "Must lie between 0.2 and 10 K."));
        }

        void Positive(string name, double? hours)
        {
            if (hours is { } h && !(h > 0 && h < 5000))
            {
                errors.Add(new(name, "Must be hours after the pour, more than 0 and less than 5000."));
            }
        }
    }
}
