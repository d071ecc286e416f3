using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;

namespace Studio.Engine.Tests.Forecast;

/// <summary>Whatever stands in a field: a result or errors with their places, never a crash.</summary>
public sealed class HeatFuzzTests
{
    private const string Heat = """
        {
          "mould": { "shape": "cone", "bottomDiameterMm": 40, "topDiameterMm": 50, "heightMm": 30, "wall": { "thicknessMm": 5, "floorMm": 4, "roofMm": 0, "startCelsius": 22 } },
          "former": { "outerWidthMm": 10, "outerDepthMm": 10, "fromMm": 12, "wallMm": 1, "floorMm": 14, "fill": "air", "wPerM2K": 5 },
          "boundary": { "topWPerM2K": 10, "sideWPerM2K": 8, "bottomWPerM2K": 5, "voidWPerM2K": 5 },
          "resins": {
            "r": { "kinetics": { "rateAt23CPerS": 0.00004, "kappa": 0.04, "m": 1, "n": 2, "activationJPerMol": 55000, "heatJPerKg": 360000, "lambda": 0.4 }, "maxPourMm": 20 },
            "s": { "dataSheet": { "class": "casting", "cupMassG": 100, "gelMinutes": 240, "atCelsius": 23, "demouldHours": 18, "maxPourMm": 12, "nextPourFromHours": 4 } }
          },
          "layers": [{ "name": "a", "resin": "r", "toMm": 8, "pouredAtHours": 0, "pouredCelsius": 24 }, { "name": "b", "resin": "s", "thicknessMm": 6, "pouredAtHours": 20 }],
          "room": [{ "hours": 0, "celsius": 23 }, { "hours": 10, "celsius": 19 }],
          "untilHours": 40
        }
        """;

    private const string Clock = """
        {
          "resins": {
            "r": { "kinetics": { "rateAt23CPerS": 0.00004, "kappa": 0.04, "m": 1, "n": 2, "activationJPerMol": 55000, "heatJPerKg": 360000, "lambda": 0.4 }, "densityKgPerM3": 1100 },
            "s": { "dataSheet": { "class": "casting", "cupMassG": 100, "gelMinutes": 240, "atCelsius": 23, "demouldHours": 18, "maxPourMm": 12, "nextPourFromHours": 4, "nextPourUntilHours": 40, "fullCureHours": 100 } }
          },
          "layers": [{ "name": "a", "resin": "r", "pouredAtHours": 0 }, { "name": "b", "resin": "s", "afterGelOf": "a" }, { "name": "c", "resin": "s", "pouredAtHours": 60 }],
          "room": [{ "hours": 0, "celsius": 23 }, { "hours": 10, "celsius": 19 }, { "hours": 20, "celsius": 24 }],
          "untilHours": 140
        }
        """;

    private static readonly string[] Values =
    [
        "null", "true", "\"\"", "\"r\"", "\"23\"", "[]", "{}", "[{}]", "0", "-1", "1", "1e-9", "1e-300", "1e300", "1e999", "-273", "85", "72", "1000000", "0.5", "12", "35", "\"\\ud800\"",
        "[{\"hours\":0,\"celsius\":23}]", "{\"hours\":0}", "-1e9", "3.5", "100",
    ];

    // a value of another kind, or a number some way off
    private static readonly Gen<string> Odd = Gen.OneOf(
        Gen.Int[0, Values.Length - 1].Select(i => Values[i]), Gen.Double[-100, 500].Select(d => d.ToString("R", CultureInfo.InvariantCulture)), Gen.Double[-12, 12].Select(d => Math.Pow(10, d).ToString("R", CultureInfo.InvariantCulture)));

    [Fact]
    [Trait("Slow", "draws")]
    public void Heat_answers_whatever_stands_in_its_fields() => Fuzz("heat", Heat, 250);

    [Fact]
    [Trait("Slow", "draws")]
    public void The_clock_answers_whatever_stands_in_its_fields() => Fuzz("cure", Clock, 150);

    private static void Fuzz(string calculation, string json, int times)
    {
        var paths = Paths(JsonNode.Parse(json)!, "").ToArray();
        Gen.Select(Gen.Int[0, paths.Length - 1].Select(i => paths[i]), Odd).Array[1, 3].Sample(
            changes =>
            {
                var text = json;
                foreach (var (path, value) in changes)
                {
                    text = Set(text, path, value);
                }

                var answer = Calculations.Run(calculation, text);
                var said = JsonElement.Parse(answer.Json);
                if (answer.ExitCode == 0)
                {
                    said.TryGetProperty("layers", out _).ShouldBeTrue();
                    return;
                }

                answer.ExitCode.ShouldBe(2);
                var errors = said.GetProperty("errors").EnumerateArray().ToList();
                errors.ShouldNotBeEmpty();
                errors.ShouldAllBe(e => e.GetProperty("message").GetString()!.Length > 10);
                answer.Json.ShouldNotContain("Exception");
            },
            iter: times, threads: 1);
    }

    // an earlier change may have taken the place away
    private static string Set(string json, string path, string value)
    {
        try
        {
            return json.With(path, value);
        }
        catch (Exception gone) when (gone is InvalidOperationException or NullReferenceException or ArgumentException or FormatException or JsonException)
        {
            return json;
        }
    }

    private static IEnumerable<string> Paths(JsonNode node, string at) => node switch
    {
        JsonObject o => o.SelectMany(p => Paths(p.Value!, at.Length == 0 ? p.Key : $"{at}.{p.Key}").Prepend(at.Length == 0 ? p.Key : $"{at}.{p.Key}")),
        JsonArray a => a.SelectMany((v, i) => Paths(v!, $"{at}[{i}]").Prepend($"{at}[{i}]")),
        _ => [],
    };
}
