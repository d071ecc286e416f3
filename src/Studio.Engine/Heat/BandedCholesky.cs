namespace Studio.Engine.Heat;

/// <summary>Cholesky factor of a symmetric positive definite matrix whose entries lie near its diagonal (lower band, row by row).</summary>
internal sealed class BandedCholesky
{
    private readonly double[] rows;
    private readonly int size;
    private readonly int band;
    private readonly int width;

    private BandedCholesky(double[] rows, int size, int band) => (this.rows, this.size, this.band, width) = (rows, size, band, band + 1);

    /// <summary>Factors a matrix given as its lower band: row i holds columns i − band to i. The array is overwritten and kept.</summary>
    /// <exception cref="InvalidOperationException">The matrix is not positive definite.</exception>
    public static BandedCholesky Factor(double[] lower, int size, int band)
    {
        var factor = new BandedCholesky(lower, size, band);
        factor.Run();
        return factor;
    }

    /// <summary>Solves in place.</summary>
    public void Solve(double[] x)
    {
        for (var i = 0; i < size; i++)
        {
            var first = Math.Max(0, i - band);
            var count = i - first;
            var row = rows.AsSpan((i * width) + (band - count), count);
            x[i] = (x[i] - Dot(row, x.AsSpan(first, count))) / rows[(i * width) + band];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            var value = x[i] /= rows[(i * width) + band];
            var first = Math.Max(0, i - band);
            var count = i - first;
            Take(x.AsSpan(first, count), rows.AsSpan((i * width) + (band - count), count), value);
        }
    }

    private void Run()
    {
        for (var i = 0; i < size; i++)
        {
            var firstI = Math.Max(0, i - band);
            for (var j = firstI; j <= i; j++)
            {
                var first = Math.Max(firstI, Math.Max(0, j - band));
                var count = j - first;
                var a = rows.AsSpan((i * width) + band - (i - first), count);
                var b = rows.AsSpan((j * width) + band - (j - first), count);
                var value = rows[(i * width) + band - (i - j)] - Dot(a, b);
                if (j < i)
                {
                    rows[(i * width) + band - (i - j)] = value / rows[(j * width) + band];
                }
                else if (value > 0)
                {
                    rows[(i * width) + band] = Math.Sqrt(value);
                }
                else
                {
                    throw new InvalidOperationException("The heat equation's matrix is not positive definite; a cell of the grid has no volume.");
                }
            }
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = System.Numerics.Vector<double>.Zero;
        var step = System.Numerics.Vector<double>.Count;
        var k = 0;
        for (; k <= a.Length - step; k += step)
        {
            sum += new System.Numerics.Vector<double>(a.Slice(k, step)) * new System.Numerics.Vector<double>(b.Slice(k, step));
        }

        var total = System.Numerics.Vector.Sum(sum);
        for (; k < a.Length; k++)
        {
            total += a[k] * b[k];
        }

        return total;
    }

    private static void Take(Span<double> from, ReadOnlySpan<double> row, double times)
    {
        var step = System.Numerics.Vector<double>.Count;
        var many = new System.Numerics.Vector<double>(times);
        var k = 0;
        for (; k <= row.Length - step; k += step)
        {
            (new System.Numerics.Vector<double>(from.Slice(k, step)) - (many * new System.Numerics.Vector<double>(row.Slice(k, step)))).CopyTo(from.Slice(k, step));
        }

        for (; k < row.Length; k++)
        {
            from[k] -= times * row[k];
        }
    }
}
