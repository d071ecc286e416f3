namespace Studio.Bench.Tools.OtherResins;

/// <summary>The amine scheme's table beside its four species integrated one by one (Runge and Kutta of fourth order).</summary>
internal static class SchemeCheck
{
    /// <summary>How badly amine and hydrogens are kept, and how far the two conversions lie apart at worst.</summary>
    public static (double Balance, double Apart) Run()
    {
        double balance = 0, apart = 0;
        foreach (var (reactivity, ratio) in new[] { (0.15, 0.92), (0.5, 1.0), (0.9, 1.08) })
        {
            var scheme = new AmineScheme(reactivity, ratio) { Impurity = 0.03, Uncatalysed = 0.01, UncatalysedKJ = 80, CatalysedKJ = 55 };
            double[] s = [1, ratio / 2, 0, 0];
            var done = 0.0;
            const double dt = 0.005;
            for (var step = 0; step < 8000; step++)
            {
                s = Step(s, dt, x => Slopes(scheme, x));
                var a = scheme.Rate(done, 40);
                var b = scheme.Rate(done + (dt / 2 * a), 40);
                var c = scheme.Rate(done + (dt / 2 * b), 40);
                done += dt / 6 * (a + (2 * b) + (2 * c) + scheme.Rate(done + (dt * c), 40));
                balance = Math.Max(balance, Math.Max(Math.Abs(s[1] + s[2] + s[3] - (ratio / 2)), Math.Abs(1 - s[0] - s[2] - (2 * s[3]))));
                apart = Math.Max(apart, Math.Abs(done - ((1 - s[0]) / scheme.Most)));
            }
        }

        return (balance, apart);
    }

    // epoxide, primary, secondary and tertiary amine
    private static double[] Slopes(AmineScheme scheme, double[] s)
    {
        var k = scheme.Constant(1 - s[0], 40);
        var (first, second) = (2 * k * s[0] * s[1], scheme.Reactivity * k * s[0] * s[2]);
        return [-first - second, -first, first - second, second];
    }

    private static double[] Step(double[] s, double dt, Func<double[], double[]> slopes)
    {
        var a = slopes(s);
        var b = slopes(Moved(a, dt / 2));
        var c = slopes(Moved(b, dt / 2));
        var d = slopes(Moved(c, dt));
        return [.. s.Select((x, i) => x + (dt / 6 * (a[i] + (2 * b[i]) + (2 * c[i]) + d[i])))];

        double[] Moved(double[] by, double h) => [.. s.Select((x, i) => x + (h * by[i]))];
    }
}
