using System.Numerics;
using System.Runtime.CompilerServices;

namespace Studio.Engine.Heat;

/// <summary>
/// Cholesky factor of a symmetric positive definite matrix whose entries lie near its diagonal, kept column by column from the diagonal down (as LAPACK's lower band
/// storage). Four columns are worked at once on strips of rows that stay in registers.
/// </summary>
internal sealed class BandedCholesky
{
    private const int Block = 4;

    // rows below a column's band that a strip may touch, begun at the band's last row of the block's last column; they stay zero
    private static readonly int Pad = Block + (3 * Vector<double>.Count);

    private readonly double[] columns;
    private readonly int size;
    private readonly int whole;
    private readonly int band;
    private readonly int width;
    private readonly double[] per;
    private readonly double[] work;

    /// <summary>Makes ready for matrices of one size and band: column j stands at j · <see cref="Width"/>, its rows from the diagonal down, the rest of it zero.</summary>
    /// <param name="columns">The array; overwritten and kept; it may be longer than <see cref="Length"/>.</param>
    public BandedCholesky(double[] columns, int size, int band)
    {
        (this.columns, this.size, this.band, width) = (columns, size, band, Width(band));
        whole = Whole(size);
        (per, work) = (new double[whole], new double[whole + band + Pad + Block]);
    }

    /// <summary>How far apart two columns are in the array.</summary>
    public static int Width(int band) => band + 1 + Pad;

    /// <summary>Length of the array for a matrix.</summary>
    public static int Length(int size, int band) => Whole(size) * Width(band);

    /// <summary>Factors the matrix that stands in the array; allocates nothing.</summary>
    /// <exception cref="InvalidOperationException">It is not positive definite.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Factor()
    {
        for (var j = size; j < whole; j++)
        {
            Array.Clear(columns, j * width, width);
            columns[j * width] = 1; // a row of its own, so that every block has four
        }

        for (var j = 0; j < whole; j += Block)
        {
            Corner(j);
            for (var r = j + Block; r < j + Block + band && r < whole; r += 3 * Vector<double>.Count)
            {
                Strip(j, r);
            }
        }
    }

    /// <summary>Solves in place; allocates nothing.</summary>
    public void Solve(double[] x)
    {
        Array.Copy(x, work, size);
        Array.Clear(work, size, work.Length - size);
        for (var j = 0; j < whole; j += Block)
        {
            Down(j);
        }

        for (var j = whole - Block; j >= 0; j -= Block)
        {
            Up(j);
        }

        Array.Copy(work, x, size);
    }

    private static int Whole(int size) => (size + Block - 1) / Block * Block;

    private int At(int row, int column) => (column * width) + row - column;

    // the four by four on the diagonal
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Corner(int j)
    {
        ref var zero = ref columns[0];
        var (a0, a1, a2, a3) = (columns[At(j, j)], columns[At(j + 1, j)], columns[At(j + 2, j)], columns[At(j + 3, j)]);
        var (b1, b2, b3) = (columns[At(j + 1, j + 1)], columns[At(j + 2, j + 1)], columns[At(j + 3, j + 1)]);
        var (c2, c3, d3) = (columns[At(j + 2, j + 2)], columns[At(j + 3, j + 2)], columns[At(j + 3, j + 3)]);
        for (var k = Math.Max(0, j - band); k < j; k++)
        {
            ref var row = ref Unsafe.Add(ref zero, At(j, k));
            var (x0, x1, x2, x3) = (row, Unsafe.Add(ref row, 1), Unsafe.Add(ref row, 2), Unsafe.Add(ref row, 3));
            (a0, a1, a2, a3) = (a0 - (x0 * x0), a1 - (x1 * x0), a2 - (x2 * x0), a3 - (x3 * x0));
            (b1, b2, b3) = (b1 - (x1 * x1), b2 - (x2 * x1), b3 - (x3 * x1));
            (c2, c3, d3) = (c2 - (x2 * x2), c3 - (x3 * x2), d3 - (x3 * x3));
        }

        a0 = Root(j, a0);
        (a1, a2, a3) = (a1 * per[j], a2 * per[j], a3 * per[j]);
        b1 = Root(j + 1, b1 - (a1 * a1));
        (b2, b3) = ((b2 - (a2 * a1)) * per[j + 1], (b3 - (a3 * a1)) * per[j + 1]);
        c2 = Root(j + 2, c2 - (a2 * a2) - (b2 * b2));
        c3 = (c3 - (a3 * a2) - (b3 * b2)) * per[j + 2];
        d3 = Root(j + 3, d3 - (a3 * a3) - (b3 * b3) - (c3 * c3));
        (columns[At(j, j)], columns[At(j + 1, j)], columns[At(j + 2, j)], columns[At(j + 3, j)]) = (a0, a1, a2, a3);
        (columns[At(j + 1, j + 1)], columns[At(j + 2, j + 1)], columns[At(j + 3, j + 1)]) = (b1, b2, b3);
        (columns[At(j + 2, j + 2)], columns[At(j + 3, j + 2)], columns[At(j + 3, j + 3)]) = (c2, c3, d3);
    }

