using System.Numerics;

namespace Studio.Engine.Heat;

/// <summary>The heat equation between two pours: capacities, conduction with the films to the room, and where resin reacts.</summary>
internal sealed class HeatStage
{
    private static readonly HeatSide[] Sides = [HeatSide.In, HeatSide.Out, HeatSide.Near, HeatSide.Far, HeatSide.Under, HeatSide.Over];

    private readonly HeatGrid grid;
    private readonly HeatInput input;
    private readonly int poured;
    private readonly double[][] buffer;
    private readonly int[] active;
    private readonly double[] lower;
    private readonly int width;
    private readonly int[,,] layerAt;
    private BandedCholesky? factor;
    private readonly int[] rowStart;
    private readonly int[] column;
    private readonly double[] value;

    /// <summary>Lays out what is there after a pour.</summary>
    /// <param name="poured">How many layers are.</param>
    /// <param name="buffer">An array for the factor, handed from stage to stage: one stage's factor is lost when the next one factors.</param>
    public HeatStage(HeatGrid grid, HeatInput input, int poured, double[][]? buffer = null)
    {
        (this.grid, this.input, this.poured, this.buffer) = (grid, input, poured, buffer ?? new double[1][]);
        layerAt = Layers();
        active = new int[grid.NodeCount];
        Array.Fill(active, -1);
        HeatCellPart[] cells = [.. grid.Cells.Where(c => layerAt[c.I, c.J, c.K] > -2)];
        foreach (var cell in cells)
        {
            foreach (var node in cell.Corners)
            {
                active[node] = 0;
            }
        }

        Nodes = [.. Enumerable.Range(0, grid.NodeCount).Where(n => active[n] == 0)];
        for (var n = 0; n < Nodes.Length; n++)
        {
            active[Nodes[n]] = n;
        }

        Band = cells.Max(c => Spread(c.Corners));
        width = BandedCholesky.Width(Band);
        (Capacity, Film, lower) = (new double[Nodes.Length], new double[Nodes.Length], new double[BandedCholesky.Length(Nodes.Length, Band)]);
        var volume = new double[poured * Nodes.Length];
        foreach (var cell in cells)
        {
            Add(cell, volume);
            Films(cell);
        }

        (rowStart, column, value) = Sparse();
        var points = Enumerable.Range(0, volume.Length).Where(p => volume[p] > 0).ToList();
        PointNode = [.. points.Select(p => p % Nodes.Length)];
        PointLayer = [.. points.Select(p => p / Nodes.Length)];
        PointVolume = [.. points.Select(p => volume[p])];
        MouldFace = [.. cells.Where(c => layerAt[c.I, c.J, c.K] < 0).SelectMany(c => c.Corners).Select(n => active[n]).Intersect(PointNode)];
    }

    /// <summary>Grid nodes in this stage, in order; everything else counts by place in this list.</summary>
    public int[] Nodes { get; }

    public int Band { get; }

    /// <summary>Heat capacity of each node [J/K, less the symmetry's factor].</summary>
    public double[] Capacity { get; }

    /// <summary>Film to the room at each node [W/K].</summary>
    public double[] Film { get; }

    /// <summary>Conduction between two nodes that are there [W/K].</summary>
    public double Conduction(int row, int column) =>
        Math.Abs(row - column) > Band ? 0 : lower[(Math.Min(row, column) * width) + Math.Abs(row - column)];

    /// <summary>Where resin reacts, layer by layer: node, layer, volume [m³]; a node on a boundary reacts for each layer by itself.</summary>
    public int[] PointNode { get; }

    public int[] PointLayer { get; }

    public double[] PointVolume { get; }

    /// <summary>Nodes where resin touches the mould.</summary>
    public int[] MouldFace { get; }

    /// <summary>A grid node's place in <see cref="Nodes"/>; −1 where it is not there yet.</summary>
    public int Place(int node) => active[node];

    /// <summary>Conduction and films together at given temperatures, K·T + F·T [W]; allocates nothing.</summary>
    public void Conduct(double[] celsius, double[] into)
    {
        for (var n = 0; n < into.Length; n++)
        {
            double sum = 0;
            for (var e = rowStart[n]; e < rowStart[n + 1]; e++)
            {
                sum += value[e] * celsius[column[e]];
            }

            into[n] = sum;
        }
    }

    /// <summary>The factor of C + s·(K + F) − shift; the one before it is lost.</summary>
    /// <param name="seconds">The share of the step [s].</param>
    /// <param name="shift">What the reaction takes off the diagonal [J/K].</param>
    /// <exception cref="InvalidOperationException">The matrix is not positive definite: the step is too long for how the reaction runs away.</exception>
    public BandedCholesky Factor(double seconds, ReadOnlySpan<double> shift)
    {
        if (buffer[0] is not { } matrix || matrix.Length < lower.Length)
        {
            buffer[0] = matrix = new double[Math.Max(lower.Length, BandedCholesky.Length(grid.NodeCount, grid.Band))];
            factor = null;
        }

        var (times, k) = (new Vector<double>(seconds), 0);
        for (; k <= lower.Length - Vector<double>.Count; k += Vector<double>.Count)
        {
            (new Vector<double>(lower, k) * times).CopyTo(matrix, k);
        }

        for (; k < lower.Length; k++)
        {
            matrix[k] = lower[k] * seconds;
        }

        for (var n = 0; n < Nodes.Length; n++)
        {
            matrix[n * width] += Capacity[n] + (Film[n] * seconds) - shift[n];
        }

        factor ??= new BandedCholesky(matrix, Nodes.Length, Band);
        factor.Factor();
        return factor;
    }

