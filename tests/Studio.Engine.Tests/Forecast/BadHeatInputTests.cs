using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Studio.Engine.Tests.Forecast;

/// <summary>What people and sensors give by mistake: named, never a crash, never in silence.</summary>
public sealed class BadHeatInputTests
{
    private const string Piece = """
        {
          "mould": { "shape": "cone", "bottomDiameterMm": 80, "topDiameterMm": 80, "heightMm": 40, "wall": { "thicknessMm": 8 } },
          "resins": {
            "r": { "kinetics": { "rateAt23CPerS": 0.00004, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 360000 } },
            "s": { "dataSheet": { "class": "casting", "cupMassG": 100, "gelMinutes": 240, "atCelsius": 23, "peakCelsius": 155, "demouldHours": 18, "maxPourMm": 12 } }
          },
          "layers": [{ "name": "a", "resin": "r", "toMm": 30, "pouredAtHours": 0 }],
          "room": [{ "hours": 0, "celsius": 23 }, { "hours": 10, "celsius": 19 }, { "hours": 24, "celsius": 22 }],
          "untilHours": 48
        }
        """;

    private const string Sheet = "resins.s.dataSheet";

    [Theory]
    [InlineData("85", "Some sensors report 85 °C")]
    [InlineData("-273", "Look at the thermometer")]
    [InlineData("73.4", "it is 23 °C")]
    public void A_reading_that_cannot_be_is_left_out_and_named(string celsius, string words)
    {
        var without = Ask.Result("heat", Piece.With("room", """[{ "hours": 0, "celsius": 23 }, { "hours": 24, "celsius": 22 }]"""));
        var with = Ask.Result("heat", Piece.With("room[1].celsius", celsius));
        with.Number("layers[0].peakCelsius").ShouldBeNear(without.Number("layers[0].peakCelsius"));
        with.At("findings").EnumerateArray().ShouldContain(f => f.Text("code") == "room-reading-implausible" && f.Text("path") == "room[1]" && f.Text("message").Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_room_all_in_fahrenheit_is_refused()
    {
        var error = Ask.Errors("heat", Piece.With("room", """[{ "hours": 0, "celsius": 72 }, { "hours": 8, "celsius": 70 }]""")).ShouldHaveSingleItem();
        error.Path.ShouldBe("room");
        error.Message.ShouldContain("°F");
    }

    [Fact]
    public void A_warm_reading_that_may_be_of_another_scale_is_doubted() =>
        Ask.Result("heat", Piece.With("room[1].celsius", "50")).At("findings").EnumerateArray().ShouldContain(f => f.Text("code") == "hot-room-doubtful");

    [Fact]
    public void Readings_out_of_order_or_twice_change_nothing()
    {
        var sorted = Ask.Result("heat", Piece).Number("layers[0].peakCelsius");
        var mixed = """[{ "hours": 24, "celsius": 22 }, { "hours": 0, "celsius": 23 }, { "hours": 10, "celsius": 25 }, { "hours": 10, "celsius": 19 }, { "hours": 0, "celsius": 23 }]""";
        Ask.Result("heat", Piece.With("room", mixed)).Number("layers[0].peakCelsius").ShouldBeNear(sorted);
    }

    [Fact]
    public void A_layer_poured_before_the_one_under_it_is_refused()
    {
        var layers = """[{ "resin": "r", "toMm": 15, "pouredAtHours": 20 }, { "resin": "r", "toMm": 30, "pouredAtHours": 2 }, { "resin": "r", "toMm": 35, "pouredAtHours": 2 }]""";
        Ask.Errors("heat", Piece.With("layers", layers)).Select(e => e.Path).ShouldBe(["layers[1].pouredAtHours", "layers[2].pouredAtHours"]);
    }

    // a sensor that posts every second for eleven and a half days
    [Theory]
    [InlineData("heat")]
    [InlineData("cure")]
    [Trait("Slow", "solver")]
    public void A_million_readings_are_worked_through(string calculation)
    {
        var room = new StringBuilder("[");
        for (var i = 0; i < 1_000_000; i++)
        {
            room.Append(i == 0 ? "" : ",").Append(CultureInfo.InvariantCulture, $"{{\"hours\":{i / 3600.0:0.#####},\"celsius\":{21 + (2 * Math.Sin(i / 13750.0)):0.##}}}");
        }

        var json = (calculation == "heat" ? Piece.With("layers[0].resin", "\"s\"").With("layers[0].toMm", "12") : Clock).With("room", room.Append(']').ToString());
        var watch = Stopwatch.StartNew();
        var answer = Calculations.Run(calculation, json);
        TestContext.Current.TestOutputHelper!.WriteLine($"{calculation}: {watch.ElapsedMilliseconds} ms");
        answer.ExitCode.ShouldBe(0);
        watch.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(30));
        if (calculation == "heat")
        {
            JsonElement.Parse(answer.Json).At("findings").EnumerateArray().ShouldContain(f => f.Text("code") == "room-averaged");
        }
    }

    // the mean over each stretch of a room that is logged every second is the room
    [Fact]
    public void Taking_readings_together_does_not_move_the_peak()
    {
        string Room(int everyS) => $"[{string.Join(',', Enumerable.Range(0, (72 * 3600 / everyS) + 1).Select(i => string.Create(CultureInfo.InvariantCulture, $"{{\"hours\":{i * everyS / 3600.0:R},\"celsius\":{21 + (3 * Math.Sin(i * everyS / 13750.0)):R}}}")))}]";
        Ask.Result("heat", Piece.With("room", Room(10))).Number("layers[0].peakCelsius").ShouldBe(Ask.Result("heat", Piece.With("room", Room(600))).Number("layers[0].peakCelsius"), 0.05);
    }

    [Theory]
    [InlineData("gelMinutes", "4000", "sheet-contradicts-itself")]
    [InlineData("demouldHours", "2", "sheet-contradicts-itself")]
    [InlineData("maxPourMm", "80", "sheet-contradicts-itself")]
    [InlineData("peakCelsius", "311", "peak-looks-like-fahrenheit")]
    [InlineData("cupMassG", null, "cup-without-mass")]
    [InlineData("atCelsius", null, "sheet-temperature-assumed")]
    [InlineData("fullCureHours", "10", "sheet-contradicts-itself")]
    [InlineData("potLifeMinutes", "300", "sheet-contradicts-itself")]
    [Trait("Slow", "solver")]
    public void A_sheet_that_contradicts_itself_is_doubted(string field, string? value, string code)
    {
        var result = Ask.Result("heat", Piece.With("layers[0].resin", "\"s\"").With("layers[0].toMm", "10").With($"{Sheet}.{field}", value));
        var said = result.At("findings").EnumerateArray().Where(f => f.Text("code") == code).ToList();
        said.ShouldNotBeEmpty(result.At("findings").GetRawText());
        said.ShouldAllBe(f => f.Text("path").StartsWith(Sheet, StringComparison.Ordinal) && f.Text("source").Length > 0);
    }

    [Theory]
    [InlineData("atCelsius", "73.4", "23")]
    [InlineData("atCelsius", "-273", "0")]
    [InlineData("peakCelsius", "15", "24")]
    [InlineData("cupMassG", "1e6", "50000")]
    public void A_sheet_that_cannot_be_is_refused(string field, string value, string words)
    {
        var error = Ask.Errors("heat", Piece.With("layers[0].resin", "\"s\"").With($"{Sheet}.{field}", value)).ShouldHaveSingleItem();
        error.Path.ShouldBe($"{Sheet}.{field}");
        error.Message.ShouldContain(words);
    }

    private const string Clock = """
        {
          "resins": { "r": { "kinetics": { "rateAt23CPerS": 0.00004, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 360000 } }, "s": { "dataSheet": { "atCelsius": 23, "demouldHours": 18, "nextPourFromHours": 6 } } },
          "layers": [{ "name": "a", "resin": "r", "pouredAtHours": 0 }, { "name": "b", "resin": "s", "afterGelOf": "a" }], "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 120
        }
        """;
}
