using System.Globalization;
using Studio.Engine.Cure;
using static Studio.Engine.Tests.Cure.Resins;

namespace Studio.Engine.Tests.Cure;

public sealed class BadClockInputTests
{
    private const string Good = """
        {
          "resins": {
            "clear": { "kinetics": { "rateAt23CPerS": 0.00012, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 370000 } },
            "white": { "dataSheet": { "class": "casting", "gelMinutes": 240, "cupMassG": 100, "atCelsius": 23, "demouldHours": 24, "fullCureHours": 168 } }
          },
          "layers": [
            { "name": "a", "resin": "clear", "pouredAtHours": 0 },
            { "name": "b", "resin": "white", "afterGelOf": "a" },
            { "name": "c", "resin": "clear", "afterGelOf": "b" }
          ],
          "room": [{ "hours": 0, "celsius": 23 }],
          "untilHours": 400
        }
        """;

    [Fact]
    public void Layer_is_poured_when_the_one_it_waits_for_gels()
    {
        var result = Ask.Result("cure", Good);
        result.Number("layers[1].pouredAtHours").ShouldBe(result.Number("layers[0].gelHours"));
        result.Text("layers[1].restsOn.gelHours.by").ShouldBe("fit"); // the printed 4 h are those of its cup
        result.Number("layers[1].gelHours").ShouldBeGreaterThan(result.Number("layers[0].gelHours") + 4);
        result.Number("layers[2].pouredAtHours").ShouldBe(result.Number("layers[1].gelHours"));
        result.Number("layers[2].gelHours").ShouldBeNear(result.Number("layers[1].gelHours") + result.Number("layers[0].gelHours"));
        result.Number("demouldHours").ShouldBe(Enumerable.Range(0, 3).Max(i => result.Number($"layers[{i}].demouldHours")));
        result.Text("layers[0].restsOn.gelHours.kind").ShouldBe("held");
        result.Number("layers[0].curve[0].conversion").ShouldBe(0);
        result.Number("layers[0].curve[120].conversion").ShouldBe(result.Number("layers[0].conversion"));
    }

    [Fact]
    public void Milestones_after_the_time_asked_for_are_null_with_a_reason()
    {
        var result = Ask.Result("cure", Good.With("untilHours", "12"));
        result.At("layers[0].demouldHours").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        result.Text("layers[0].reasons.demouldHours").ShouldStartWith("Not reached by the end of the time asked for, 12 h; in this room it comes at ");
        result.Number("layers[0].conversion").ShouldBeInRange(0.5, 0.7);
        result.Text("layers[2].reasons.conversion").ShouldContain("after the time asked for");
        result.At("demouldHours").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
    }

    [Fact]
    public void Layer_upon_one_that_does_not_say_when_it_gels_has_no_times()
    {
        var result = Ask.Result("cure", Good.With("resins.white.dataSheet", """{ "atCelsius": 23, "fullCureHours": 72 }"""));
        result.At("layers[1].gelHours").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        result.At("layers[2].pouredAtHours").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        result.Text("layers[2].reasons.demouldHours").ShouldContain("waits for the gel of layer b");
    }

    [Theory]
    [InlineData("layers[0].colour", "1", "layers[0].colour")]
    [InlineData("resins.clear.kinetics.rate", "1", "resins.clear.kinetics.rate")]
    [InlineData("resins.white.dataSheet.gelHours", "1", "resins.white.dataSheet.gelHours")]
    [InlineData("resins.white.dataSheet.class", "\"slow\"", "resins.white.dataSheet.class")]
    [InlineData("resins.clear", "{}", "resins.clear")]
    [InlineData("resins.clear.kinetics.kappa", "0", "resins.clear.kinetics.kappa")]
    [InlineData("resins.clear.kinetics.kappa", "\"0.04\"", "resins.clear.kinetics.kappa")]
    [InlineData("resins.clear.kinetics.gelConversion", "1", "resins.clear.kinetics.gelConversion")]
    [InlineData("resins.clear.kinetics.glassEndC", "-60", "resins.clear.kinetics.glassEndC")]
    [InlineData("resins.white.dataSheet.demouldHours", "0", "resins.white.dataSheet.demouldHours")]
    [InlineData("layers[1].resin", "\"blue\"", "layers[1].resin")]
    [InlineData("layers[1].afterGelOf", "\"z\"", "layers[1].afterGelOf")]
    [InlineData("layers[1].afterGelOf", "\"b\"", "layers[1].afterGelOf")]
    [InlineData("layers[1].pouredAtHours", "3", "layers[1]")]
    [InlineData("layers[0].pouredAtHours", null, "layers[0]")]
    [InlineData("layers[0].pouredAtHours", "1e9", "layers[0].pouredAtHours")]
    [InlineData("layers", "[]", "layers")]
    [InlineData("room", "[]", "room")]
    [InlineData("room[0].celsius", "1e999", "room[0].celsius")]
    [InlineData("room[0].celsius", "null", "room[0].celsius")]
    [InlineData("untilHours", null, "untilHours")]
    public void What_cannot_be_used_is_named_by_its_path(string field, string? value, string path) =>
        Ask.Errors("cure", Good.With(field, value)).Select(e => e.Path).ShouldContain(path);

