using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>
/// Resins that would have shown the same sheet or log. A normal distribution alone will not do: what a layer becomes is anything but straight in a resin's numbers, and a
/// draw two deviations off would have printed quite another sheet. So each draw is led back to where the data are as far off as the straight law foretold for it
/// (a step of the kind of randomised maximum likelihood; Oliver, He and Reynolds 1996, from memory).
/// </summary>
public static class FitMembers
{
    /// <summary>How many are kept with a state.</summary>
    public const int Count = 24;

    // how uncertain an activation energy stays in spite of all that was seen at one temperature [kJ/mol], and over how many kelvin that shrinks
    private const double UnseenKJ = 9;
    private const double SeenK = 7;

    // shares of rate and heat, and a difference of the gel conversion (set on made-up resins of other kinetics, docs/measurements.md)
    private const double ApartRate = 0.035;
    private const double ApartHeat = 0.03;
    private const double ApartGel = 0.065;

    private const int Turns = 8;
    private const double Near = 0.3;

    // root of the mean square in standard deviations of what was seen: beyond, a draw is taken for lost
    private const double Lost = 0.5;
    private const double Shorter = 0.7;
    private const double LeastShare = 0.2;
    private const double MostStepSd = 1.5;

    /// <summary>The numbers of each.</summary>
    internal static IReadOnlyList<IReadOnlyList<double>> Of(FitState prior, FitState after, GaussFound found, Func<double[], double[]> residuals, double widen)
    {
        var lower = Dense.Factor(Dense.Inverse(Dense.Factor(Dense.Square(found.Jacobian, FitNumbers.Count))));
        return [.. FitDraws.Of(Count).Select(draw => (IReadOnlyList<double>)One(draw))];

        // a draw that cannot be led back stands so far off that the straight law says nothing of it; a nearer one of the same direction is taken in its place
        double[] One(double[] draw)
        {
            double share = 1;
            var (unit, missed) = Led(draw, share);
            while (missed > Lost && share > LeastShare)
            {
                share *= Shorter;
                var nearer = Led(draw, share);
                (unit, missed) = nearer.Missed < missed ? nearer : (unit, missed);
            }

            return Apart(Turned(after, prior.At(unit), draw[FitNumbers.Count]), draw, after.Apart);
        }

        // the nearest of what was tried; a step that leads away is tried again at half its length
        (double[] Unit, double Missed) Led(double[] draw, double share)
        {
            var off = Enumerable.Range(0, FitNumbers.Count).Select(i => share * widen * Enumerable.Range(0, i + 1).Sum(j => lower[i][j] * draw[j])).ToArray();
            var aim = found.Residuals.Select((r, k) => r + Dot(found.Jacobian[k], off)).ToArray();
            double[] unit = [.. found.Unit.Zip(off, (a, b) => a + b)];
            if (aim.Length == 0)
            {
                return (unit, 0);
            }

            var miss = Miss(unit);
            double length = 1;
            for (var turn = 0; turn < Turns && miss.Max(Math.Abs) > Near; turn++)
            {
                var pull = Enumerable.Range(0, FitNumbers.Count).Select(i => Enumerable.Range(0, miss.Length).Sum(k => found.Jacobian[k][i] * miss[k])).ToArray();
                var back = Times(lower, pull);
                var step = length * Math.Min(1, MostStepSd / Math.Max(1e-9, back.Max(Math.Abs)));
                double[] next = [.. unit.Zip(back, (u, b) => u - (step * b))];
                var left = Miss(next);
                if (Dot(left, left) < Dot(miss, miss))
                {
                    (unit, miss, length) = (next, left, Math.Min(1, 2 * length));
                }
                else
                {
                    length /= 2;
                }
            }

            return (unit, Math.Sqrt(Dot(miss, miss) / miss.Length));

            double[] Miss(double[] at) => [.. residuals(Turned(after, prior.At(at), draw[FitNumbers.Count])).Zip(aim, (r, a) => Math.Clamp(r - a, -30, 30))];
        }
    }

    /// <summary>A resin's numbers, its rate turned about the temperatures at which it was seen: there it stays as quick as it was, whatever its energy.</summary>
    internal static double[] Turned(FitState state, double[] numbers, double draw)
    {
        var (least, most) = state.SeenCelsius.Count == 0 ? (state.AtCelsius, state.AtCelsius) : (state.SeenCelsius.Min(), state.SeenCelsius.Max());
        var unseen = UnseenKJ / (1 + Math.Pow((most - least) / SeenK, 2));
        var known = state.Sd(FitNumbers.ActivationKJ);
        var more = draw * Math.Sqrt(Math.Max(0, (unseen * unseen) - (known * known)));
        double[] turned = [.. numbers];
        turned[FitNumbers.ActivationKJ] += more;
        turned[FitNumbers.LogRate] += 1000 * more / Kinetics.GasConstant * ((1 / (273.15 + ((least + most) / 2))) - (1 / Kinetics.ReferenceK));
        return turned;
    }

    /// <summary>The model is not the resin: what it foretells of another layer than the one that was seen is off by so much, and no number of logs takes that away.</summary>
    internal static double[] Apart(double[] numbers, double[] draw, double share)
    {
        double[] apart = [.. numbers];
        apart[FitNumbers.LogRate] += share * ApartRate * draw[FitNumbers.Count + 1];
        apart[FitNumbers.LogHeat] += share * ApartHeat * draw[FitNumbers.Count + 2];
        apart[FitNumbers.Gel] += share * ApartGel * draw[FitNumbers.Count + 3];
        return apart;
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    // L·Lᵀ·x
    private static double[] Times(double[][] lower, double[] x)
    {
        var across = Enumerable.Range(0, x.Length).Select(j => Enumerable.Range(j, x.Length - j).Sum(i => lower[i][j] * x[i])).ToArray();
        return [.. Enumerable.Range(0, x.Length).Select(i => Enumerable.Range(0, i + 1).Sum(j => lower[i][j] * across[j]))];
    }
}
