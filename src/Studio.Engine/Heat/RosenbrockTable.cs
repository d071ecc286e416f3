namespace Studio.Engine.Heat;

/// <summary>
/// The Rosenbrock method of four stages and third order by Rang and Angermann (BIT 45, 2005, 761; there ROS34PW2), stiffly accurate and L-stable, with an embedded
/// second order; it keeps its order whatever matrix stands for the Jacobian, so a matrix that was factored before may be used again. Coefficients from memory; tests
/// check its order conditions. Given for the variables in which no matrix is multiplied within a stage (Hairer and Wanner II, section IV.7).
/// </summary>
internal static class RosenbrockTable
{
    public const int Stages = 4;

    public const double Gamma = 4.3586652150845900e-01;

    /// <summary>Aᵢⱼ: how much of stage j the place of stage i takes in.</summary>
    public static readonly double[][] Place =
    [
        [0, 0, 0, 0],
        [8.7173304301691801e-01, 0, 0, 0],
        [8.4457060015369423e-01, -1.1299064236484185e-01, 0, 0],
        [0, 0, 1, 0],
    ];

    /// <summary>Γᵢⱼ.</summary>
    public static readonly double[][] Tilt =
    [
        [Gamma, 0, 0, 0],
        [-8.7173304301691801e-01, Gamma, 0, 0],
        [-9.0338057013044082e-01, 5.4180672388095326e-02, Gamma, 0],
        [2.4212380706095346e-01, -1.2232505839045147e+00, 5.4526025533510214e-01, Gamma],
    ];

    /// <summary>bᵢ of the third order.</summary>
    public static readonly double[] Weight = [2.4212380706095346e-01, -1.2232505839045147e+00, 1.5452602553351020e+00, Gamma];

    /// <summary>bᵢ of the second order.</summary>
    public static readonly double[] Embedded = [3.7810903145819369e-01, -9.6042292212423178e-02, 5.0000000000000000e-01, 2.1793326075422950e-01];

    private static readonly double[][] Turned = Inverse(Tilt);

    /// <summary>Place in the turned variables, A·Γ⁻¹.</summary>
    public static readonly double[][] A = Times(Place, Turned);

    /// <summary>1/γ·1 − Γ⁻¹.</summary>
    public static readonly double[][] C = [.. Turned.Select((row, i) => row.Select((x, j) => (i == j ? 1 / Gamma : 0) - x).ToArray())];

    /// <summary>Weights in the turned variables, b·Γ⁻¹.</summary>
    public static readonly double[] M = Times([Weight], Turned)[0];

    /// <summary>Third less second order.</summary>
    public static readonly double[] E = Times([[.. Weight.Zip(Embedded, (b, e) => b - e)]], Turned)[0];

    /// <summary>When each stage is, as a share of the step.</summary>
    public static readonly double[] Share = [.. Place.Select(row => row.Sum())];

    /// <summary>How much of the step's change of what is given from outside each stage takes in.</summary>
    public static readonly double[] Slope = [.. Tilt.Select(row => row.Sum())];

    private static double[][] Times(double[][] a, double[][] b) =>
        [.. a.Select(row => Enumerable.Range(0, Stages).Select(j => row.Select((x, k) => x * b[k][j]).Sum()).ToArray())];

    // of a lower triangle, by columns
    private static double[][] Inverse(double[][] lower)
    {
        var inverse = lower.Select(_ => new double[Stages]).ToArray();
        for (var j = 0; j < Stages; j++)
        {
            for (var i = j; i < Stages; i++)
            {
                var sum = i == j ? 1.0 : 0;
                for (var k = j; k < i; k++)
                {
                    sum -= lower[i][k] * inverse[k][j];
                }

                inverse[i][j] = sum / lower[i][i];
            }
        }

        return inverse;
    }
}
