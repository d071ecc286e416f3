using CsCheck;
using Studio.Engine.Price;

namespace Studio.Engine.Tests.Price;

/// <summary>Laws that hold whatever the amounts.</summary>
public sealed class PricePropertyTests
{
    private static readonly Gen<decimal> Pence = Gen.Int[0, 5_000_000].Select(i => i / 100m);

    private static readonly Gen<PriceInput> Inputs = Gen.Select(
        Gen.Select(Pence, Gen.Int[1, 5000], Gen.Int[1, 100], Gen.Int[0, 600], (price, used, yield, minutes) => (price, used, yield, minutes)),
        Gen.Select(Gen.Int[0, 60], Gen.Int[0, 27], Gen.Int[0, 50], Gen.Int[0, 99], (margin, tax, feeTenths, remake) => (margin, tax, feeTenths, remake)),
        Gen.OneOf(Gen.Const("GBP"), Gen.Const("EUR"), Gen.Const("JPY"), Gen.Const("KWD")),
        Gen.Int[1, 20],
        Gen.Int[0, 100],
        (cost, share, currency, steps, deposit) => new PriceInput
        {
            Currency = currency,
            Materials = [new MaterialLine("resin", cost.used, 1000, cost.price, cost.yield)],
            Labour = [new LabourLine("bench", cost.minutes, 21.37m)],
            Overhead = new OverheadSpec(333.33m, 70),
            RemakePercent = share.remake,
            Fee = new FeeSpec(share.feeTenths / 10m, 0.2m),
            MarginPercent = share.margin,
            TaxPercent = share.tax,
            RoundTo = steps * Currencies.MinorUnit(Currencies.MinorDigits(currency)!.Value),
            DepositPercent = deposit,
        });

    [Fact]
    public void Net_and_tax_and_deposit_and_balance_add_up_to_the_penny() => Inputs.Sample(input =>
    {
        var result = Result(input);
        (result.NetPrice + result.Tax).ShouldBe(result.Total);
        (result.Deposit + result.Balance).ShouldBe(result.Total);
        (result.Total % input.RoundTo!.Value).ShouldBe(0);
    });

    [Fact]
    public void Every_amount_fits_the_currency() => Inputs.Sample(input =>
    {
        var (result, unit) = (Result(input), Currencies.MinorUnit(Currencies.MinorDigits(input.Currency)!.Value));
        decimal[] amounts = [result.Making, result.Remakes, result.Cost, result.NetPrice, result.Tax, result.Total, result.Fee, result.Profit, result.BreakEvenTotal, result.Deposit, result.Overhead];
        amounts.ShouldAllBe(a => a % unit == 0);
    });

    [Fact]
    public void The_margin_achieved_is_never_below_the_margin_asked() => Inputs.Sample(input =>
        Result(input).AchievedMarginPercent.ShouldBeGreaterThanOrEqualTo(input.MarginPercent - 1e-9m));

    [Fact]
    public void A_higher_margin_is_never_cheaper() => Inputs.Sample(input =>
        Result(input with { MarginPercent = input.MarginPercent + 1 }).Total.ShouldBeGreaterThanOrEqualTo(Result(input).Total));

    [Fact]
    public void The_total_is_at_least_the_break_even() => Inputs.Sample(input =>
        Result(input).Total.ShouldBeGreaterThanOrEqualTo(Result(input).BreakEvenTotal - Currencies.MinorUnit(Currencies.MinorDigits(input.Currency)!.Value)));

    [Fact]
    public void More_remakes_are_never_cheaper() => Inputs.Sample(input =>
        Result(input with { RemakePercent = Math.Min(99.5m, input.RemakePercent + 0.5m) }).Cost.ShouldBeGreaterThanOrEqualTo(Result(input).Cost));

    private static PriceResult Result(PriceInput input) => PriceCalculation.Run(input).Value;
}
