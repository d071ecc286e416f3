namespace Studio.Engine.Price;

/// <summary>What a piece must cost: the contract's <c>calc price</c>. Decimal throughout; amounts are rounded once, at the end.</summary>
public static class PriceCalculation
{
    /// <summary>Works out the price.</summary>
    /// <returns>The result, or every input error at once.</returns>
    public static Outcome<PriceResult> Run(PriceInput input) => Run(input, new InputErrors());

    /// <summary>As <see cref="Run(PriceInput)"/>, after reading found errors of its own.</summary>
    internal static Outcome<PriceResult> Run(PriceInput input, InputErrors errors)
    {
        errors.Settle();
        PriceCheck.Fields(input, errors);
        if (errors.None && Attempt(input) is { } result)
        {
            return Outcome<PriceResult>.Of(result);
        }

        if (errors.None)
        {
            errors.Add("", "An amount came out too large to work with. Look for a pack size, a yield or a margin that is far too small or too large.");
        }

        return Outcome<PriceResult>.Refused(errors.All);
    }

    /// <summary>Cost of the material used, waste of the pack included: used / packSize × packPrice / yield.</summary>
    internal static decimal Cost(MaterialLine line) => line.Used * line.PackPrice * 100 / (line.PackSize * line.YieldPercent);

    internal static decimal Cost(LabourLine line) => line.Minutes * line.RatePerHour / 60;

    internal static decimal Cost(EquipmentLine line) => line.Hours * line.RatePerHour;

    private static PriceResult? Attempt(PriceInput input)
    {
        try
        {
            return new PriceSum(input).Result();
        }
        catch (ArithmeticException)
        {
            return null;
        }
    }
}
