using Studio.Engine.Price;
using Studio.Quotes;

namespace Studio.Bench.Tools;

/// <summary>A quote worked out anew, as at every key that is typed, against the engine's call alone.</summary>
internal static class QuoteCost
{
    private const int Batch = 1000;

    public static Task RunAsync()
    {
        var form = new QuoteForm
        {
            OverheadMonthly = 320,
            BenchHoursPerMonth = 80,
            RemakePercent = 5,
            Packaging = 6,
            Delivery = 9,
            FeePercent = 1.5m,
            FeeFixed = 0.2m,
            MarginPercent = 30,
            TaxPercent = 20,
            RoundTo = 5,
            DepositPercent = 50,
            Bought = [.. Enumerable.Range(1, 12).Select(i => new BoughtRow { Kind = "inclusion", Name = $"Thing {i}", Unit = "g", Used = 12.5m * i, PackSize = 1000, PackPrice = 27 })],
            Work = [.. Enumerable.Range(1, 6).Select(i => new WorkRow { Name = $"Task {i}", Minutes = 20 * i, RatePerHour = 22 })],
        };
        return Measure.CompareAsync(
            $"Quote, {Batch} times",
            "recompute with its lines",
            () => Times(() => Reckoning.Of(form)),
            "the engine's call alone",
            () => Times(() => PriceCalculation.Run(form.Input())),
            null,
            40);
    }

    private static Task Times(Func<object> run)
    {
        for (var i = 0; i < Batch; i++)
        {
            run();
        }

        return Task.CompletedTask;
    }
}
