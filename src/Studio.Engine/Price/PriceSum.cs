namespace Studio.Engine.Price;

/// <summary>The price's arithmetic on checked input; formulas as in docs/calculations.md.</summary>
internal sealed class PriceSum(PriceInput input)
{
    private readonly int digits = Currencies.MinorDigits(input.Currency) ?? throw new ArgumentException("Unknown currency.", nameof(input));
    private readonly decimal withTax = 1 + (input.TaxPercent / 100);
    private readonly decimal feeShare = (input.Fee?.Percent ?? 0) / 100;
    private readonly decimal feeFixed = input.Fee?.Fixed ?? 0;

    /// <summary>Share of the net price left for cost: 1 − margin − fee on the taxed price; must be above zero.</summary>
    public static decimal LeftForCost(PriceInput input) =>
        1 - (input.MarginPercent / 100) - ((input.Fee?.Percent ?? 0) / 100 * (1 + (input.TaxPercent / 100)));

    public PriceResult Result()
    {
        var overhead = input.Overhead is { } o ? input.Labour.Sum(l => l.Minutes) / 60 * o.Monthly / o.BenchHoursPerMonth : 0;
        var making = input.Materials.Sum(PriceCalculation.Cost) + input.Labour.Sum(PriceCalculation.Cost) + input.Equipment.Sum(PriceCalculation.Cost) + overhead;
        var remakes = making * input.RemakePercent / (100 - input.RemakePercent);
        var cost = making + remakes + input.Packaging + input.Delivery;
        var total = Rounding.UpTo((cost + feeFixed) / LeftForCost(input) * withTax, input.RoundTo ?? Currencies.MinorUnit(digits));
        var netPrice = Money(total / withTax);
        var fee = (feeShare * total) + feeFixed;
        var profit = (total / withTax) - cost - fee;
        var deposit = Money(total * input.DepositPercent / 100);
        return new PriceResult
        {
            Currency = input.Currency,
            Materials = [.. input.Materials.Select(l => new CostLine(l.Name, Money(PriceCalculation.Cost(l))))],
            Labour = [.. input.Labour.Select(l => new CostLine(l.Name, Money(PriceCalculation.Cost(l))))],
            Equipment = [.. input.Equipment.Select(l => new CostLine(l.Name, Money(PriceCalculation.Cost(l))))],
            Overhead = Money(overhead),
            Making = Money(making),
            Remakes = Money(remakes),
            Packaging = Money(input.Packaging),
            Delivery = Money(input.Delivery),
            Cost = Money(cost),
            NetPrice = netPrice,
            Tax = total - netPrice,
            Total = total,
            Fee = Money(fee),
            Profit = Money(profit),
            AchievedMarginPercent = total == 0 ? 0 : Rounding.To(profit * withTax / total * 100, 10),
            BreakEvenTotal = Money((cost + feeFixed) * withTax / (1 - (feeShare * withTax))),
            Deposit = deposit,
            Balance = total - deposit,
        };
    }

    private decimal Money(decimal amount) => Rounding.To(amount, digits);
}
