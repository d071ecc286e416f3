namespace Studio.Bench.Tools.OtherResins;

/// <summary>A made-up resin's truth: chemistry, slowed, on a time scale.</summary>
/// <param name="PerS">Of the chemistry's time scale [1/s].</param>
internal sealed record DrawnKinetics(Chemistry Chemistry, Slowing Slowing, double PerS)
{
    /// <summary>Conversion per second.</summary>
    public double Rate(double conversion, double celsius)
    {
        var left = 1 - conversion;
        return left <= 0 ? 0 : PerS * left * Slowing.Left(Chemistry.Rate(conversion, celsius) / left, conversion, celsius);
    }

    /// <summary>Hours of a film that stays at one temperature to a conversion; infinite where that takes more than a year. Runge and Kutta over time, steps of a thousandth of it.</summary>
    public double FilmHours(double celsius, double conversion)
    {
        const double mostS = 365 * 86400.0;
        var (done, atS) = (0.0, 0.0);
        while (true)
        {
            var rate = Rate(done, celsius);
            var dt = Math.Min(2e-3 / Math.Max(rate, 1e-12), 0.02 * (atS + (2e-3 / Math.Max(rate, 1e-12))));
            var a = Rate(done + (dt / 2 * rate), celsius);
            var b = Rate(done + (dt / 2 * a), celsius);
            var c = Rate(done + (dt * b), celsius);
            var next = done + (dt / 6 * (rate + (2 * a) + (2 * b) + c));
            if (next >= conversion)
            {
                return (atS + (dt * (conversion - done) / (next - done))) / 3600;
            }

            (done, atS) = (next, atS + dt);
            if (atS > mostS)
            {
                return double.PositiveInfinity;
            }
        }
    }
}
