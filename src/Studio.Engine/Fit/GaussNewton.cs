namespace Studio.Engine.Fit;

/// <summary>Where the search ended.</summary>
/// <param name="Mean">Most probable values.</param>
/// <param name="Spread">Lower triangle L of Laplace's covariance L·Lᵀ.</param>
/// <param name="Residuals">Of the data, in their standard deviations.</param>
/// <param name="FarSd2">How far the values moved, squared, in the prior's standard deviations.</param>
/// <param name="Trials">How often the model was asked.</param>
internal sealed record GaussFound(double[] Mean, double[][] Spread, double[] Residuals, double FarSd2, int Trials)
{
    /// <summary>Where it ended, in coordinates in which the prior is of unit size.</summary>
    public required double[] Unit { get; init; }

    /// <summary>Of the residuals by those coordinates.</summary>
    public required double[][] Jacobian { get; init; }
}

/// <summary>
/// Least squares of residuals with a normal prior, damped (Levenberg 1944, Marquardt 1963), in coordinates in which the prior is of unit size; Laplace's covariance at the end.
/// </summary>
internal sealed class GaussNewton
{
    private const int MostTurns = 9;
    private const double MostStepSd = 2.5;

    private readonly FitState prior;
    private readonly Func<double[], double[]> residuals;
    private readonly int count = FitNumbers.Count;
    private readonly double[] steps;
    private int trials;

    private GaussNewton(FitState prior, Func<double[], double[]> residuals)
    {
        (this.prior, this.residuals) = (prior, residuals);
        steps = [.. Enumerable.Range(0, count).Select(j => Enumerable.Range(0, count).Select(i => FitNumbers.Steps[i] / Math.Max(1e-12, Math.Abs(Spread(i, j)))).Append(0.4).Min())];
    }

    /// <summary>Searches from the prior's mean, or from a start.</summary>
    public static GaussFound Fit(FitState prior, Func<double[], double[]> residuals, double[]? start = null) => new GaussNewton(prior, residuals).Run(start);

    private GaussFound Run(double[]? start)
    {
        var z = start ?? new double[count];
        var r = Ask(z);
        var damping = 0.01;
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var jacobian = Slopes(z, r, central: false);
            var (better, rBetter, gain) = Step(z, r, jacobian, ref damping);
            if (better is null)
            {
                break;
            }

            (z, r) = (better, rBetter!);
            if (gain < 0.02)
            {
                break;
            }
        }

        var slopes = Slopes(z, r, central: true);
        return new(prior.At(z), Covariance(Dense.Square(slopes, count)), r, z.Sum(x => x * x), trials) { Unit = z, Jacobian = slopes };
    }

    private (double[]? Z, double[]? R, double Gain) Step(double[] z, double[] r, double[][] jacobian, ref double damping)
    {
        var square = Dense.Square(jacobian, count);
        var slope = Enumerable.Range(0, count).Select(j => -(z[j] + r.Select((x, k) => x * jacobian[k][j]).Sum())).ToArray();
        var now = Cost(z, r);
        for (var attempt = 0; attempt < 5; attempt++)
        {
            var more = 1 + damping;
            var damped = square.Select((row, i) => row.Select((x, j) => i == j ? x * more : x).ToArray()).ToArray();
            var delta = Dense.Solve(Dense.Factor(damped), slope);
            var scale = Math.Min(1, MostStepSd / delta.Max(Math.Abs));
            var trial = z.Select((x, j) => x + (scale * delta[j])).ToArray();
            var rTrial = Ask(trial);
            var gain = now - Cost(trial, rTrial);
            if (gain > 0)
            {
                damping = Math.Max(1e-4, damping / 10);
                return (trial, rTrial, gain);
            }

            damping *= attempt == 0 ? 10 : 30;
        }

        return (null, null, 0);
    }

    // z is of unit size before; L of the prior carries it back
    private double[][] Covariance(double[][] square)
    {
        var inverse = Dense.Inverse(Dense.Factor(square));
        var own = Enumerable.Range(0, count).Select(i => Enumerable.Range(0, count).Select(j => Spread(i, j)).ToArray()).ToArray();
        return Dense.Factor(Dense.Times(Dense.Times(own, inverse), Dense.Turned(own)));
    }

    private double[][] Slopes(double[] z, double[] r, bool central)
    {
        var slopes = r.Select(_ => new double[count]).ToArray();
        for (var j = 0; j < count; j++)
        {
            var up = Ask(Moved(z, j, steps[j]));
            var down = central ? Ask(Moved(z, j, -steps[j])) : r;
            for (var k = 0; k < r.Length; k++)
            {
                slopes[k][j] = (up[k] - down[k]) / (central ? 2 * steps[j] : steps[j]);
            }
        }

        return slopes;
    }

    private static double[] Moved(double[] z, int j, double by)
    {
        double[] moved = [.. z];
        moved[j] += by;
        return moved;
    }

    private static double Cost(double[] z, double[] r) => z.Sum(x => x * x) + r.Sum(x => x * x);

    private double Spread(int i, int j) => j < prior.Spread[i].Count ? prior.Spread[i][j] : 0;

    private double[] Ask(double[] z)
    {
        trials++;
        return residuals(prior.At(z));
    }
}
