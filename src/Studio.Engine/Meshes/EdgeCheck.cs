namespace Studio.Engine.Meshes;

/// <summary>Edges of one kind of fault: how many, and the middle of the first.</summary>
internal sealed class EdgeFault
{
    /// <summary>How many.</summary>
    public int Count { get; private set; }

    /// <summary>Middle of the first one.</summary>
    public Point3 At { get; private set; }

    /// <summary>Counts one more.</summary>
    public void Add(TriangleMesh mesh, int a, int b)
    {
        At = Count++ == 0 ? (mesh.Vertex(a) + mesh.Vertex(b)) * 0.5 : At;
    }
}

/// <summary>Whether every edge joins exactly two facets that run along it in opposite directions: closed, manifold and consistently wound.</summary>
internal sealed class EdgeCheck
{
    private readonly TriangleMesh mesh;

    private EdgeCheck(TriangleMesh mesh) => this.mesh = mesh;

    /// <summary>Edges with one facet.</summary>
    public EdgeFault Open { get; } = new();

    /// <summary>Edges with more than two facets.</summary>
    public EdgeFault Crowded { get; } = new();

    /// <summary>Edges along which two facets run the same way.</summary>
    public EdgeFault SameWay { get; } = new();

    /// <summary>Nothing was found.</summary>
    public bool Closed => Open.Count + Crowded.Count + SameWay.Count == 0;

    /// <summary>Looks at every edge, gathered at its lower vertex by counting; no sort of all edges and no object an edge.</summary>
    public static EdgeCheck Of(TriangleMesh mesh)
    {
        var check = new EdgeCheck(mesh);
        var (starts, ends) = Gather(mesh);
        for (var v = 0; v < mesh.VertexCount; v++)
        {
            var mine = ends.AsSpan(starts[v], starts[v + 1] - starts[v]);
            Sort(mine);
            for (var i = 0; i < mine.Length;)
            {
                i += check.Edge(v, mine[i..]);
            }
        }

        return check;
    }

    // each edge's higher vertex, doubled, plus one where the facet runs upwards; those of vertex v from starts[v] to starts[v + 1]
    private static (int[] Starts, uint[] Ends) Gather(TriangleMesh mesh)
    {
        var corners = mesh.Corners;
        var starts = new int[mesh.VertexCount + 2];
        for (var i = 0; i < corners.Length; i++)
        {
            starts[Math.Min(corners[i], corners[Next(i)]) + 2]++;
        }

        for (var v = 2; v < starts.Length; v++)
        {
            starts[v] += starts[v - 1];
        }

        var ends = new uint[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            var (a, b) = (corners[i], corners[Next(i)]);
            ends[starts[Math.Min(a, b) + 1]++] = ((uint)Math.Max(a, b) << 1) | (a < b ? 1u : 0u);
        }

        return (starts, ends);
    }

    private static int Next(int corner) => corner % 3 == 2 ? corner - 2 : corner + 1;

    private static void Sort(Span<uint> few)
    {
        if (few.Length > 32)
        {
            few.Sort();
            return;
        }

        for (var i = 1; i < few.Length; i++)
        {
            var (value, k) = (few[i], i);
            for (; k > 0 && few[k - 1] > value; k--)
            {
                few[k] = few[k - 1];
            }

            few[k] = value;
        }
    }

    // looks at the edge that the sorted list begins with, and says how many entries were its
    private int Edge(int vertex, ReadOnlySpan<uint> sorted)
    {
        var (other, up, count) = (sorted[0] >> 1, 0, 0);
        for (; count < sorted.Length && sorted[count] >> 1 == other; count++)
        {
            up += (int)(sorted[count] & 1);
        }

        if (count != 2 || up != 1)
        {
            (count switch { 1 => Open, 2 => SameWay, _ => Crowded }).Add(mesh, vertex, (int)other);
        }

        return count;
    }
}
