using System.Numerics;

namespace Studio.Engine.Meshes;

/// <summary>
/// Finds triangles whose boxes meet: triangles along a space-filling curve, eight to a leaf, boxes of boxes above them in one flat array.
/// Unlike a grid it does not mind facets of very different sizes.
/// </summary>
internal sealed class BoxTree
{
    private const int PerLeaf = 8;

    private readonly int[] order;
    private readonly float[] boxes;
    private readonly float[] nodes;
    private readonly int leaves;

    /// <summary>Takes the triangles in.</summary>
    public BoxTree(TriangleMesh mesh)
    {
        order = Curve(mesh);
        boxes = new float[6 * order.Length];
        leaves = (int)BitOperations.RoundUpToPowerOf2((uint)((order.Length + PerLeaf - 1) / PerLeaf));
        nodes = new float[12 * leaves];
        Fill(mesh);
    }

    /// <summary>Hands on every pair of triangles whose boxes meet or touch, each once, until <paramref name="pair"/> says that it is enough.</summary>
    public void Pairs(Func<int, int, bool> pair)
    {
        Span<int> open = stackalloc int[64];
        for (var leaf = 0; leaf * PerLeaf < order.Length; leaf++)
        {
            var own = nodes.AsSpan(6 * (leaf + leaves), 6);
            var depth = 0;
            open[depth++] = 1;
            while (depth > 0)
            {
                var node = open[--depth];
                if (!Meet(own, nodes.AsSpan(6 * node, 6)) || Last(node) < leaf)
                {
                    continue;
                }

                if (node < leaves)
                {
                    (open[depth], open[depth + 1]) = ((2 * node) + 1, 2 * node);
                    depth += 2;
                }
                else if (!Within(leaf, node - leaves, pair))
                {
                    return;
                }
            }
        }
    }

    private static bool Meet(ReadOnlySpan<float> a, ReadOnlySpan<float> b) =>
        a[0] <= b[3] && b[0] <= a[3] && a[1] <= b[4] && b[1] <= a[4] && a[2] <= b[5] && b[2] <= a[5];

    private int Last(int node)
    {
        var below = BitOperations.Log2((uint)leaves) - BitOperations.Log2((uint)node);
        return ((node + 1) << below) - 1 - leaves;
    }

    private bool Within(int leaf, int other, Func<int, int, bool> pair)
    {
        var (end, otherEnd) = (Math.Min((leaf + 1) * PerLeaf, order.Length), Math.Min((other + 1) * PerLeaf, order.Length));
        var whole = nodes.AsSpan(6 * (other + leaves), 6);
        for (var i = leaf * PerLeaf; i < end; i++)
        {
            var mine = boxes.AsSpan(6 * i, 6);
            if (!Meet(mine, whole))
            {
                continue;
            }

            for (var j = other == leaf ? i + 1 : other * PerLeaf; j < otherEnd; j++)
            {
                if (Meet(mine, boxes.AsSpan(6 * j, 6)) && !pair(order[i], order[j]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // triangles in the order of their middles along a Z-shaped curve of ten bits an axis
    private static int[] Curve(TriangleMesh mesh)
    {
        var (low, high) = mesh.Bounds();
        var size = high - low;
        var step = 1023 / Math.Max(size.X, Math.Max(size.Y, size.Z));
        var (keys, order) = (new uint[mesh.TriangleCount], new int[mesh.TriangleCount]);
        for (var f = 0; f < order.Length; f++)
        {
            var (a, b, c) = mesh.Triangle(f);
            var p = (((a + b + c) * (1.0 / 3)) - low) * step;
            (keys[f], order[f]) = (Spread((uint)p.X) | (Spread((uint)p.Y) << 1) | (Spread((uint)p.Z) << 2), f);
        }

        Array.Sort(keys, order);
        return order;
    }

    private static uint Spread(uint ten)
    {
        ten = Math.Min(ten, 1023);
        ten = (ten | (ten << 16)) & 0x030000FF;
        ten = (ten | (ten << 8)) & 0x0300F00F;
        ten = (ten | (ten << 4)) & 0x030C30C3;
        return (ten | (ten << 2)) & 0x09249249;
    }

    // rounding to single keeps order, so boxes that meet still meet
    private void Fill(TriangleMesh mesh)
    {
        for (var i = 0; i < nodes.Length; i++)
        {
            nodes[i] = i % 6 < 3 ? float.PositiveInfinity : float.NegativeInfinity;
        }

        for (var i = 0; i < order.Length; i++)
        {
            var (a, b, c) = mesh.Triangle(order[i]);
            var box = boxes.AsSpan(6 * i, 6);
            (box[0], box[3]) = ((float)Math.Min(a.X, Math.Min(b.X, c.X)), (float)Math.Max(a.X, Math.Max(b.X, c.X)));
            (box[1], box[4]) = ((float)Math.Min(a.Y, Math.Min(b.Y, c.Y)), (float)Math.Max(a.Y, Math.Max(b.Y, c.Y)));
            (box[2], box[5]) = ((float)Math.Min(a.Z, Math.Min(b.Z, c.Z)), (float)Math.Max(a.Z, Math.Max(b.Z, c.Z)));
            Widen(leaves + (i / PerLeaf), box);
        }

        for (var node = leaves - 1; node > 0; node--)
        {
            Widen(node, nodes.AsSpan(12 * node, 6));
            Widen(node, nodes.AsSpan((12 * node) + 6, 6));
        }
    }

    private void Widen(int node, ReadOnlySpan<float> box)
    {
        var whole = nodes.AsSpan(6 * node, 6);
        for (var k = 0; k < 3; k++)
        {
            (whole[k], whole[k + 3]) = (Math.Min(whole[k], box[k]), Math.Max(whole[k + 3], box[k + 3]));
        }
    }
}
