using System.Text.Json;

namespace Studio.Engine.Tests.NeverEarly;

/// <summary>A layer is watched to the end, whatever is poured on it. The inputs beside this file each hid a figure in version 0.3.0.</summary>
public sealed class WatchedTests
{
    // our study's converged reference for the buried layer, by its own code: 91.2 °C; a mesh's error and 1.5 K are allowed (study, section 9)
    private const double BuriedC = 91.2;

    [Fact]
    public void A_little_poured_on_top_hides_no_runaway()
    {
        var alone = Ask.Result("heat", Read("hide2-deep-70-one"));
        var covered = Ask.Result("heat", Read("hide2-deep-70-early-top"));
        foreach (var result in new[] { alone, covered })
        {
            Codes(result, 0).ShouldContain("runaway");
            Codes(result, 0).ShouldContain("overheats");
        }

        covered.Number("layers[0].peakCelsius").ShouldBe(BuriedC, 1.5);
        covered.Number("layers[0].peakCelsius").ShouldBeGreaterThan(alone.Number("layers[0].peakCelsius"));
        covered.Number("layers[0].peakBeforeNextPourCelsius").ShouldBeLessThan(26, "two hours after its pour it has hardly begun");
        covered.Number("layers[0].peakBeforeNextPourAfterHours").ShouldBe(2, 1e-9);
        covered.Number("layers[0].lastGelAfterHours").ShouldBeGreaterThan(20, "it gels long after it was covered");
        covered.Number("layers[0].conversion.min").ShouldBeLessThan(0.02, "as it was at the next pour");
        covered.Number("piece.layer").ShouldBe(0);
        covered.Number("piece.peakCelsius").ShouldBe(covered.Number("layers[0].peakCelsius"));
    }

    [Fact]
    public void A_pour_on_what_has_gelled_nowhere_is_a_stop()
    {
        var covered = Ask.Result("heat", Read("hide2-deep-70-early-top"));
        Severity(covered, 1, "next-pour-too-early").ShouldBe("stop");
        var sheet = Ask.Result("heat", Read("cup-gel-heat"));
        Severity(sheet, 1, "next-pour-too-early").ShouldBe("stop");
    }

    // one layer alone: nothing covers it, so both peaks are one
    [Fact]
    public void A_layer_that_nothing_covers_has_one_peak()
    {
        var alone = Ask.Result("heat", Read("hide2-deep-70-one"));
        alone.Number("layers[0].peakBeforeNextPourCelsius").ShouldBe(alone.Number("layers[0].peakCelsius"));
        alone.Number("layers[0].peakBeforeNextPourAfterHours").ShouldBe(alone.Number("layers[0].peakAfterHours"));
    }

    [Fact]
    public void No_temperature_of_a_runaway_is_told()
    {
        var result = Ask.Result("heat", Read("runaway-h11"));
        var layer = result.At("layers[2]");
        layer.GetProperty("runaway").GetBoolean().ShouldBeTrue();
        layer.GetProperty("peakCelsius").ValueKind.ShouldBe(JsonValueKind.Null);
        layer.GetProperty("peakBeforeNextPourCelsius").ValueKind.ShouldBe(JsonValueKind.Null);

        // by hand: 25.096 °C and 415,066 J/kg over 1864.19 J/(kg K)
        layer.GetProperty("adiabaticCelsius").GetDouble().ShouldBe(25.096445 + (415066.08935758 / 1864.19063209), 1e-3);
        layer.GetProperty("curve").EnumerateArray().ShouldAllBe(m => Told(m.GetProperty("hottestCelsius")) && Told(m.GetProperty("surfaceCelsius")));
        result.At("piece").GetProperty("peakCelsius").ValueKind.ShouldBe(JsonValueKind.Null);
        var said = layer.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("message").GetString()!).ToList();
        said.ShouldContain(m => m.Contains("if nothing cooled it, it would reach 248 °C", StringComparison.Ordinal));
        said.ShouldAllBe(m => !System.Text.RegularExpressions.Regex.IsMatch(m, @"(1[3-9]\d|2[0-35-9]\d|3\d\d) °C", System.Text.RegularExpressions.RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)));
        result.At("layers[0]").TryGetProperty("runaway", out _).ShouldBeFalse();
    }

    private static bool Told(JsonElement celsius) => celsius.ValueKind is JsonValueKind.Null || celsius.GetDouble() <= 120;

    private static string[] Codes(JsonElement result, int layer) => [.. result.At($"layers[{layer}].findings").EnumerateArray().Select(f => f.GetProperty("code").GetString()!)];

    private static string Severity(JsonElement result, int layer, string code) =>
        result.At($"layers[{layer}].findings").EnumerateArray().Single(f => f.GetProperty("code").GetString() == code).GetProperty("severity").GetString()!;

    private static string Read(string name) => File.ReadAllText(Path.Combine(Sources.Root(), "tests", "Studio.Engine.Tests", "NeverEarly", name + ".json"));
}
