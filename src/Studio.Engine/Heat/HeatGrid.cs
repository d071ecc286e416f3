namespace Studio.Engine.Heat;

/// <summary>What a cell of the grid is filled with.</summary>
internal enum HeatRegion
{
    /// <summary>Wall, floor, roof, or a silicone plug.</summary>
    Mould,

    /// <summary>Inside the mould: a layer once it is poured, room air before.</summary>
    Inside,

    /// <summary>The former's room, when there is air in it.</summary>
    Room,
}

/// <summary>By which symmetry the piece is cut down.</summary>
internal enum HeatSymmetry
{
    /// <summary>A body of revolution: cells are rings.</summary>
    Round,

    /// <summary>A quarter with a wall in each of two directions.</summary>
    Quarter,

    /// <summary>Half of one side's sector of a regular polygon, from the middle of the face to the corner.</summary>
    Sector,
}

/// <summary>
/// A grid whose lines follow the mould: planes of equal height, and lines that keep their share of the half width at every height, so that sloping faces
/// are exact and nothing is built of steps.
/// </summary>
internal sealed class HeatGrid
{
    private readonly int[,,] nodes;
    private readonly HeatRegion[,,] regions;
    private IReadOnlyList<HeatCellPart>? cells;

    public HeatGrid(HeatSymmetry symmetry, int sides, double[] planesMm, double[][] across, double[][] along, Func<int, int, int, HeatRegion> region)
    {
        (Symmetry, PlanesMm) = (symmetry, planesMm);
        (CellsI, CellsJ, CellsK) = (across[0].Length - 1, symmetry is HeatSymmetry.Round ? 1 : along[0].Length - 1, planesMm.Length - 1);
        nodes = new int[CellsI + 1, (symmetry is HeatSymmetry.Round ? 0 : CellsJ) + 1, CellsK + 1];
        var points = new List<(double X, double Y, double Z)>();
        for (var k = 0; k <= CellsK; k++)
        {
            for (var i = 0; i <= CellsI; i++)
            {
                for (var j = 0; j < nodes.GetLength(1); j++)
                {
                    if (symmetry is HeatSymmetry.Sector && i == 0 && j > 0)
                    {
                        nodes[i, j, k] = nodes[0, 0, k]; // the sector's tip is one line
                        continue;
                    }

                    nodes[i, j, k] = points.Count;
                    points.Add(Point(i, j, k));
                }
            }
        }

        (X, Y, Z) = ([.. points.Select(p => p.X / 1000)], [.. points.Select(p => p.Y / 1000)], [.. points.Select(p => p.Z / 1000)]);
        Band = CellsK == 0 ? 0 : Spread();
        regions = new HeatRegion[CellsI, CellsJ, CellsK];
        for (var k = 0; k < CellsK; k++)
        {
            for (var i = 0; i < CellsI; i++)
            {
                for (var j = 0; j < CellsJ; j++)
                {
                    regions[i, j, k] = region(i, j, k);
                }
            }
        }

        (double X, double Y, double Z) Point(int i, int j, int k) => symmetry switch
        {
            HeatSymmetry.Round => (across[k][i], 0, planesMm[k]),
            HeatSymmetry.Quarter => (across[k][i], along[k][j], planesMm[k]),
            _ => (across[k][i], across[k][i] * Math.Tan(Math.PI / sides) * along[k][j], planesMm[k]),
        };
    }

    public HeatSymmetry Symmetry { get; }

    /// <summary>Heights of the planes [mm].</summary>
    public double[] PlanesMm { get; }

    public int CellsI { get; }

    public int CellsJ { get; }

    public int CellsK { get; }

    /// <summary>Nodes' places [m].</summary>
    public double[] X { get; }

    public double[] Y { get; }

    public double[] Z { get; }

    public int NodeCount => X.Length;

    /// <summary>Greatest difference between the numbers of two nodes of a cell.</summary>
    public int Band { get; }

    public bool IsRound => Symmetry is HeatSymmetry.Round;

    /// <summary>All cells that can be filled, integrated once.</summary>
    public IReadOnlyList<HeatCellPart> Cells => cells ??= HeatCellPart.Of(this);

    public HeatRegion Region(int i, int j, int k) => regions[i, j, k];

    public int Node(int i, int j, int k) => nodes[i, j, k];

    /// <summary>Corner nodes of a cell: i counts fastest, then j (three dimensions only), then k.</summary>
    public int[] Corners(int i, int j, int k) => IsRound
        ? [nodes[i, 0, k], nodes[i + 1, 0, k], nodes[i, 0, k + 1], nodes[i + 1, 0, k + 1]]
        :
        [
            nodes[i, j, k], nodes[i + 1, j, k], nodes[i, j + 1, k], nodes[i + 1, j + 1, k],
            nodes[i, j, k + 1], nodes[i + 1, j, k + 1], nodes[i, j + 1, k + 1], nodes[i + 1, j + 1, k + 1],
        ];

    private int Spread() => Enumerable.Range(0, CellsI).SelectMany(i => Enumerable.Range(0, CellsJ).Select(j => Corners(i, j, 0))).Max(c => c.Max() - c.Min());

    /// <summary>Whether a side of a cell lies on a plane of symmetry.</summary>
    public bool OnSymmetry(int i, int j, HeatSide side) => side switch
    {
        HeatSide.In => i == 0,
        HeatSide.Near => !IsRound && j == 0,
        HeatSide.Far => Symmetry is HeatSymmetry.Sector && j == CellsJ - 1,
        _ => false,
    };
}

/// <summary>The sides of a cell.</summary>
internal enum HeatSide
{
    In,
    Out,
    Near,
    Far,
    Under,
    Over,
}
