using System.Numerics;
using System.Runtime.CompilerServices;

namespace Studio.Engine.Heat;

/// <summary>
/// Cholesky factor of a symmetric positive definite matrix whose entries lie near its diagonal (lower band, row by row).
/// Four rows are worked at once, so that what they share is read once and their sums do not wait for each other.
/// </summary>
internal sealed class BandedCholesky
{
    private const int Block = 4;

    private readonly double[] rows;
    private readonly int size;
    private readonly int band;
    private readonly int width;

    private BandedCholesky(double[] rows, int size, int band) => (this.rows, this.size, this.band, width) = (rows, size, band, band + 1);

    /// <summary>Factors a matrix given as its lower band: row i holds columns i − band to i. The array is overwritten and kept; it may be longer than needed.</summary>
    /// <exception cref="InvalidOperationException">The matrix is not positive definite.</exception>
    public static BandedCholesky Factor(double[] lower, int size, int band)
    {
        var factor = new BandedCholesky(lower, size, band);
        factor.Run();
        return factor;
    }

    /// <summary>Solves in place; allocates nothing.</summary>
    public void Solve(double[] x)
    {
        Span<double> sums = stackalloc double[Block];
        var i = 0;
        for (; i + Block <= size; i += Block)
        {
            Dots(i, Math.Max(0, i + Block - 1 - band), i, x, 0, sums);
            for (var q = 0; q < Block; q++)
            {
                x[i + q] = (x[i + q] - sums[q] - Part(i + q, Math.Max(0, i + q - band), Math.Min(i, Math.Max(0, i + Block - 1 - band)), x) - Part(i + q, Math.Max(i, i + q - band), i + q, x)) / rows[At(i + q, i + q)];
            }
        }

        for (; i < size; i++)
        {
            x[i] = (x[i] - Part(i, Math.Max(0, i - band), i, x)) / rows[At(i, i)];
        }

        for (i = size - 1; i >= size - (size % Block); i--)
        {
            x[i] /= rows[At(i, i)];
            Take(i, Math.Max(0, i - band), i, x);
        }

        for (i -= Block - 1; i >= 0; i -= Block)
        {
            var shared = Math.Min(i, Math.Max(0, i + Block - 1 - band));
            for (var q = Block - 1; q >= 0; q--)
            {
                x[i + q] /= rows[At(i + q, i + q)];
                Take(i + q, Math.Max(0, i + q - band), shared, x);
                Take(i + q, Math.Max(i, i + q - band), i + q, x);
            }

            TakeAll(i, shared, i, x);
        }
    }

    private int At(int row, int column) => (row * width) + band - row + column;

    private void Run()
    {
        Span<double> sums = stackalloc double[Block];
        for (var i = 0; i < size; i++)
        {
            var first = Math.Max(0, i - band);
            var j = first;
            for (; j + Block <= i; j += Block)
            {
                // this row against four finished ones
                Dots(j, first, j, rows, At(i, 0), sums);
                for (var q = 0; q < Block; q++)
                {
                    var sum = sums[q];
                    for (var c = j; c < j + q; c++)
                    {
                        sum += rows[At(i, c)] * rows[At(j + q, c)];
                    }

                    rows[At(i, j + q)] = (rows[At(i, j + q)] - sum) / rows[At(j + q, j + q)];
                }
            }

            for (; j <= i; j++)
            {
                double sum = 0;
                for (var c = first; c < j; c++)
                {
                    sum += rows[At(i, c)] * rows[At(j, c)];
                }

                var value = rows[At(i, j)] - sum;
                if (j < i)
                {
                    rows[At(i, j)] = value / rows[At(j, j)];
                }
                else if (value > 0)
                {
                    rows[At(i, i)] = Math.Sqrt(value);
                }
                else
                {
                    throw new InvalidOperationException("The heat equation's matrix is not positive definite; a cell of the grid has no volume.");
                }
            }
        }
    }

    // four rows from i on, each times x, over the columns from first to end, which all of them have; column 0 would meet x at with
    private void Dots(int i, int first, int end, double[] x, int with, Span<double> sums)
    {
        ref var zero = ref rows[0];
        ref var other = ref x[0];
        var (s0, s1, s2, s3) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var (a, b, c, d) = (At(i, 0), At(i + 1, 0), At(i + 2, 0), At(i + 3, 0));
        var k = first;
        for (; k <= end - Vector<double>.Count; k += Vector<double>.Count)
        {
            var v = Load(ref other, with + k);
            s0 = Vector.FusedMultiplyAdd(Load(ref zero, a + k), v, s0);
            s1 = Vector.FusedMultiplyAdd(Load(ref zero, b + k), v, s1);
            s2 = Vector.FusedMultiplyAdd(Load(ref zero, c + k), v, s2);
            s3 = Vector.FusedMultiplyAdd(Load(ref zero, d + k), v, s3);
        }

        (sums[0], sums[1], sums[2], sums[3]) = (Vector.Sum(s0), Vector.Sum(s1), Vector.Sum(s2), Vector.Sum(s3));
        for (; k < end; k++)
        {
            var v = x[with + k];
            sums[0] += rows[a + k] * v;
            sums[1] += rows[b + k] * v;
            sums[2] += rows[c + k] * v;
            sums[3] += rows[d + k] * v;
        }
    }

    private double Part(int row, int first, int end, double[] x)
    {
        double sum = 0;
        for (var c = first; c < end; c++)
        {
            sum += rows[At(row, c)] * x[c];
        }

        return sum;
    }

    private void Take(int row, int first, int end, double[] x)
    {
        var value = x[row];
        for (var c = first; c < end; c++)
        {
            x[c] -= rows[At(row, c)] * value;
        }
    }

    private void TakeAll(int i, int first, int end, double[] x)
    {
        ref var zero = ref rows[0];
        ref var to = ref x[0];
        var (a, b, c, d) = (At(i, 0), At(i + 1, 0), At(i + 2, 0), At(i + 3, 0));
        var (x0, x1, x2, x3) = (new Vector<double>(-x[i]), new Vector<double>(-x[i + 1]), new Vector<double>(-x[i + 2]), new Vector<double>(-x[i + 3]));
        var k = first;
        for (; k <= end - Vector<double>.Count; k += Vector<double>.Count)
        {
            var sum = Load(ref to, k);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, a + k), x0, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, b + k), x1, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, c + k), x2, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, d + k), x3, sum);
            Unsafe.WriteUnaligned(ref Unsafe.As<double, byte>(ref Unsafe.Add(ref to, k)), sum);
        }

        for (; k < end; k++)
        {
            x[k] -= (rows[a + k] * x[i]) + (rows[b + k] * x[i + 1]) + (rows[c + k] * x[i + 2]) + (rows[d + k] * x[i + 3]);
        }
    }

    private static Vector<double> Load(ref double from, int at) => Unsafe.ReadUnaligned<Vector<double>>(ref Unsafe.As<double, byte>(ref Unsafe.Add(ref from, at)));
}
