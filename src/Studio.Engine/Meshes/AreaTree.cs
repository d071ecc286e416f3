using System.Numerics;
using System.Runtime.InteropServices;

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
        leaves = (int)BitOperations.RoundUpToPowerOf2((uint)levels.Length - 1);
        nodes = new double[6 * leaves];
    }

    /// <summary>Adds what is swept, between two levels, between an edge from (p) and an edge to (q): half their cross product, which is a quadratic in z.</summary>
    public void Add(int from, int to, in RisingEdge p, in RisingEdge q, double sign)
    {
        var (left, right, step) = (from + leaves, to + leaves, 0);
        // nodes close up from both ends; each begins where the one before it ended, so a level is looked at once
        var (low, high) = (Pair(from, p, q), Pair(to, p, q));
        for (; left < right; left >>= 1, right >>= 1, step++)
        {
            if ((left & 1) == 1)
            {
                var next = Pair((++left << step) - leaves, p, q);
                AddTo(left - 1, low, next, sign);
                low = next;
            }

            if ((right & 1) == 1)
            {
                var next = Pair((--right << step) - leaves, p, q);
                AddTo(right, next, high, sign);
                high = next;
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

    private Cut Pair(int level, in RisingEdge p, in RisingEdge q)
    {
        var z = levels[level];
        var (a, b) = (p.Share(z), q.Share(z));
        return new Cut(p.X(a), p.Y(a), q.X(b), q.Y(b));
    }

    private void AddTo(int node, in Cut low, in Cut high, double sign)
    {
        var at = nodes.AsSpan(3 * node, 3);
        at[0] += sign / 2 * ((low.Px * low.Qy) - (low.Py * low.Qx));
        at[1] += sign / 4 * ((low.Px * high.Qy) - (low.Py * high.Qx) + (high.Px * low.Qy) - (high.Py * low.Qx));
        at[2] += sign / 2 * ((high.Px * high.Qy) - (high.Py * high.Qx));
    }

    // where the two edges pass a level
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Cut(double Px, double Py, double Qx, double Qy);
}

/// <summary>An edge from a lower to a higher end, seen from above. Both facets of an edge get the same points to the last bit.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct RisingEdge(Point3 low, Point3 high)
{
    private readonly Point3 low = low;
    private readonly Point3 high = high;
    private readonly double perMm = Math.Min(1 / (high.Z - low.Z), double.MaxValue);

    /// <summary>How far along it a height between its ends is met, 0 to 1.</summary>
    public double Share(double z) => (z - low.Z) * perMm;

    /// <summary>x at a share.</summary>
    public double X(double share) => ((1 - share) * low.X) + (share * high.X);

    /// <summary>y at a share.</summary>
    public double Y(double share) => ((1 - share) * low.Y) + (share * high.Y);
}
