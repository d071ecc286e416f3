using System.Runtime.CompilerServices;

namespace Studio.Engine;

/// <summary>Argument checks for programmers' mistakes. NaN and infinity never pass.</summary>
public static class Require
{
    /// <summary>Finite and at least <paramref name="min"/>, at most <paramref name="max"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, NaN or infinite; names the unit and the range.</exception>
    public static double Within(double value, double min, double max, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= min && value <= max))
        {
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"Must be between {min} and {max} {unit}."));
        }

        return value;
    }

    /// <summary>Finite and above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative, NaN or infinite; names the unit.</exception>
    public static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(name, value, $"Must be a finite number of {unit} above zero.");
        }

        return value;
    }
}
