using Studio.Engine.Tests.Moulds;

namespace Studio.Engine.Tests.Meshes;

/// <summary>Round shapes as meshes lack what their facets cut off, no more, and with half the edge a quarter of it.</summary>
public sealed class RoundMeshTests
{
    private static readonly double[] Levels = [0.2, 0.5, 0.8, 1];

    [Theory] // an n-gon has (n/2π) sin(2π/n) of its circle's area, so a cone or cylinder of n facets has that share of its volume at every level
    [InlineData(12)]
    [InlineData(64)]
    [InlineData(1000)]
    public void A_cone_lacks_exactly_what_its_polygon_lacks(int sides)
    {
        var cone = HandbookVolumeTests.Mould("cone", "bottomDiameterMm=40 topDiameterMm=90 heightMm=70");
        var mesh = Files.CavityOf(Solids.Turned(sides, (20, 0), (45, 70))).Table;
        var share = sides / (2 * Math.PI) * Math.Sin(2 * Math.PI / sides);
        foreach (var level in Levels)
        {
            mesh.VolumeMm3(70 * level).ShouldBe(1000 * share * cone.VolumeMl(70 * level), 1e-11 * mesh.WholeMm3);
        }
    }

    [Fact] // Pappus: 2π R · π r², each circle as the polygon that stands for it
    public void A_torus_lacks_exactly_what_its_polygons_lack()
    {
        const int Around = 48;
        const int Across = 36;
        double Share(int n) => n / (2 * Math.PI) * Math.Sin(2 * Math.PI / n);
        Files.CavityOf(Solids.Torus(40, 15, Around, Across)).Table.WholeMm3.ShouldBe(2 * Math.PI * 40 * Math.PI * 15 * 15 * Share(Around) * Share(Across), 1e-6);
    }

    public static TheoryData<string> Shapes => ["sphere", "dome", "cone", "torus"];

    [Theory]
    [MemberData(nameof(Shapes))]
    [Trait("Slow", "meshes")]
    public void With_half_the_edge_a_quarter_is_lacking(string shape)
    {
        var lacking = Enumerable.Range(0, 4).Select(n => Lacking(shape, n)).ToArray();
        for (var n = 1; n < lacking.Length; n++)
        {
            for (var level = 0; level < Levels.Length; level++)
            {
                lacking[n][level].ShouldBeGreaterThan(0);
                (lacking[n - 1][level] / lacking[n][level]).ShouldBe(4, n == 1 ? 0.6 : 0.25, $"{shape} at {Levels[level]}");
            }
        }
    }

    // closed forms: cap π z² (r − z/3) (Machinery's Handbook, p. 91); cone; torus by Pappus, and below z of it 2π R times the circle's segment
    private static double[] Lacking(string shape, int halvings)
    {
        const double R = 30;
        var n = 24 << halvings;
        var mesh = shape switch
        {
            "sphere" => Solids.Turned(n, [.. Enumerable.Range(0, (n / 2) + 1).Select(k => 2 * Math.PI * k / n).Select(a => (R * Math.Sin(a), -R * Math.Cos(a)))]),
            "dome" => Solids.Turned(n, [.. Enumerable.Range(0, (n / 4) + 1).Select(k => 2 * Math.PI * k / n).Select(a => (R * Math.Sin(a), -R * Math.Cos(a)))]),
            "cone" => Solids.Turned(n, (0, 0), (R, 50)),
            _ => Solids.Torus(R, 10, n, n),
        };
        var cavity = Files.CavityOf(mesh);
        return [.. Levels.Select(l => l * cavity.HeightMm).Select(z => Smooth(z) - cavity.Table.VolumeMm3(z))];

        double Smooth(double z) => shape switch
        {
            "sphere" or "dome" => Math.PI * z * z * (R - (z / 3)),
            "cone" => Math.PI * R * R / 2500 * z * z * z / 3,
            _ => 2 * Math.PI * R * ((100 * Math.Acos(1 - (z / 10))) - ((10 - z) * Math.Sqrt(z * (20 - z)))),
        };
    }
}
