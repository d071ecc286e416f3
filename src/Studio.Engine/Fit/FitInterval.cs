namespace Studio.Engine.Fit;

/// <summary>Nine times in ten the value lies inside, if the model is of the right kind.</summary>
/// <param name="From">5 % quantile.</param>
/// <param name="To">95 % quantile.</param>
public sealed record FitInterval(double From, double To)
{
    /// <summary>The 5 and 95 % quantiles of what the members gave, by the place p(n + 1) in their order (Hyndman and Fan 1996, type 6).</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static FitInterval Of(IEnumerable<double> values)
    {
        double[] order = [.. values.Order()];
        return order.Length == 0 ? throw new ArgumentException("An interval needs values.", nameof(values)) : new(At(order, 0.05), At(order, 0.95));
    }

    /// <summary>Whether a value lies inside.</summary>
    public bool Holds(double value) => value >= From && value <= To;

    private static double At(double[] order, double share)
    {
        var place = Math.Clamp((share * (order.Length + 1)) - 1, 0, order.Length - 1);
        var below = (int)place;
        return order[below] + ((place - below) * (order[Math.Min(below + 1, order.Length - 1)] - order[below]));
    }
}
