using System.Text;
using System.Text.Json;
using Studio.Commands;

namespace Studio.Tests.Commands;

/// <summary><c>calc layers</c> with a mesh that lies beside its input file.</summary>
public sealed class CalcMeshTests : IDisposable
{
    // an inverted square pyramid of 2 by 2 by 3 inches whose tip points along −y of the file
    private const string Pyramid = """
        v 0 0 0
        v -1 3 1
        v 1 3 1
        v 1 3 -1
        v -1 3 -1
        f 1 3 2
        f 1 4 3
        f 1 5 4
        f 1 2 5
        f 2 3 4 5
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("studio-calc-mesh-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_mesh_beside_the_input_gives_the_pyramid_that_it_is()
    {
        var answer = Run(Pyramid, """{ "shape": "mesh", "file": "cavity.obj", "unit": "inch", "up": "+y" }""");
        answer.ExitCode.ShouldBe(0, answer.Json);
        var result = JsonElement.Parse(answer.Json);
        // 2 · 2 · 3 / 3 in³ of 16.387064 ml; half its height holds an eighth; the slant over half the height is √(0.5² + 1.5²) in
        result.GetProperty("capacityMl").GetDouble().ShouldBe(4 * 16.387064, 1e-6);
        var layer = result.GetProperty("layers")[0];
        layer.GetProperty("grossMl").GetDouble().ShouldBe(4 * 16.387064 / 8, 1e-6);
        layer.GetProperty("faceMarkMm").GetDouble().ShouldBe(25.4 * Math.Sqrt(2.5), 1e-6);
    }

    // the same pyramid drawn: 2 in of base, 3 in high
    [Fact]
    public void Its_heat_holds_that_of_the_pyramid_between_its_bounds()
    {
        var mesh = Heat("""{ "shape": "mesh", "file": "cavity.obj", "unit": "inch", "up": "+y", "wall": { "thicknessMm": 8 } }""");
        var drawn = Heat("""{ "shape": "pyramid", "sides": 4, "baseMm": 50.8, "heightMm": 76.2, "wall": { "thicknessMm": 8 } }""");
        drawn.GetProperty("model").GetString().ShouldBe("three dimensions by symmetry");
        mesh.GetProperty("model").GetString().ShouldBe("body of revolution with the mould's area at every height");
        mesh.GetProperty("findings")[0].GetProperty("code").GetString().ShouldBe("round-body");
        var (layer, real) = (mesh.GetProperty("layers")[0], drawn.GetProperty("layers")[0]);
        var bounds = layer.GetProperty("interval");
        foreach (var name in new[] { "peakCelsius", "peakAfterHours", "mouldFacePeakCelsius", "firstGelAfterHours", "lastGelAfterHours" })
        {
            real.GetProperty(name).GetDouble().ShouldBeInRange(bounds.GetProperty(name)[0].GetDouble(), bounds.GetProperty(name)[1].GetDouble(), name);
        }

        var least = bounds.GetProperty("conversion").GetProperty("min");
        real.GetProperty("conversion").GetProperty("min").GetDouble().ShouldBeInRange(least[0].GetDouble(), least[1].GetDouble());
    }

    [Theory]
    [InlineData("""{ "shape": "mesh", "file": "none.stl", "unit": "mm" }""", "mould.file", "there is none of that name")]
    [InlineData("""{ "shape": "mesh", "file": "cavity.obj" }""", "mould.unit", "")]
    [InlineData("""{ "shape": "mesh", "file": "cavity.obj", "unit": "ell" }""", "mould.unit", "Use one of: mm, cm, m, inch.")]
    [InlineData("""{ "shape": "mesh", "file": "cavity.obj", "unit": "mm", "up": "up" }""", "mould.up", "Use one of: +z")]
    [InlineData("""{ "shape": "mesh", "file": "cavity.obj", "unit": "mm", "baseMm": 3 }""", "mould.baseMm", "has no field 'baseMm'")]
    public void What_is_wrong_is_said_at_its_field(string mould, string path, string says) => Refusal(Run(Pyramid, mould), path).ShouldContain(says);

    [Fact]
    public void An_open_mesh_is_refused_with_its_edges() =>
        Refusal(Run(Pyramid.Replace("f 1 3 2", "", StringComparison.Ordinal), """{ "shape": "mesh", "file": "cavity.obj", "unit": "mm" }"""), "mould.file").ShouldContain("3 edges are open");

    private static string Refusal(Studio.Engine.Answer answer, string path)
    {
        answer.ExitCode.ShouldBe(2, answer.Json);
        return JsonElement.Parse(answer.Json).GetProperty("errors").EnumerateArray().Where(e => e.GetProperty("path").GetString() == path).ShouldHaveSingleItem().GetProperty("message").GetString()!;
    }

    private JsonElement Heat(string mould)
    {
        File.WriteAllText(Path.Combine(folder.FullName, "cavity.obj"), Pyramid, Encoding.UTF8);
        var input = Path.Combine(folder.FullName, "heat.json");
        File.WriteAllText(input, $$"""
            {
              "mould": {{mould}},
              "room": [{ "hours": 0, "celsius": 23 }],
              "resins": { "clear": { "kinetics": { "rateAt23CPerS": 0.0001, "kappa": 0.03, "activationJPerMol": 57000, "heatJPerKg": 350000 } } },
              "layers": [{ "resin": "clear", "toMm": 60, "pouredAtHours": 0 }],
              "untilHours": 48
            }
            """);
        var answer = CalcCommand.Run("heat", [input], () => Stream.Null);
        answer.ExitCode.ShouldBe(0, answer.Json);
        return JsonElement.Parse(answer.Json);
    }

    private Studio.Engine.Answer Run(string mesh, string mould)
    {
        File.WriteAllText(Path.Combine(folder.FullName, "cavity.obj"), mesh, Encoding.UTF8);
        var input = Path.Combine(folder.FullName, "layers.json");
        File.WriteAllText(input, $$"""
            {
              "mould": {{mould}},
              "resins": { "clear": { "densityGPerMl": 1.1, "mix": { "partsA": 2, "partsB": 1, "by": "weight" } } },
              "layers": [{ "name": "tip", "resin": "clear", "toMm": 38.1 }]
            }
            """);
        return CalcCommand.Run("layers", [input], () => Stream.Null);
    }
}