    // both triangles, films on the diagonal, row by row
    private (int[] RowStart, int[] Column, double[] Value) Sparse()
    {
        var starts = new int[Nodes.Length + 1];
        foreach (var (row, other, _) in Entries())
        {
            starts[row + 1]++;
            starts[other + 1] += other < row ? 1 : 0;
        }

        for (var n = 0; n < Nodes.Length; n++)
        {
            starts[n + 1] += starts[n];
        }

        var (next, columns, values) = (starts[..^1], new int[starts[^1]], new double[starts[^1]]);
        foreach (var (row, other, v) in Entries())
        {
            (columns[next[row]], values[next[row]++]) = (other, v);
            if (other < row)
            {
                (columns[next[other]], values[next[other]++]) = (row, v);
            }
        }

        return (starts, columns, values);
    }

    // what is not zero in the lower triangle
    private IEnumerable<(int Row, int Column, double Value)> Entries()
    {
        for (var c = 0; c < Nodes.Length; c++)
        {
            for (var row = c; row <= Math.Min(Nodes.Length - 1, c + Band); row++)
            {
                var v = lower[(c * width) + row - c] + (c == row ? Film[row] : 0);
                if (v != 0)
                {
                    yield return (row, c, v);
                }
            }
        }
    }

    /// <summary>The layer a cell belongs to; −1 for the mould, −2 for what is not there yet.</summary>
    public int LayerOf(int i, int j, int k) => layerAt[i, j, k];

    private int[,,] Layers()
    {
        var found = new int[grid.CellsI, grid.CellsJ, grid.CellsK];
        for (var k = 0; k < grid.CellsK; k++)
        {
            var middle = (grid.PlanesMm[k] + grid.PlanesMm[k + 1]) / 2;
            var layer = -2;
            for (var l = 0; l < poured && layer < 0; l++)
            {
                layer = middle < input.Layers[l].ToMm ? l : -2;
            }

            for (var i = 0; i < grid.CellsI; i++)
            {
                for (var j = 0; j < grid.CellsJ; j++)
                {
                    found[i, j, k] = grid.Region(i, j, k) switch { HeatRegion.Mould => -1, HeatRegion.Room => -2, _ => layer };
                }
            }
        }

        return found;
    }

    private int Spread(int[] corners)
    {
        var (least, most) = (int.MaxValue, int.MinValue);
        foreach (var c in corners)
        {
            (least, most) = (Math.Min(least, active[c]), Math.Max(most, active[c]));
        }

        return most - least;
    }

    private void Add(HeatCellPart cell, double[] pointVolume)
    {
        var layer = layerAt[cell.I, cell.J, cell.K];
        var (conductivity, perM3K) = layer < 0
            ? (input.Wall.ConductivityWPerMK, input.Wall.DensityKgPerM3 * input.Wall.HeatCapacityJPerKgK)
            : (input.Layers[layer].ConductivityWPerMK, input.Layers[layer].DensityKgPerM3 * input.Layers[layer].HeatCapacityJPerKgK);
        for (var a = 0; a < cell.Corners.Length; a++)
        {
            var row = active[cell.Corners[a]];
            Capacity[row] += perM3K * cell.Volume[a];
            if (layer >= 0)
            {
                pointVolume[(layer * Nodes.Length) + row] += cell.Volume[a];
            }

            for (var b = 0; b < cell.Corners.Length; b++)
            {
                var other = active[cell.Corners[b]];
                if (other <= row)
                {
                    lower[(other * width) + row - other] += conductivity * cell.Stiffness[a, b];
                }
            }
        }
    }

    private void Films(HeatCellPart cell)
    {
        foreach (var side in Sides)
        {
            if ((grid.IsRound && side is HeatSide.Near or HeatSide.Far) || grid.OnSymmetry(cell.I, cell.J, side) || FilmOf(cell.I, cell.J, cell.K, side) is not { } film)
            {
                continue;
            }

            var (own, area) = cell.Face(grid, side);
            for (var a = 0; a < own.Length; a++)
            {
                Film[active[own[a]]] += film * area[a];
            }
        }
    }

    // null where the side touches another cell that is there
    private double? FilmOf(int i, int j, int k, HeatSide side)
    {
        var (ni, nj, nk) = side switch
        {
            HeatSide.In => (i - 1, j, k),
            HeatSide.Out => (i + 1, j, k),
            HeatSide.Near => (i, j - 1, k),
            HeatSide.Far => (i, j + 1, k),
            HeatSide.Under => (i, j, k - 1),
            _ => (i, j, k + 1),
        };
        var boundary = input.Boundary;
        if (ni < 0 || nj < 0 || nk < 0 || ni >= grid.CellsI || nj >= grid.CellsJ || nk >= grid.CellsK)
        {
            return side switch { HeatSide.Under => boundary.BottomWPerM2K, HeatSide.Over => boundary.TopWPerM2K, _ => boundary.SideWPerM2K };
        }

        if (layerAt[ni, nj, nk] > -2)
        {
            return null;
        }

        return grid.Region(ni, nj, nk) is HeatRegion.Room ? input.Fill?.WPerM2K ?? boundary.VoidWPerM2K
            : input.Wall.RoofMm > 0 ? boundary.VoidWPerM2K
            : side is HeatSide.Over ? boundary.TopWPerM2K
            : boundary.SideWPerM2K;
    }
}
