using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Heat;

/// <summary>The banded solve gives back what a matrix was multiplied with.</summary>
public sealed class BandedCholeskyTests
{
    [Fact]
    public void Solves_what_was_multiplied_for_every_size_and_band()
    {
        var random = new Random(7);
        foreach (var (size, band) in from s in Enumerable.Range(1, 24) from b in Enumerable.Range(0, Math.Min(s, 14)) select (s, b))
        {
            var lower = new double[(size * (band + 1)) + 3]; // longer than needed, as a buffer is that is used again
            double A(int i, int j) => Math.Abs(i - j) > band ? 0 : lower[(Math.Max(i, j) * (band + 1)) + band - Math.Abs(i - j)];
            for (var k = 0; k < lower.Length; k++)
            {
                lower[k] = k % (band + 1) == band ? 2 * (band + 1) : random.NextDouble() - 0.5;
            }

            double[] want = [.. Enumerable.Range(0, size).Select(_ => random.NextDouble())];
            double[] x = [.. Enumerable.Range(0, size).Select(i => Enumerable.Range(0, size).Sum(j => A(i, j) * want[j]))];
            BandedCholesky.Factor(lower, size, band).Solve(x);
            x.Zip(want, (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-12, $"size {size}, band {band}");
        }
    }

    [Fact]
    public void Refuses_a_matrix_that_is_not_positive_definite()
    {
        Should.Throw<InvalidOperationException>(() => BandedCholesky.Factor([0, 1, 2, 1], 2, 1));
        Should.Throw<InvalidOperationException>(() => BandedCholesky.Factor([double.NaN], 1, 0));
    }
}
