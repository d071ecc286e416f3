namespace Studio.Engine.Price;

/// <summary>Checks every field of the price's input.</summary>
internal static class PriceCheck
{
    private const decimal MostMoney = 1_000_000_000_000m;
    private const decimal MostUsed = 1_000_000_000m;
    private const decimal MostPercent = 1000m;

    /// <summary>Adds every error found.</summary>
    public static void Fields(PriceInput input, InputErrors errors)
    {
        Lines(input, errors);
        if (input.Overhead is { } overhead)
        {
            errors.Within("overhead.monthly", overhead.Monthly, 0, MostMoney, "");
            errors.Positive("overhead.benchHoursPerMonth", overhead.BenchHoursPerMonth, MostUsed, "hours");
        }

        errors.Within("packaging", input.Packaging, 0, MostMoney, "");
        errors.Within("delivery", input.Delivery, 0, MostMoney, "");
        errors.Within("fee.fixed", input.Fee?.Fixed ?? 0, 0, MostMoney, "");
        errors.Within("depositPercent", input.DepositPercent, 0, 100, "%");
        Remake(input.RemakePercent, errors);
        Currency(input, errors);
        Margin(input, errors);
    }

    private static void Lines(PriceInput input, InputErrors errors)
    {
        Each(input.Materials, "materials", (line, path) =>
        {
            errors.Named(path + ".name", line.Name);
            errors.Within(path + ".used", line.Used, 0, MostUsed, "");
            errors.Positive(path + ".packSize", line.PackSize, MostUsed, "");
            errors.Within(path + ".packPrice", line.PackPrice, 0, MostMoney, "");
            errors.Positive(path + ".yieldPercent", line.YieldPercent, 100, "%");
        });
        Each(input.Labour, "labour", (line, path) =>
        {
            errors.Named(path + ".name", line.Name);
            errors.Within(path + ".minutes", line.Minutes, 0, MostUsed, "minutes");
            errors.Within(path + ".ratePerHour", line.RatePerHour, 0, MostMoney, "");
        });
        Each(input.Equipment, "equipment", (line, path) =>
        {
            errors.Named(path + ".name", line.Name);
            errors.Within(path + ".hours", line.Hours, 0, MostUsed, "hours");
            errors.Within(path + ".ratePerHour", line.RatePerHour, 0, MostMoney, "");
        });
    }

    private static void Each<T>(IReadOnlyList<T> list, string path, Action<T, string> check)
    {
        for (var i = 0; i < list.Count; i++)
        {
            check(list[i], $"{path}[{i}]");
        }
    }

    private static void Remake(decimal percent, InputErrors errors)
    {
        if (percent is < 0 or >= 100)
        {
            errors.Add("remakePercent", FormattableString.Invariant($"Must be at least 0 and below 100 %: at 100 % no casting would ever be good; {percent} was given."));
        }
    }

    private static void Currency(PriceInput input, InputErrors errors)
    {
        if (Currencies.MinorDigits(input.Currency) is not { } digits)
        {
            errors.Add("currency", $"There is no currency '{input.Currency}'. Give a code of ISO 4217 in capital letters, such as EUR or GBP.");
            return;
        }

        var unit = Currencies.MinorUnit(digits);
        if (input.RoundTo is { } step && errors.Positive("roundTo", step, MostMoney, "") && step % unit != 0)
        {
            errors.Add("roundTo", FormattableString.Invariant($"Must be a whole multiple of {unit}, the smallest amount of {input.Currency}; {step} was given."));
        }
    }

    private static void Margin(PriceInput input, InputErrors errors)
    {
        var ranged = errors.Within("marginPercent", input.MarginPercent, 0, MostPercent, "%")
            & errors.Within("taxPercent", input.TaxPercent, 0, MostPercent, "%")
            & errors.Within("fee.percent", input.Fee?.Percent ?? 0, 0, MostPercent, "%");
        if (ranged && PriceSum.LeftForCost(input) <= 0)
        {
            errors.Add("marginPercent", FormattableString.Invariant($"A margin of {input.MarginPercent} % and a fee of {input.Fee?.Percent ?? 0} % on a price with {input.TaxPercent} % tax leave nothing for the cost. Lower the margin or the fee."));
        }
    }
}
