namespace Studio.Engine.Bubbles;

/// <summary>A pressure pot as its plate and its papers say.</summary>
/// <param name="RatedGaugeBar">Highest gauge pressure it is rated for [bar]; null where no plate says.</param>
/// <param name="TestedOn">When it was last examined or tested; null where nothing says.</param>
/// <param name="NextTestBy">By when it must be tested again, where known.</param>
/// <param name="VolumeL">Inner volume [l], where known.</param>
public sealed record PressurePot(double? RatedGaugeBar, DateOnly? TestedOn, DateOnly? NextTestBy = null, double? VolumeL = null);

/// <summary>Whether a pressure may be planned for a pot, and what it does to bubbles.</summary>
/// <param name="Planned">False when any finding stops it.</param>
/// <param name="VolumeRatio">Share of its volume that a bubble keeps; null when not planned.</param>
/// <param name="DiameterRatio">Share of its diameter; null when not planned.</param>
/// <param name="Findings">Stops, doubts and notes.</param>
public sealed record PotPlan(bool Planned, double? VolumeRatio, double? DiameterRatio, IReadOnlyList<Finding> Findings)
{
    // Pressure Systems Safety Regulations 2000: above 0.5 bar gauge; some duties from 250 bar litres
    private const double SystemBar = 0.5;
    private const double WrittenSchemeBarL = 250;

    /// <summary>Plans a gauge pressure. A pot without a rating or a test date is not planned, and never above its rating.</summary>
    /// <param name="pot">The pot.</param>
    /// <param name="gaugeBar">What its gauge is to show [bar].</param>
    /// <param name="today">The day it is used.</param>
    /// <param name="path">Field for the findings.</param>
    public static PotPlan Of(PressurePot pot, double gaugeBar, DateOnly today, string path = "pot")
    {
        List<Finding> findings = [.. Stops(pot, gaugeBar, today, path)];
        var planned = findings.Count == 0;
        if (planned)
        {
            findings.AddRange(Notes(pot, gaugeBar, path));
        }

        return new(planned, planned ? Squeeze.VolumeRatio(gaugeBar) : null, planned ? Squeeze.DiameterRatio(gaugeBar) : null, findings);
    }

    private static IEnumerable<Finding> Stops(PressurePot pot, double gaugeBar, DateOnly today, string path)
    {
        Finding Stop(string code, string field, string message, string source) => new(code, Severity.Stop, path + field, message, source);
        if (!(gaugeBar > 0 && double.IsFinite(gaugeBar)))
        {
            yield return Stop("pot-pressure-missing", ".gaugeBar", "Say the gauge pressure in bar, above zero.", "our rule");
        }

        if (!(pot.RatedGaugeBar > 0 && double.IsFinite(pot.RatedGaugeBar.Value)))
        {
            yield return Stop("pot-without-rating", ".ratedGaugeBar", "This pot has no rated pressure on record, so no pressure is planned for it. Read it off its plate; a vessel without a plate must not be put under pressure.", "facts of pressure vessels: design rating is the maker's");
        }
        else if (gaugeBar > pot.RatedGaugeBar)
        {
            yield return Stop("pot-over-rating", ".gaugeBar", FormattableString.Invariant($"{gaugeBar:0.##} bar is more than the {pot.RatedGaugeBar:0.##} bar this pot is rated for. A pot that bursts kills: stay at or below its rating."), "the pot's plate");
        }

        if (pot.TestedOn is not { } tested)
        {
            yield return Stop("pot-without-test", ".testedOn", "This pot has no test date on record, so no pressure is planned for it. Have it examined by a competent person and note the date.", "Pressure Systems Safety Regulations 2000");
        }
        else if (tested > today)
        {
            yield return Stop("pot-without-test", ".testedOn", FormattableString.Invariant($"The test date {tested:yyyy-MM-dd} lies ahead. Correct it."), "our rule");
        }

        if (pot.NextTestBy < today)
        {
            yield return Stop("pot-test-due", ".nextTestBy", FormattableString.Invariant($"This pot's next test was due by {pot.NextTestBy:yyyy-MM-dd}. Have it tested before it is used."), "the pot's papers");
        }
    }

    private static IEnumerable<Finding> Notes(PressurePot pot, double gaugeBar, string path)
    {
        Finding Note(string code, string message, string source) => new(code, Severity.Note, path, message, source);
        yield return Note("pot-keep-pressure", "Keep the pressure until the resin has gelled, or the bubbles come back. Never open a pot under pressure, and stand clear of its lid.", "Henry's and Boyle's laws");
        if (gaugeBar > SystemBar)
        {
            yield return Note("pot-pressure-system", gaugeBar * pot.VolumeL >= WrittenSchemeBarL
                ? FormattableString.Invariant($"{gaugeBar * pot.VolumeL:0} bar litres: in the UK this is a pressure system that needs a written scheme of examination.")
                : "Above 0.5 bar this is a pressure system; in the UK some duties hold whatever its size: safe limits, instructions, maintenance.", "Pressure Systems Safety Regulations 2000");
        }
    }
}
