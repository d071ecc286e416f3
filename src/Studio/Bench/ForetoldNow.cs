using Studio.Clock;

namespace Studio.Bench;

/// <summary>What was foretold of a pour, beside this moment.</summary>
/// <param name="PeakAt">When it should be, or should have been, hottest [UTC].</param>
/// <param name="NowC">Where the foretold curve stands now [°C]; null once it is over.</param>
/// <param name="Past">The peak should be over.</param>
public sealed record ForetoldNow(DateTime PeakAt, double? NowC, bool Past)
{
    /// <summary>Null where nothing was foretold.</summary>
    public static ForetoldNow? Of(BenchPour pour, DateTime now) => pour.Foretold is not { } f ? null
        : new(pour.StartedAt.AddHours(f.PeakAfterHours), At(f.Curve, (now - pour.StartedAt).TotalHours), (now - pour.StartedAt).TotalHours > f.PeakAfterHours);

    // linear between the moments that were kept
    private static double? At(IReadOnlyList<ForetoldMoment> curve, double hours)
    {
        for (var i = 1; i < curve.Count; i++)
        {
            var (a, b) = (curve[i - 1], curve[i]);
            if (hours <= b.AfterHours && b.AfterHours > a.AfterHours)
            {
                return a.Celsius + ((b.Celsius - a.Celsius) * Math.Clamp((hours - a.AfterHours) / (b.AfterHours - a.AfterHours), 0, 1));
            }
        }

        return null;
    }
}
