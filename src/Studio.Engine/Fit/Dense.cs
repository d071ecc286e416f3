namespace Studio.Engine.Fit;

/// <summary>Small full matrices, row by row.</summary>
internal static class Dense
{
    /// <summary>JᵀJ + 1.</summary>
    public static double[][] Square(double[][] j, int count) =>
        Make(count, (a, b) => j.Sum(row => row[a] * row[b]) + (a == b ? 1 : 0));

    /// <summary>Cholesky's lower triangle of a symmetric positive definite matrix.</summary>
    public static double[][] Factor(double[][] matrix)
    {
        var n = matrix.Length;
        var lower = Make(n, (_, _) => 0);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i][j];
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[i][k] * lower[j][k];
                }

                lower[i][j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-14)) : sum / lower[j][j];
            }
        }

        return lower;
    }

    /// <summary>Solves L·Lᵀ·x = b.</summary>
    public static double[] Solve(double[][] lower, double[] b)
    {
        double[] x = [.. b];
        for (var i = 0; i < x.Length; i++)
        {
            for (var k = 0; k < i; k++)
            {
                x[i] -= lower[i][k] * x[k];
            }

            x[i] /= lower[i][i];
        }

        for (var i = x.Length - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < x.Length; k++)
            {
                x[i] -= lower[k][i] * x[k];
            }

            x[i] /= lower[i][i];
        }

        return x;
    }

    /// <summary>(L·Lᵀ)⁻¹.</summary>
    public static double[][] Inverse(double[][] lower) =>
        [.. Enumerable.Range(0, lower.Length).Select(i => Solve(lower, [.. Enumerable.Range(0, lower.Length).Select(j => i == j ? 1.0 : 0)]))];

    public static double[][] Times(double[][] a, double[][] b) => Make(a.Length, (i, j) => a[i].Select((x, k) => x * b[k][j]).Sum());

    public static double[][] Turned(double[][] a) => Make(a.Length, (i, j) => a[j][i]);

    private static double[][] Make(int n, Func<int, int, double> at) =>
        [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(j => at(i, j)).ToArray())];
}
