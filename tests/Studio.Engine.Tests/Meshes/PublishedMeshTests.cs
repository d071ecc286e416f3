using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Studio.Engine.Meshes;
using Studio.Engine.Tests.Moulds;

namespace Studio.Engine.Tests.Meshes;

/// <summary>Meshes whose volume is published, and a reference program over meshes of ours.</summary>
public sealed partial class PublishedMeshTests(ITestOutputHelper output)
{
    [Theory] // Debian's assimp-testmodels 5.2.5 (BSD-3-clause), a unit cube of six quads, unchanged
    [InlineData("box.obj", 1)]
    public void Published_file_has_its_volume(string file, double volume) =>
        Files.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Meshes", file)), file).Value.Table.WholeMm3.ShouldBe(volume, 1e-12);

    // volumes computed from the files of github.com/mikedh/trimesh, models/, commit a513c0e2 (MIT), by the divergence theorem and by admesh 0.98.4;
    // the files are not shipped: the same solids are made here
    public static TheoryData<string, double, double> Published => new()
    {
        { "unit_cube.STL", 1, 1e-12 },
        { "7_8ths_cube.stl", 56_000, 1e-12 },
        { "cylinder.stl", 25.092388, 1e-7 },
        { "unit_sphere.STL", 4.15274, 1e-5 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void The_same_solid_made_here_has_the_published_volume(string file, double volume, double relative)
    {
        var mesh = Made(file);
        Files.Read(Files.Binary(mesh)).Value.Table.WholeMm3.ShouldBe(volume, volume * Math.Max(relative, 1e-6));
        Files.CavityOf(mesh).Table.WholeMm3.ShouldBe(volume, volume * relative);
    }

    // Machinery's Handbook, 31st ed. (2020), Volumes of Solids, pp. 88 to 93; every round solid as fine facets, so the printed digits decide
    public static TheoryData<string, double> Handbook => new()
    {
        { "p. 88 cube of side 9.5", 857.375 },
        { "p. 88 hexagonal prism, side 7.5, height 25", 3653.5 },
        { "p. 88 square pyramid, side 3, height 5", 15 },
        { "p. 89 rectangular frustum 2 x 3 to 1 x 1.5, height 4.5", 15.75 },
        { "Moscow Mathematical Papyrus, problem 14: frustum 4 to 2, height 6", 56 },
        { "Building Trades Pocketbook, prismatoid 10 x 4 to 6 x 4, height 9", 288 },
        { "p. 89 wedge a 4, b 3, c 5, h 4.5", 29.25 },
        { "p. 89 cylinder of diameter 2.5, length 20", 98.17 },
        { "p. 89 cylinder cut at an angle, diameter 125, heights 100 and 150", 1_533_984 },
        { "p. 90 hollow cylinder of diameter 36, wall 4, length 28", 11_259.5 },
        { "p. 90 cone of diameter 6, height 4", 37.7 },
        { "p. 91 sphere of diameter 6.5", 143.79 },
        { "p. 92 hollow sphere of diameter 8, wall 1.5", 202.63 },
        { "p. 93 torus, diameter 5, tube 1.5", 27.76 },
    };

    [Theory]
    [MemberData(nameof(Handbook))]
    [Trait("Slow", "meshes")]
    public void Handbook_solid_as_a_mesh(string solid, double volume) => Files.CavityOf(Made(solid)).Table.WholeMm3.ShouldBe(volume, volume * (solid.Contains("torus", StringComparison.Ordinal) ? 4e-4 : 2e-4));

    [Fact]
    [Trait("Slow", "meshes")]
    public void The_reference_program_admesh_gives_the_same_volumes()
    {
        Tool.Need("admesh");
        var folder = Directory.CreateTempSubdirectory("studio-admesh-");
        try
        {
            var worst = 0.0;
            foreach (var solid in Published.Select(c => c.Data.Item1).Concat(Handbook.Select(c => c.Data.Item1)))
            {
                var file = Path.Combine(folder.FullName, "mesh.stl");
                var bytes = Files.Binary(Made(solid));
                File.WriteAllBytes(file, bytes);
                var (ours, theirs) = (Files.Read(bytes).Value.Table.WholeMm3, Admesh(file));
                worst = Math.Max(worst, Math.Abs((ours / theirs) - 1));
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{solid}: ours {ours:R}, admesh {theirs:R}"));
                ours.ShouldBe(theirs, (theirs * (1e-6 + (1e-8 * bytes.Length / 50))) + 1e-6, solid);
            }

            // admesh adds facet by facet in single precision (2⁻²⁴ = 6e-8 a step) and prints six decimals: that is what the difference is, and it grows with the facets
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"They differ by at most {worst:0.0e0} of the volume."));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [GeneratedRegex(@"Volume\s+:\s+(?<v>[\d.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Volume();

    private static double Admesh(string file)
    {
        using var process = Process.Start(new ProcessStartInfo(Tool.Need("admesh"), ["--no-check", file]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var reading = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromSeconds(30)))
        {
            process.Kill();
        }

        var said = reading.GetAwaiter().GetResult();
        return double.Parse(Volume().Match(said).Groups["v"].Value, CultureInfo.InvariantCulture);
    }

    private static TriangleMesh Made(string solid) => solid switch
    {
        "unit_cube.STL" => Solids.Box(-0.5, -0.5, -0.5, 1, 1, 1),
        "7_8ths_cube.stl" => Solids.SevenEighths(40),
        "cylinder.stl" => Solids.Turned(64, (1, 0), (1, 8)),
        "unit_sphere.STL" => Solids.Ball(1, 3),
        _ when solid.Contains("cube", StringComparison.Ordinal) => Solids.Box(0, 0, 0, 9.5, 9.5, 9.5),
        _ when solid.Contains("hexagonal", StringComparison.Ordinal) => Solids.Turned(6, (7.5, 0), (7.5, 25)),
        _ when solid.Contains("square pyramid", StringComparison.Ordinal) => HandbookVolumeTests.Mould("pyramid", "baseMm=3 heightMm=5").Surface(),
        _ when solid.Contains("rectangular frustum", StringComparison.Ordinal) => Between(2, 3, 1, 1.5, 4.5),
        _ when solid.Contains("Papyrus", StringComparison.Ordinal) => Between(4, 4, 2, 2, 6),
        _ when solid.Contains("prismatoid", StringComparison.Ordinal) => Between(10, 4, 6, 4, 9),
        _ when solid.Contains("wedge", StringComparison.Ordinal) => Wedge(4, 3, 5, 4.5),
        _ when solid.Contains("cut at an angle", StringComparison.Ordinal) => Solids.Turned(720, (62.5, 0), (62.5, 125)).Moved(p => p.Z > 0 ? p with { Z = 125 + (25 * p.X / 62.5) } : p),
        _ when solid.Contains("hollow cylinder", StringComparison.Ordinal) => Ring(720, 14, 18, 28),
        _ when solid.Contains("cylinder", StringComparison.Ordinal) => Solids.Turned(720, (1.25, 0), (1.25, 20)),
        _ when solid.Contains("cone", StringComparison.Ordinal) => Solids.Turned(720, (3, 0), (0, 4)),
        _ when solid.Contains("hollow sphere", StringComparison.Ordinal) => Solids.Ball(4, 6).With(Solids.Ball(2.5, 6).InsideOut()),
        _ when solid.Contains("sphere", StringComparison.Ordinal) => Solids.Ball(3.25, 6),
        _ when solid.Contains("torus", StringComparison.Ordinal) => Solids.Torus(2.5, 0.75, 360, 180),
        _ => throw new ArgumentOutOfRangeException(nameof(solid), solid, "Not made here."),
    };

    private static TriangleMesh Between(double wide, double deep, double topWide, double topDeep, double high) =>
        Loft.Through([Rectangle(wide, deep, 0), Rectangle(topWide, topDeep, high)]);

    private static Point3[] Rectangle(double wide, double deep, double z) =>
        [new(-wide / 2, -deep / 2, z), new(wide / 2, -deep / 2, z), new(wide / 2, deep / 2, z), new(-wide / 2, deep / 2, z)];

    // base a by b, upper edge c: V = (2a + c) b h / 6
    private static TriangleMesh Wedge(double a, double b, double c, double h) => new(
        [-a / 2, -b / 2, 0, a / 2, -b / 2, 0, a / 2, b / 2, 0, -a / 2, b / 2, 0, -c / 2, 0, h, c / 2, 0, h],
        [0, 2, 1, 0, 3, 2, 0, 1, 5, 0, 5, 4, 2, 3, 4, 2, 4, 5, 1, 2, 5, 3, 0, 4]);

    private static TriangleMesh Ring(int sides, double inner, double outer, double high)
    {
        // a square torus: four corners round the section
        var corners = new[] { (outer, 0.0), (outer, high), (inner, high), (inner, 0.0) };
        var (xyz, facets) = (new List<double>(), new List<int>());
        for (var i = 0; i < sides; i++)
        {
            var u = 2 * Math.PI * i / sides;
            for (var j = 0; j < 4; j++)
            {
                xyz.AddRange([corners[j].Item1 * Math.Cos(u), corners[j].Item1 * Math.Sin(u), corners[j].Item2]);
                int At(int p, int q) => (p % sides * 4) + (q % 4);
                facets.AddRange([At(i, j), At(i + 1, j), At(i + 1, j + 1), At(i, j), At(i + 1, j + 1), At(i, j + 1)]);
            }
        }

        return new TriangleMesh([.. xyz], [.. facets]);
    }
}
