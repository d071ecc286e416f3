namespace Studio.Bench.Tools.OtherResins;

/// <summary>A symmetric positive definite matrix within a band, factored L·D·Lᵀ in place.</summary>
internal sealed class Band(int size, int width)
{
    // row i holds columns i − width to i
    private readonly double[] values = new double[size * (width + 1)];

    public void Clear() => Array.Clear(values);

    /// <summary>Adds to an entry on or below the diagonal.</summary>
    public void Add(int row, int column, double value) => values[(row * (width + 1)) + column - row + width] += value;

    public void Factor()
    {
        Span<double> scaled = stackalloc double[width + 1];
        for (var i = 0; i < size; i++)
        {
            var row = (i * (width + 1)) + width - i;
            var first = Math.Max(0, i - width);
            for (var j = first; j < i; j++)
            {
                var other = (j * (width + 1)) + width - j;
                var sum = values[row + j];
                for (var k = Math.Max(first, j - width); k < j; k++)
                {
                    sum -= scaled[k - first] * values[other + k];
                }

                scaled[j - first] = sum;
            }

            for (var j = first; j < i; j++)
            {
                var l = scaled[j - first] / values[(j * (width + 1)) + width];
                values[row + i] -= l * scaled[j - first];
                values[row + j] = l;
            }
        }
    }

    /// <summary>Solves in place.</summary>
    public void Solve(Span<double> x)
    {
        for (var i = 0; i < size; i++)
        {
            var row = (i * (width + 1)) + width - i;
            for (var k = Math.Max(0, i - width); k < i; k++)
            {
                x[i] -= values[row + k] * x[k];
            }
        }

        for (var i = size - 1; i >= 0; i--)
        {
            x[i] /= values[(i * (width + 1)) + width];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            var row = (i * (width + 1)) + width - i;
            for (var k = Math.Max(0, i - width); k < i; k++)
            {
                x[k] -= values[row + k] * x[i];
            }
        }
    }
}
