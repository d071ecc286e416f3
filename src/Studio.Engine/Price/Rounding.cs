namespace Studio.Engine.Price;

/// <summary>Rounding of money. Half away from zero, as EN 16931 BR-CO-17 shows in its tests.</summary>
public static class Rounding
{
    // a decimal carries 28 digits; the last ones are dust from divisions such as 1/3 and must not lift a price by a penny
    private const int SettledDigits = 20;

    /// <summary>Rounds to a number of digits after the point, half away from zero.</summary>
    public static decimal To(decimal amount, int digits) => decimal.Round(Settle(amount), digits, MidpointRounding.AwayFromZero) + 0m;

    /// <summary>The smallest multiple of a step that is not below the amount.</summary>
    /// <param name="amount">Zero or more.</param>
    /// <param name="step">Above zero.</param>
    public static decimal UpTo(decimal amount, decimal step)
    {
        var settled = Settle(amount);
        var over = settled % step;
        return over == 0 ? settled : settled - over + step;
    }

    /// <summary>Keeps twenty significant digits.</summary>
    public static decimal Settle(decimal amount)
    {
        var whole = Math.Truncate(Math.Abs(amount));
        var digits = whole == 0 ? 0 : (int)Math.Floor(Math.Log10((double)whole)) + 1;
        return decimal.Round(amount, Math.Clamp(SettledDigits - digits, 0, SettledDigits), MidpointRounding.AwayFromZero);
    }
}
