namespace Studio.Engine.Heat;

/// <summary>A cell of the grid with its integrals, which do not change from pour to pour.</summary>
/// <param name="I">Across.</param>
/// <param name="J">Along.</param>
/// <param name="K">Up.</param>
/// <param name="Corners">Nodes of the grid.</param>
/// <param name="Stiffness">∫∇Nᵢ·∇Nⱼ dV [m].</param>
/// <param name="Volume">∫Nᵢ dV [m³].</param>
internal sealed record HeatCellPart(int I, int J, int K, int[] Corners, double[,] Stiffness, double[] Volume)
{
    private readonly (int[] Corners, double[] Area)?[] faces = new (int[], double[])?[6];

    /// <summary>Corner nodes of one side with their share of its area [m²].</summary>
    public (int[] Corners, double[] Area) Face(HeatGrid grid, HeatSide side) => faces[(int)side] ??= HeatCell.Face(grid, Corners, side);

    /// <summary>All cells of a grid that can be filled at all.</summary>
    public static IReadOnlyList<HeatCellPart> Of(HeatGrid grid)
    {
        var parts = new List<HeatCellPart>(grid.CellsI * grid.CellsJ * grid.CellsK);
        for (var k = 0; k < grid.CellsK; k++)
        {
            for (var i = 0; i < grid.CellsI; i++)
            {
                for (var j = 0; j < grid.CellsJ; j++)
                {
                    if (grid.Region(i, j, k) is not HeatRegion.Room)
                    {
                        var corners = grid.Corners(i, j, k);
                        var (stiffness, volume) = HeatCell.Integrate(grid, corners);
                        parts.Add(new(i, j, k, corners, stiffness, volume));
                    }
                }
            }
        }

        return parts;
    }
}
