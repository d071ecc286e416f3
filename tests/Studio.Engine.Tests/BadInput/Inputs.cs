using System.Text.RegularExpressions;

namespace Studio.Engine.Tests.BadInput;

/// <summary>Inputs that are good before a test spoils them: the page's own examples, and one whole input of each calculation with every list in it.</summary>
internal static partial class Inputs
{
    private const string Kinetics = """{ "rateAt23CPerS": 0.00004, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 360000 }""";

    /// <summary>By the calculation's name.</summary>
    public static IReadOnlyDictionary<string, string> Whole { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["layers"] = """
            {
              "mould": { "shape": "measured", "readings": [{ "heightMm": 10, "volumeMl": 50 }, { "heightMm": 50, "volumeMl": 600 }] },
              "resins": { "r": { "densityGPerMl": 1.1, "mix": { "partsA": 2, "partsB": 1, "by": "weight" } } },
              "layers": [{ "name": "a", "resin": "r", "toMm": 30, "additions": [], "scatter": [], "placed": [] }]
            }
            """,
        ["price"] = """{ "currency": "GBP", "materials": [], "labour": [], "equipment": [] }""",
        ["cure"] = $$"""
            {
              "resins": { "r": { "kinetics": {{Kinetics}} } }, "layers": [{ "name": "a", "resin": "r", "pouredAtHours": 0 }],
              "room": [{ "hours": 0, "celsius": 22 }], "untilHours": 60
            }
            """,
        ["time"] = $$"""
            {
              "start": "2026-03-02T09:00", "work": { "days": ["mon"], "from": "09:00", "until": "17:00", "daysOff": [] }, "preparation": [],
              "resins": { "r": { "kinetics": {{Kinetics}} } }, "room": [{ "hours": 0, "celsius": 22 }], "layers": [{ "name": "a", "resin": "r", "minutes": 20 }],
              "demould": { "minutes": 15 }, "finishing": []
            }
            """,
        ["heat"] = $$"""
            {
              "mould": { "shape": "cone", "bottomDiameterMm": 80, "topDiameterMm": 80, "heightMm": 40, "wall": { "thicknessMm": 8 } },
              "resins": { "r": { "kinetics": {{Kinetics}} } }, "layers": [{ "name": "a", "resin": "r", "toMm": 10, "pouredAtHours": 0 }],
              "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 10
            }
            """,
    };

    /// <summary>Every example of docs/calculations.md, those that are refused there as well.</summary>
    public static IReadOnlyList<(string Calculation, string Json)> Documented { get; } =
        [.. Block().Matches(File.ReadAllText(Path.Combine(Sources.Root(), "docs", "calculations.md"))).Select(m => (m.Groups["what"].Value, m.Groups["in"].Value))];

    [GeneratedRegex("```json (?<what>layers|price|cure|time|heat)\n(?<in>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Block();
}
