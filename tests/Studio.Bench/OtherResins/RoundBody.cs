namespace Studio.Bench.Tools.OtherResins;

/// <summary>Films to the room [W/(m² K)].</summary>
internal sealed record DrawnFilms(double Top, double Side, double Bottom);

/// <summary>A wall's material.</summary>
internal sealed record DrawnWall(double ConductivityWPerMK, double DensityKgPerM3, double HeatCapacityJPerKgK);

/// <summary>A cylinder of resin in a wall, in rings: edges of the rings and of the levels, the rings ever finer towards the wall.</summary>
internal sealed class RoundBody
{
    private const double Finer = 0.88;

    private RoundBody(double[] radii, double[] levels, int resinRings, int floorLevels) =>
        (Radii, Levels, ResinRings, FloorLevels) = (radii, levels, resinRings, floorLevels);

    /// <summary>Edges from the middle line outwards [m].</summary>
    public double[] Radii { get; }

    /// <summary>Edges from the floor's underside up [m].</summary>
    public double[] Levels { get; }

    public int ResinRings { get; }

    public int FloorLevels { get; }

    public int Rings => Radii.Length - 1;

    public int LevelCount => Levels.Length - 1;

    /// <summary>Lays a cylinder.</summary>
    /// <param name="wallMm">0 for none, likewise the floor.</param>
    /// <param name="fine">Cells through the resin's depth; the others follow.</param>
    public static RoundBody Cylinder(double diameterMm, double deepMm, double wallMm, double floorMm, int fine = 14)
    {
        var (rings, walls) = (Math.Max(2, fine - 2), Math.Max(3, fine / 4));
        List<double> radii = [0];
        var first = diameterMm / 2000 * (1 - Finer) / (1 - Math.Pow(Finer, rings));
        for (var i = 0; i < rings; i++)
        {
            radii.Add(i == rings - 1 ? diameterMm / 2000 : radii[^1] + (first * Math.Pow(Finer, i)));
        }

        radii.AddRange(wallMm > 0 ? Enumerable.Range(1, walls).Select(i => ((diameterMm / 2) + (wallMm * i / walls)) / 1000).ToList() : []);
        return new([.. radii], Up(deepMm, floorMm, fine, walls), rings, floorMm > 0 ? walls : 0);
    }

    /// <summary>Lays a slab without edges on a floor: one ring with no wall. Its side film must be 0.</summary>
    public static RoundBody Slab(double deepMm, double floorMm, int fine = 20) => new([0, 1], Up(deepMm, floorMm, fine, Math.Max(3, fine / 4)), 1, floorMm > 0 ? Math.Max(3, fine / 4) : 0);

    public bool IsResin(int ring, int level) => ring < ResinRings && level >= FloorLevels;

    /// <summary>Cells are numbered along the shorter direction, which keeps the band narrow.</summary>
    public int Cell(int ring, int level) => Rings <= LevelCount ? (level * Rings) + ring : (ring * LevelCount) + level;

    public double VolumeM3(int ring, int level) => Plan(ring) * (Levels[level + 1] - Levels[level]);

    /// <summary>Mean of the radius' square over a ring [m²]: a parabola's mean is its value there.</summary>
    public double Square(int ring) => ((Radii[ring + 1] * Radii[ring + 1]) + (Radii[ring] * Radii[ring])) / 2;

    /// <summary>Area of a ring seen from above [m²].</summary>
    public double Plan(int ring) => Math.PI * ((Radii[ring + 1] * Radii[ring + 1]) - (Radii[ring] * Radii[ring]));

    private static double[] Up(double deepMm, double floorMm, int fine, int walls) =>
    [
        .. floorMm > 0 ? Enumerable.Range(0, walls).Select(i => ((floorMm * i / walls) - floorMm) / 1000) : [],
        .. Enumerable.Range(0, fine + 1).Select(i => deepMm * i / fine / 1000),
    ];
}
