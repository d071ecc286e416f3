namespace Studio.Engine.Meshes;

/// <summary>
/// Area, volume and moment below any height of a closed mesh, exact for the mesh: between neighbouring vertex heights the area is a quadratic in z,
/// volume and moment its integrals. One sort when made, then a binary search a question.
/// </summary>
public sealed class VolumeTable
{
    private readonly double[] levels;
    private readonly double[] areas;
    private readonly double[] volumes;
    private readonly double[] moments;

    private VolumeTable(double[] levels, double[] areas)
    {
        (this.levels, this.areas) = (levels, areas);
        (volumes, moments) = (new double[levels.Length], new double[levels.Length]);
        Accumulate();
    }

    /// <summary>Lowest vertex [mm].</summary>
    public double LowMm => levels[0];

    /// <summary>Highest vertex [mm].</summary>
    public double HighMm => levels[^1];

    /// <summary>The whole volume [mm³]; negative where the facets are wound inwards.</summary>
    public double WholeMm3 => volumes[^1];

    /// <summary>Makes the table.</summary>
    /// <param name="mesh">Closed and consistently wound, outwards for a positive volume; at least two heights.</param>
    public static VolumeTable Of(TriangleMesh mesh)
    {
        var (levels, levelOf) = Levels(mesh);
        return new VolumeTable(levels, Areas(mesh, levels, levelOf));
    }

    /// <summary>Cross-section at a height [mm²]; at a ledge either side's.</summary>
    public double AreaMm2(double zMm)
    {
        var (i, u) = Find(zMm);
        return Upto(i, u).Here;
    }

    /// <summary>Volume below a height [mm³].</summary>
    public double VolumeMm3(double zMm)
    {
        var (i, u) = Find(zMm);
        return volumes[i] + Part(i, u);
    }

    /// <summary>First moment about z = 0 of the volume below a height [mm⁴].</summary>
    public double MomentMm4(double zMm)
    {
        var (i, u) = Find(zMm);
        return moments[i] + PartMoment(i, u);
    }

    /// <summary>Height up to which a volume fills it [mm]: a search among the levels, then the root of that level's cubic by guarded Newton steps.</summary>
    public double HeightMm(double volumeMm3)
    {
        var found = Array.BinarySearch(volumes, volumeMm3);
        var i = Math.Clamp(found >= 0 ? found - 1 : ~found - 1, 0, levels.Length - 2);
        var (h, wanted) = (levels[i + 1] - levels[i], volumeMm3 - volumes[i]);
        if (wanted <= 0)
        {
            return levels[i];
        }

        var (low, high, u) = (0.0, 1.0, 0.5);
        for (var step = 0; step < 100 && low < high; step++)
        {
            var over = Part(i, u) - wanted;
            (low, high) = over < 0 ? (u, high) : (low, u);
            var newton = u - (over / (h * Upto(i, u).Here));
            var next = newton > low && newton < high ? newton : low + ((high - low) / 2);
            if (Math.Abs(next - u) <= double.Epsilon + (1e-16 * u))
            {
                break;
            }

            u = next;
        }

        return levels[i] + (u * h);
    }

    // distinct heights, rising, and the number of each vertex's
    private static (double[] Levels, int[] LevelOf) Levels(TriangleMesh mesh)
    {
        var (heights, order) = (new double[mesh.VertexCount], new int[mesh.VertexCount]);
        for (var v = 0; v < heights.Length; v++)
        {
            (heights[v], order[v]) = (mesh.Coordinates[(3 * v) + 2], v);
        }

        Array.Sort(heights, order);
        var levelOf = new int[heights.Length];
        var count = 0;
        for (var k = 0; k < heights.Length; k++)
        {
            if (k == 0 || heights[k] > heights[count - 1])
            {
                heights[count++] = heights[k];
            }

            levelOf[order[k]] = count - 1;
        }

        Array.Resize(ref heights, count);
        return (heights, levelOf);
    }

    private static double[] Areas(TriangleMesh mesh, double[] levels, int[] levelOf)
    {
        var (low, high) = mesh.Bounds();
        var middle = (low + high) * 0.5 is var m ? new Point3(m.X, m.Y, 0) : default;
        var tree = new AreaTree(levels);
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            var (a, b, c, sign) = (mesh.Corners[i], mesh.Corners[i + 1], mesh.Corners[i + 2], 1.0);
            // lowest first, highest last; each swap turns the facet over
            (a, b, sign) = levelOf[b] < levelOf[a] ? (b, a, -sign) : (a, b, sign);
            (b, c, sign) = levelOf[c] < levelOf[b] ? (c, b, -sign) : (b, c, sign);
            (a, b, sign) = levelOf[b] < levelOf[a] ? (b, a, -sign) : (a, b, sign);
            var (first, second, last) = (levelOf[a], levelOf[b], levelOf[c]);
            if (first == last)
            {
                continue;
            }

            var (pa, pb, pc) = (mesh.Vertex(a) - middle, mesh.Vertex(b) - middle, mesh.Vertex(c) - middle);
            var whole = new RisingEdge(pa, pc);
            if (first < second)
            {
                tree.Add(first, second, whole, new RisingEdge(pa, pb), sign);
            }

            if (second < last)
            {
                tree.Add(second, last, whole, new RisingEdge(pb, pc), sign);
            }
        }

        return tree.Areas();
    }

    // sums with what each rounding loses kept aside (Neumaier), so that a million levels lose no digits
    private void Accumulate()
    {
        var (volume, volumeLost, moment, momentLost) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i + 1 < levels.Length; i++)
        {
            Add(ref volume, ref volumeLost, Part(i, 1));
            Add(ref moment, ref momentLost, PartMoment(i, 1));
            (volumes[i + 1], moments[i + 1]) = (volume + volumeLost, moment + momentLost);
        }
    }

    private static void Add(ref double sum, ref double lost, double part)
    {
        var next = sum + part;
        lost += Math.Abs(sum) >= Math.Abs(part) ? sum - next + part : part - next + sum;
        sum = next;
    }

    private (int Level, double Share) Find(double zMm)
    {
        var found = Array.BinarySearch(levels, zMm);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, levels.Length - 2);
        return (i, Math.Clamp((zMm - levels[i]) / (levels[i + 1] - levels[i]), 0, 1));
    }

    // coefficients of the level's area over its lowest share u; the last of them is the area at u
    private (double First, double Middle, double Here) Upto(int i, double u)
    {
        var (a, b, c) = (areas[3 * i], areas[(3 * i) + 1], areas[(3 * i) + 2]);
        var (ab, bc) = (((1 - u) * a) + (u * b), ((1 - u) * b) + (u * c));
        return (a, ab, ((1 - u) * ab) + (u * bc));
    }

    private double Part(int i, double u)
    {
        var (first, middle, here) = Upto(i, u);
        return (levels[i + 1] - levels[i]) * u * (first + middle + here) / 3;
    }

    // ∫ z A dz = z0 ∫ A dz + ∫ (z − z0) A dz
    private double PartMoment(int i, double u)
    {
        var ((first, middle, here), up) = (Upto(i, u), (levels[i + 1] - levels[i]) * u);
        return (levels[i] * Part(i, u)) + (up * up * (first + (2 * middle) + (3 * here)) / 12);
    }
}