    private double Root(int row, double left)
    {
        if (!(left > 0))
        {
            throw new InvalidOperationException("The heat equation's matrix is not positive definite; a cell of the grid has no volume.");
        }

        var root = Math.Sqrt(left);
        per[row] = 1 / root;
        return root;
    }

    // rows r to r + 3 vectors of the four columns from j on
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Strip(int j, int r)
    {
        var w = Vector<double>.Count;
        ref var zero = ref columns[0];
        var (a, b, c, d) = (At(r, j), At(r, j + 1), At(r, j + 2), At(r, j + 3));
        var (a0, a1, a2) = (Load(ref zero, a), Load(ref zero, a + w), Load(ref zero, a + (2 * w)));
        var (b0, b1, b2) = (Load(ref zero, b), Load(ref zero, b + w), Load(ref zero, b + (2 * w)));
        var (c0, c1, c2) = (Load(ref zero, c), Load(ref zero, c + w), Load(ref zero, c + (2 * w)));
        var (d0, d1, d2) = (Load(ref zero, d), Load(ref zero, d + w), Load(ref zero, d + (2 * w)));
        for (var k = Math.Max(0, r - band); k < j; k++)
        {
            var at = At(r, k);
            ref var row = ref Unsafe.Add(ref zero, At(j, k));
            var (x0, x1, x2) = (Load(ref zero, at), Load(ref zero, at + w), Load(ref zero, at + (2 * w)));
            var f = new Vector<double>(-row);
            a0 = Vector.FusedMultiplyAdd(x0, f, a0);
            a1 = Vector.FusedMultiplyAdd(x1, f, a1);
            a2 = Vector.FusedMultiplyAdd(x2, f, a2);
            f = new Vector<double>(-Unsafe.Add(ref row, 1));
            b0 = Vector.FusedMultiplyAdd(x0, f, b0);
            b1 = Vector.FusedMultiplyAdd(x1, f, b1);
            b2 = Vector.FusedMultiplyAdd(x2, f, b2);
            f = new Vector<double>(-Unsafe.Add(ref row, 2));
            c0 = Vector.FusedMultiplyAdd(x0, f, c0);
            c1 = Vector.FusedMultiplyAdd(x1, f, c1);
            c2 = Vector.FusedMultiplyAdd(x2, f, c2);
            f = new Vector<double>(-Unsafe.Add(ref row, 3));
            d0 = Vector.FusedMultiplyAdd(x0, f, d0);
            d1 = Vector.FusedMultiplyAdd(x1, f, d1);
            d2 = Vector.FusedMultiplyAdd(x2, f, d2);
        }

        // within the four columns
        var (l1, l2, l3) = (columns[At(j + 1, j)], columns[At(j + 2, j)], columns[At(j + 3, j)]);
        var (m2, m3, n3) = (columns[At(j + 2, j + 1)], columns[At(j + 3, j + 1)], columns[At(j + 3, j + 2)]);
        (a0, a1, a2) = (a0 * per[j], a1 * per[j], a2 * per[j]);
        (b0, b1, b2) = ((b0 - (a0 * l1)) * per[j + 1], (b1 - (a1 * l1)) * per[j + 1], (b2 - (a2 * l1)) * per[j + 1]);
        (c0, c1, c2) = ((c0 - (a0 * l2) - (b0 * m2)) * per[j + 2], (c1 - (a1 * l2) - (b1 * m2)) * per[j + 2], (c2 - (a2 * l2) - (b2 * m2)) * per[j + 2]);
        (d0, d1, d2) = ((d0 - (a0 * l3) - (b0 * m3) - (c0 * n3)) * per[j + 3], (d1 - (a1 * l3) - (b1 * m3) - (c1 * n3)) * per[j + 3], (d2 - (a2 * l3) - (b2 * m3) - (c2 * n3)) * per[j + 3]);
        Keep(ref zero, a, w, a0, a1, a2);
        Keep(ref zero, b, w, b0, b1, b2);
        Keep(ref zero, c, w, c0, c1, c2);
        Keep(ref zero, d, w, d0, d1, d2);
    }

