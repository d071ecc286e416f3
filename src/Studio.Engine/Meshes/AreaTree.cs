namespace Studio.Engine.Meshes;

/// <summary>
/// Sums quadratics in z, each over its own stretch of levels, without ever taking one away again: a difference of running sums would drown the
/// area in the rounding of steep pieces. A stretch is split over the nodes of a binary tree, each quadratic kept by its Bernstein coefficients
/// there, and pushed down in halves (de Casteljau), which only averages.
/// </summary>
internal sealed class AreaTree
{
    private readonly double[] levels;
    private readonly int leaves;
    private readonly double[] nodes;

    /// <summary>Takes at least two rising levels; leaf i stands for what lies between levels i and i + 1.</summary>
    public AreaTree(double[] levels)
    {
        this.levels = levels;
        leaves = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)levels.Length - 1);
        nodes = new double[6 * leaves];
    }

    /// <summary>Adds what is swept, between two levels, between an edge from (p) and an edge to (q): half their cross product, which is a quadratic in z.</summary>
    public void Add(int from, int to, in RisingEdge p, in RisingEdge q, double sign)
    {
        var (left, right, step) = (from + leaves, to + leaves, 0);
        for (; left < right; left >>= 1, right >>= 1, step++)
        {
            if ((left & 1) == 1)
            {
                AddTo(left++, step, p, q, sign);
            }

            if ((right & 1) == 1)
            {
                AddTo(--right, step, p, q, sign);
            }
        }
    }

    /// <summary>Pushes everything down and gives the three coefficients of each leaf's area [mm²].</summary>
    public double[] Areas()
    {
        for (var (node, size) = (1, leaves); node < leaves; node++)
        {
            size = (node & (node - 1)) == 0 && node > 1 ? size / 2 : size;
            PushDown(node, size);
        }

        return nodes[(3 * leaves)..(3 * (leaves + levels.Length - 1))];
    }

    private void PushDown(int node, int size)
    {
        var first = (node * size) - leaves;
        var (low, middle, high) = (Level(first), Level(first + (size / 2)), Level(first + size));
        var u = high > low ? (middle - low) / (high - low) : 0.5;
        var (a, b, c) = (nodes[3 * node], nodes[(3 * node) + 1], nodes[(3 * node) + 2]);
        var (ab, bc) = (((1 - u) * a) + (u * b), ((1 - u) * b) + (u * c));
        var here = ((1 - u) * ab) + (u * bc);
        var child = nodes.AsSpan(6 * node, 6);
        (child[0], child[1], child[2]) = (child[0] + a, child[1] + ab, child[2] + here);
        (child[3], child[4], child[5]) = (child[3] + here, child[4] + bc, child[5] + c);
    }

    private double Level(int i) => levels[Math.Min(i, levels.Length - 1)];

    private void AddTo(int node, int step, in RisingEdge p, in RisingEdge q, double sign)
    {
        var first = (node << step) - leaves;
        var (low, high) = (levels[first], Level(first + (1 << step)));
        var (p0, q0, p1, q1) = (p.At(low), q.At(low), p.At(high), q.At(high));
        var at = nodes.AsSpan(3 * node, 3);
        at[0] += sign / 2 * Cross(p0, q0);
        at[1] += sign / 4 * (Cross(p0, q1) + Cross(p1, q0));
        at[2] += sign / 2 * Cross(p1, q1);
    }

    private static double Cross((double X, double Y) a, (double X, double Y) b) => (a.X * b.Y) - (a.Y * b.X);
}

/// <summary>An edge from a lower to a higher end, seen from above.</summary>
[System.Runtime.InteropServices.StructLayout(System.Runtime.InteropServices.LayoutKind.Auto)]
internal readonly record struct RisingEdge(Point3 Low, Point3 High)
{
    /// <summary>Where it passes a height between its ends; both facets of an edge get the same point to the last bit.</summary>
    public (double X, double Y) At(double z)
    {
        var t = (z - Low.Z) / (High.Z - Low.Z);
        return (((1 - t) * Low.X) + (t * High.X), ((1 - t) * Low.Y) + (t * High.Y));
    }
}
