using System.Globalization;
using System.Text.Json;

namespace Studio.Engine.Tests.NeverEarly;

/// <summary>Clock and heat know one gel: whatever the piece, <c>calc cure</c> never lets pour on a layer that <c>calc heat</c> still finds liquid somewhere.</summary>
public sealed class OneGelTests(ITestOutputHelper output)
{
    private const int Pieces = 500;

    // seeds in a row, each a piece of one to three layers; every tenth by its sheet, which is fitted, the rest by exact kinetics; one in eight with corners
    [Fact]
    [Trait("Slow", "solver")]
    public void No_layer_may_be_poured_on_before_it_has_gelled_everywhere()
    {
        var (layers, byHeat, worst) = (0, 0, double.PositiveInfinity);
        var counting = new Lock();
        Parallel.For(0, Pieces, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken }, seed =>
        {
            var piece = new MadePiece(seed);
            var cure = Calculations.Run("cure", piece.Cure);
            cure.ExitCode.ShouldBe(0, cure.Json);
            var clock = JsonElement.Parse(cure.Json).GetProperty("layers").EnumerateArray().ToList();
            double?[] gels = [.. clock.Select(l => Number(l, "gelHours"))];
            double?[] opens = [.. clock.Select(l => Number(l, "nextPourFromHours"))];
            var heat = Calculations.Run("heat", piece.Heat([.. clock.Select(l => Number(l, "pouredAtHours") ?? double.NaN)]));
            if (heat.ExitCode != 0)
            {
                return; // a layer whose pour is not known, or one that cannot be solved, is told nothing
            }

            foreach (var (told, i) in JsonElement.Parse(heat.Json).GetProperty("layers").EnumerateArray().Select((l, i) => (l, i)))
            {
                if (Number(told, "lastGelAfterHours") is not { } after || Number(clock[i], "pouredAtHours") is not { } poured)
                {
                    continue;
                }

                var share = (gels[i]!.Value - poured) / after;
                lock (counting)
                {
                    layers++;
                    byHeat += clock[i].GetProperty("restsOn").GetProperty("gelHours").GetProperty("by").GetString() == "heat" ? 1 : 0;
                    worst = Math.Min(worst, share);
                }

                share.ShouldBeGreaterThanOrEqualTo(0.99, $"seed {seed}, layer {i}: the clock's gel {gels[i] - poured:0.000} h, the heat's last {after:0.000} h after the pour\n{piece.Cure}");
                opens[i]!.Value.ShouldBeGreaterThanOrEqualTo(poured + (0.99 * after), $"seed {seed}, layer {i}");
            }
        });

        output.WriteLine(FormattableString.Invariant($"{layers} layers, {byHeat} by their own heat; the clock's gel is at least {worst:0.000} of the heat's last"));
        layers.ShouldBeGreaterThan(Pieces / 2);
        byHeat.ShouldBeGreaterThan(100);
    }

    private static double? Number(JsonElement of, string name) => of.TryGetProperty(name, out var n) && n.ValueKind == JsonValueKind.Number ? n.GetDouble() : null;

    /// <summary>A random piece, told to both calculations.</summary>
    private sealed class MadePiece
    {
        private readonly Random random;
        private readonly string resin;
        private readonly string mould;
        private readonly string room;
        private readonly List<(double Deep, double? PouredC)> layers = [];

        public MadePiece(int seed)
        {
            random = new Random(seed);
            var wide = Between(30, 140);
            var high = Between(20, 90);
            mould = random.Next(16) switch
            {
                > 1 => T($$"""{ "shape": "cone", "bottomDiameterMm": {{wide}}, "topDiameterMm": {{wide * Between(0.7, 1.3)}}, "heightMm": {{high}}, "wall": { "thicknessMm": {{Between(3, 20)}} } }"""),
                1 => T($$"""{ "shape": "cuboid", "widthMm": {{wide}}, "depthMm": {{wide * Between(0.5, 1)}}, "heightMm": {{high}}, "wall": { "thicknessMm": {{Between(3, 20)}} } }"""),
                _ => T($$"""{ "shape": "pyramid", "baseMm": {{wide}}, "heightMm": {{high}}, "tipMm": {{Between(8, 0.6 * wide)}}, "wall": { "thicknessMm": {{Between(3, 20)}} } }"""),
            };
            room = random.Next(2) == 0 ? T($$"""[{ "hours": 0, "celsius": {{Between(15, 28)}} }]""")
                : T($$"""[{ "hours": 0, "celsius": {{Between(16, 26)}} }, { "hours": 9, "celsius": {{Between(15, 26)}} }, { "hours": 20, "celsius": {{Between(17, 27)}} }]""");
            var slow = Between(-10.4, -8.6);
            resin = seed % 10 == 0
                ? T($$"""{ "dataSheet": { "class": "casting", "cupMassG": 100, "gelMinutes": {{Between(90, 400)}}, "demouldHours": {{Between(14, 30)}}, "maxPourMm": {{Between(8, 18)}}, "atCelsius": 23 } }""")
                : T($$"""{ "kinetics": { "rateAt23CPerS": {{Math.Exp(slow)}}, "kappa": {{Between(0.02, 0.08)}}, "activationJPerMol": {{Between(46000, 64000)}}, "heatJPerKg": {{Between(300000, 400000)}}, "glassEndC": {{Between(48, 65)}}, "gelConversion": {{Between(0.5, 0.65)}} } }""");
            for (var (top, n) = (0.0, 1 + random.Next(3)); layers.Count < n;)
            {
                var deep = Math.Min(Between(2, seed % 10 == 0 ? 10 : 16), (high * 0.95) - top);
                if (deep < 1)
                {
                    break;
                }

                layers.Add((deep, random.Next(3) == 0 ? Between(17, 26) : null));
                top += deep;
            }
        }

        /// <summary>As <c>calc cure</c> takes it; each layer upon the gel of the one under it.</summary>
        public string Cure => T($$"""
            { "resins": { "r": {{resin}} }, "room": {{room}}, "untilHours": 2000,
              "layers": [{{string.Join(", ", layers.Select((l, i) => T($$"""{ "name": "l{{i}}", "resin": "r", "thicknessMm": {{l.Deep}}, "mould": {{mould}}{{Poured(l.PouredC)}}, {{(i == 0 ? "\"pouredAtHours\": 0" : $"\"afterGelOf\": \"l{i - 1}\"")}} }""")))}}] }
            """);

        /// <summary>As <c>calc heat</c> takes it, poured when the clock said.</summary>
        public string Heat(double[] pouredAt) => T($$"""
            { "mould": {{mould}}, "resins": { "r": {{resin}} }, "room": {{room}}, "untilHours": {{(pouredAt.Any(double.IsNaN) ? -1 : pouredAt[^1] + 60)}},
              "layers": [{{string.Join(", ", layers.Select((l, i) => T($$"""{ "name": "l{{i}}", "resin": "r", "thicknessMm": {{l.Deep}}{{Poured(l.PouredC)}}, "pouredAtHours": {{(double.IsNaN(pouredAt[i]) ? 0 : pouredAt[i])}} }""")))}}] }
            """);

        private static string Poured(double? celsius) => celsius is { } c ? T($", \"pouredCelsius\": {c}") : "";

        private static string T(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

        private double Between(double least, double most) => least + ((most - least) * random.NextDouble());
    }
}
