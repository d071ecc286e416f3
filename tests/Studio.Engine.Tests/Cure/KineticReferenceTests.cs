using System.Text.Json;

namespace Studio.Engine.Tests.Cure;

/// <summary>Against scipy 1.10.1's Radau (rtol 2.3e-14): inputs and results in scipy-clock.json, made by scipy_clock.py beside it.</summary>
public sealed class KineticReferenceTests
{
    public static TheoryData<string> Names => [.. Cases().Select(c => c.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Conversion_and_gel_agree_with_scipy(string name)
    {
        var reference = Cases().Single(c => string.Equals(c.GetProperty("name").GetString(), name, StringComparison.Ordinal));
        var kinetics = reference.GetProperty("kinetics").GetRawText();
        var result = Ask.Result("cure", $$"""
            { "resins": { "r": { "kinetics": {{kinetics}} } }, "layers": [{ "name": "1", "resin": "r", "pouredAtHours": 0 }],
              "room": {{reference.GetProperty("room").GetRawText()}}, "untilHours": {{reference.GetProperty("untilHours").GetRawText()}} }
            """);
        result.Number("layers[0].conversion").ShouldBe(reference.Number("conversion"), 1e-9);
        result.Number("layers[0].gelHours").ShouldBe(reference.Number("gelHours"), 1e-7);
    }

    private static List<JsonElement> Cases()
    {
        return [.. JsonElement.Parse(File.ReadAllText(Path.Combine(Sources.Root(), "tests", "Studio.Engine.Tests", "Cure", "scipy-clock.json"))).EnumerateArray()];
    }
}