    [Fact]
    public void Every_error_comes_at_once() =>
        Ask.Errors("cure", Good.With("layers[0].resin", "\"blue\"").With("untilHours", "\"soon\"").With("resins.clear.kinetics.m", "-1").With("extra", "1"))
            .Select(e => e.Path).ShouldBe(["layers[0].resin", "untilHours", "resins.clear.kinetics.m", "extra"], ignoreOrder: true);

    [Fact]
    public void Layers_that_wait_for_each_other_are_refused_all()
    {
        var errors = Ask.Errors("cure", Good.With("layers[0].pouredAtHours", null).With("layers[0].afterGelOf", "\"c\""));
        errors.Select(e => e.Path).ShouldBe(["layers[0].afterGelOf", "layers[1].afterGelOf", "layers[2].afterGelOf"]);
        errors[0].Message.ShouldBe("Layer 'a' waits for itself by way of 'c'. Give one of them 'pouredAtHours'.");
    }

    [Fact]
    public void Layer_poured_before_the_one_under_it_is_stopped()
    {
        var result = Ask.Result("cure", Good.With("layers[1].afterGelOf", null).With("layers[1].pouredAtHours", "-1"));
        var finding = result.At("layers[1].findings").EnumerateArray().Single(f => f.GetProperty("code").GetString() == "poured-before-layer-below");
        finding.GetProperty("severity").GetString().ShouldBe("stop");
    }

    // °F pasted, the value of a broken wire and a sensor's error value: left out and named, never earlier for it
    [Theory]
    [InlineData(73.4, "it is 23 °C")]
    [InlineData(-273, "Look at the thermometer")]
    [InlineData(85, "Some sensors report 85 °C")]
    public void Reading_no_workroom_has_is_left_out_and_named(double celsius, string said)
    {
        var text = celsius.ToString(CultureInfo.InvariantCulture);
        var result = Ask.Result("cure", Good.With("room", $$"""[{ "hours": 0, "celsius": 23 }, { "hours": 5, "celsius": {{text}} }, { "hours": 6, "celsius": 23 }]"""));
        result.Number("layers[0].gelHours").ShouldBe(Ask.Result("cure", Good).Number("layers[0].gelHours"), 1e-9);
        result.Text("findings[0].path").ShouldBe("room[1]");
        result.Text("findings[0].message").ShouldContain(said);
    }

    [Fact]
    public void Room_logged_in_Fahrenheit_throughout_gives_no_time_at_all()
    {
        var result = Ask.Result("cure", Good.With("room", """[{ "hours": 0, "celsius": 73 }, { "hours": 5, "celsius": 68 }]"""));
        result.At("layers[0].gelHours").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        result.Text("layers[0].reasons.gelHours").ShouldStartWith("No room temperature is logged");
    }

    [Fact]
    public void Cool_room_in_Fahrenheit_could_pass_for_a_hot_one_and_is_doubted() =>
        Ask.Result("cure", Good.With("room[0].celsius", "55")).Text("findings[0].code").ShouldBe("hot-room-doubtful");

    [Fact]
    public void Readings_out_of_order_or_twice_are_put_right()
    {
        RoomReading[] inOrder = [new(0, 18), new(6, 24), new(12, 20)];
        var straight = Clock(Standard, inOrder);
        Clock(Standard, [new(12, 20), new(6, 30), new(0, 18), new(6, 24)]).Demould.AtHours.ShouldBe(straight.Demould.AtHours);
    }

    // a sensor that posts every second for eleven days
    [Fact]
    public void Million_readings_are_worked_through()
    {
        var room = new RoomReading[1_000_000];
        for (var i = 0; i < room.Length; i++)
        {
            room[i] = new(i / 3600.0, 20 + (3 * Math.Sin(i / 13_750.0)));
        }

        RoomReading[] hourly = [.. Enumerable.Range(0, 2778).Select(i => room[i * 360])];
        Clock(Standard, room).Demould.AtHours!.Value.ShouldBe(Clock(Standard, hourly).Demould.AtHours!.Value, 0.01);
    }

    [Fact]
    public void Million_faulty_readings_are_told_in_few_words()
    {
        var log = new RoomLog([.. Enumerable.Range(0, 1_000_000).Select(i => new RoomReading(i, 85))]);
        log.Findings.Count.ShouldBe(21);
        log.Findings[^1].Message.ShouldStartWith("999980 more readings");
    }

    [Fact]
    public void Sheet_that_contradicts_itself_or_leaves_things_out_is_doubted()
    {
        var result = Ask.Result("cure", Good.With("resins.white.dataSheet", """{ "potLifeMinutes": 40, "gelMinutes": 600, "demouldHours": 4 }"""));
        result.At("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString())
            .ShouldBe(["sheet-temperature-assumed", "pot-life-without-mass", "gel-of-a-cup", "sheet-contradicts-itself"]);
    }
}
