using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Resins;

namespace Studio.Tests.Bench;

/// <summary>Fits of an invented casting resin, put straight into a database.</summary>
internal static class KnownCureScene
{
    private static readonly Lazy<FitState> Fitted = new(() => SheetFit.Run(new DataSheet { Class = "casting", PotLifeMinutes = 40, CupMassG = 100, AtCelsius = 23, DemouldHours = 24, MaxPourMm = 15 }).Value.State);

    /// <summary>The fit with its rate, and that of each resin that it may be, divided.</summary>
    public static FitState Slower(double times)
    {
        return Fitted.Value with { Mean = Divided(Fitted.Value.Mean), Kept = [.. Fitted.Value.Kept.Select(Divided)] };

        IReadOnlyList<double> Divided(IReadOnlyList<double> numbers) => [numbers[0] - Math.Log(times), .. numbers.Skip(1)];
    }

    public static async Task<int> AddAsync(StudioDatabase studio, int resinId, string standing, double slower = 1, string lot = "")
    {
        var now = studio.Clock.GetUtcNow().UtcDateTime;
        await using var db = studio.Open();
        var row = new KnownCure { ResinId = resinId, Lot = lot, At = now, By = "Maker", State = Slower(slower), Standing = standing };
        if (standing == KnownCure.Accepted)
        {
            (row.DecidedAt, row.DecidedBy) = (now, "Maker");
        }

        db.Add(row);
        await db.SaveChangesAsync();
        return row.Id;
    }
}
