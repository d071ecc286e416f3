using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Heat;

/// <summary>The banded solve gives back what a matrix was multiplied with.</summary>
public sealed class BandedCholeskyTests
{
    [Fact]
    public void Solves_what_was_multiplied_for_every_size_and_band()
    {
        var random = new Random(7);
        foreach (var (size, band) in from s in Enumerable.Range(1, 24).Concat([61, 100, 203]) from b in Enumerable.Range(0, Math.Min(s, 14)).Concat([33, 74]) where b < s select (s, b))
        {
            var width = BandedCholesky.Width(band);
            var lower = new double[BandedCholesky.Length(size, band) + 3]; // longer than needed, as a buffer is that is used again
            foreach (var (row, column) in from c in Enumerable.Range(0, size) from r in Enumerable.Range(c, Math.Min(band + 1, size - c)) select (r, c))
            {
                lower[(column * width) + row - column] = row == column ? 2 * (band + 1) : random.NextDouble() - 0.5;
            }

            double[] before = [.. lower];
            double A(int i, int j) => Math.Abs(i - j) > band ? 0 : before[(Math.Min(i, j) * width) + Math.Abs(i - j)];
            double[] want = [.. Enumerable.Range(0, size).Select(_ => random.NextDouble())];
            double[] x = [.. Enumerable.Range(0, size).Select(i => Enumerable.Range(0, size).Sum(j => A(i, j) * want[j]))];
            Factored(lower, size, band).Solve(x);
            x.Zip(want, (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-12, $"size {size}, band {band}");
        }
    }

    [Fact]
    public void Refuses_a_matrix_that_is_not_positive_definite()
    {
        foreach (var (diagonal, off) in new[] { (1.0, 2.0), (double.NaN, 0), (-1, 0) })
        {
            var lower = new double[BandedCholesky.Length(2, 1)];
            (lower[0], lower[1], lower[BandedCholesky.Width(1)]) = (diagonal, off, 1);
            Should.Throw<InvalidOperationException>(() => Factored(lower, 2, 1));
        }
    }

    private static BandedCholesky Factored(double[] lower, int size, int band)
    {
        var factor = new BandedCholesky(lower, size, band);
        factor.Factor();
        return factor;
    }
}
