namespace Studio.Engine.Moulds;

/// <summary>
/// Piecewise cubics through points that keep rising where the points rise: slopes by the weighted harmonic mean of the neighbouring secants
/// (Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300), the ends by the three-point rule kept monotone, as in scipy's PchipInterpolator.
/// </summary>
public static class MonotoneCubic
{
    /// <summary>Slope at every point.</summary>
    /// <param name="x">Strictly rising, at least two.</param>
    /// <param name="y">As many.</param>
    public static double[] Slopes(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var n = x.Count;
        var secants = Enumerable.Range(0, n - 1).Select(i => (y[i + 1] - y[i]) / (x[i + 1] - x[i])).ToArray();
        if (n == 2)
        {
            return [secants[0], secants[0]];
        }

        var slopes = new double[n];
        for (var i = 1; i < n - 1; i++)
        {
            var (before, after) = (x[i] - x[i - 1], x[i + 1] - x[i]);
            var (w1, w2) = ((2 * after) + before, after + (2 * before));
            slopes[i] = secants[i - 1] * secants[i] <= 0 ? 0 : (w1 + w2) / ((w1 / secants[i - 1]) + (w2 / secants[i]));
        }

        slopes[0] = End(x[1] - x[0], x[2] - x[1], secants[0], secants[1]);
        slopes[^1] = End(x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], secants[^1], secants[^2]);
        return slopes;
    }

    /// <summary>Value inside a piece.</summary>
    public static double Value(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> slopes, int piece, double at)
    {
        var (t, _, c1, c2, c3) = Terms(x, y, slopes, piece, at);
        return y[piece] + (t * (c1 + (t * (c2 + (t * c3)))));
    }

    /// <summary>Derivative inside a piece.</summary>
    public static double Derivative(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> slopes, int piece, double at)
    {
        var (t, h, c1, c2, c3) = Terms(x, y, slopes, piece, at);
        return (c1 + (t * ((2 * c2) + (t * 3 * c3)))) / h;
    }

    /// <summary>Integral from the start of a piece to a point inside it.</summary>
    public static double Integral(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> slopes, int piece, double at)
    {
        var (t, h, c1, c2, c3) = Terms(x, y, slopes, piece, at);
        return h * t * (y[piece] + (t * ((c1 / 2) + (t * ((c2 / 3) + (t * c3 / 4))))));
    }

    private static (double T, double H, double C1, double C2, double C3) Terms(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> slopes, int i, double at)
    {
        var h = x[i + 1] - x[i];
        var rise = y[i + 1] - y[i];
        var (m0, m1) = (slopes[i] * h, slopes[i + 1] * h);
        return ((at - x[i]) / h, h, m0, (3 * rise) - (2 * m0) - m1, m0 + m1 - (2 * rise));
    }

    private static double End(double near, double far, double nearSecant, double farSecant)
    {
        var slope = ((((2 * near) + far) * nearSecant) - (near * farSecant)) / (near + far);
        return Math.Sign(slope) != Math.Sign(nearSecant) ? 0
            : Math.Sign(nearSecant) != Math.Sign(farSecant) && Math.Abs(slope) > Math.Abs(3 * nearSecant) ? 3 * nearSecant
            : slope;
    }
}