    // L·y = x for four columns
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Down(int j)
    {
        var x0 = work[j] * per[j];
        var x1 = (work[j + 1] - (columns[At(j + 1, j)] * x0)) * per[j + 1];
        var x2 = (work[j + 2] - (columns[At(j + 2, j)] * x0) - (columns[At(j + 2, j + 1)] * x1)) * per[j + 2];
        var x3 = (work[j + 3] - (columns[At(j + 3, j)] * x0) - (columns[At(j + 3, j + 1)] * x1) - (columns[At(j + 3, j + 2)] * x2)) * per[j + 3];
        (work[j], work[j + 1], work[j + 2], work[j + 3]) = (x0, x1, x2, x3);
        var (v0, v1, v2, v3) = (new Vector<double>(-x0), new Vector<double>(-x1), new Vector<double>(-x2), new Vector<double>(-x3));
        ref var zero = ref columns[0];
        ref var to = ref work[0];
        var (a, b, c, d) = (At(j + Block, j), At(j + Block, j + 1), At(j + Block, j + 2), At(j + Block, j + 3));
        for (var k = 0; k < band; k += Vector<double>.Count)
        {
            var sum = Load(ref to, j + Block + k);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, a + k), v0, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, b + k), v1, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, c + k), v2, sum);
            sum = Vector.FusedMultiplyAdd(Load(ref zero, d + k), v3, sum);
            Store(ref to, j + Block + k, sum);
        }
    }

    // Lᵀ·x = y likewise
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Up(int j)
    {
        var (s0, s1, s2, s3) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        ref var zero = ref columns[0];
        ref var from = ref work[0];
        var (a, b, c, d) = (At(j + Block, j), At(j + Block, j + 1), At(j + Block, j + 2), At(j + Block, j + 3));
        for (var k = 0; k < band; k += Vector<double>.Count)
        {
            var x = Load(ref from, j + Block + k);
            s0 = Vector.FusedMultiplyAdd(Load(ref zero, a + k), x, s0);
            s1 = Vector.FusedMultiplyAdd(Load(ref zero, b + k), x, s1);
            s2 = Vector.FusedMultiplyAdd(Load(ref zero, c + k), x, s2);
            s3 = Vector.FusedMultiplyAdd(Load(ref zero, d + k), x, s3);
        }

        var x3 = (work[j + 3] - Vector.Sum(s3)) * per[j + 3];
        var x2 = (work[j + 2] - Vector.Sum(s2) - (columns[At(j + 3, j + 2)] * x3)) * per[j + 2];
        var x1 = (work[j + 1] - Vector.Sum(s1) - (columns[At(j + 2, j + 1)] * x2) - (columns[At(j + 3, j + 1)] * x3)) * per[j + 1];
        var x0 = (work[j] - Vector.Sum(s0) - (columns[At(j + 1, j)] * x1) - (columns[At(j + 2, j)] * x2) - (columns[At(j + 3, j)] * x3)) * per[j];
        (work[j], work[j + 1], work[j + 2], work[j + 3]) = (x0, x1, x2, x3);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Load(ref double from, int at) => Unsafe.ReadUnaligned<Vector<double>>(ref Unsafe.As<double, byte>(ref Unsafe.Add(ref from, at)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double to, int at, Vector<double> value) => Unsafe.WriteUnaligned(ref Unsafe.As<double, byte>(ref Unsafe.Add(ref to, at)), value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Keep(ref double to, int at, int w, Vector<double> one, Vector<double> two, Vector<double> three)
    {
        Store(ref to, at, one);
        Store(ref to, at + w, two);
        Store(ref to, at + (2 * w), three);
    }
}
