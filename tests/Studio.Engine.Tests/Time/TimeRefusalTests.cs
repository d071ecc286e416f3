using System.Globalization;
using System.Text.Json;

namespace Studio.Engine.Tests.Time;

/// <summary><c>calc time</c> as it is asked on the command line.</summary>
public sealed class TimeRefusalTests
{
    private const string Good = """
        {
          "start": "2026-03-02T09:00",
          "work": { "days": ["mon", "tue", "wed", "thu", "fri"], "from": "09:00", "until": "17:00", "minutesPerDay": 240, "daysOff": ["2026-04-03"] },
          "preparation": [{ "name": "dry", "days": 7, "minutes": 10, "forLayer": 2 }],
          "resins": {
            "clear": { "kinetics": { "rateAt23CPerS": 0.00012, "kappa": 0.04, "activationJPerMol": 55000 },
              "dataSheet": { "atCelsius": 23, "nextPourFromHours": 6, "nextPourUntilHours": 24, "demouldHours": 24, "fullCureHours": 72 } }
          },
          "room": { "celsius": 21 },
          "layers": [{ "name": "a", "resin": "clear", "minutes": 25 }, { "name": "b", "resin": "clear", "minutes": 25, "waitHours": 8 }],
          "demould": { "minutes": 15 },
          "finishing": [{ "name": "polish", "minutes": 60, "afterFullCure": true, "done": false }],
          "abradeMinutes": 20, "deliveryDays": 2, "reserveDays": 3, "neededBy": "2026-04-20"
        }
        """;

    [Fact]
    public void Whole_input_is_read() => Ask.Result("time", Good).Text("earliestOn").ShouldStartWith("2026-03-");

    [Theory]
    [InlineData("colour", "1", "colour")]
    [InlineData("start", null, "start")]
    [InlineData("start", "\"2026-03-02T09:00Z\"", "start")]
    [InlineData("start", "\"2026-03-02T09:00:30\"", "start")]
    [InlineData("start", "\"2026-02-30T09:00\"", "start")]
    [InlineData("start", "\"1926-03-02T09:00\"", "start")]
    [InlineData("start", "5", "start")]
    [InlineData("work", null, "work")]
    [InlineData("work.days", "[]", "work.days")]
    [InlineData("work.days", "\"mon\"", "work.days")]
    [InlineData("work.days[1]", "\"Tuesday\"", "work.days[1]")]
    [InlineData("work.days[1]", "\"mon\"", "work.days[1]")]
    [InlineData("work.from", "\"9\"", "work.from")]
    [InlineData("work.from", "\"25:00\"", "work.from")]
    [InlineData("work.until", "\"09:00\"", "work.until")]
    [InlineData("work.until", "\"24:30\"", "work.until")]
    [InlineData("work.minutesPerDay", "481", "work.minutesPerDay")]
    [InlineData("work.minutesPerDay", "0", "work.minutesPerDay")]
    [InlineData("work.minutesPerDay", "90.5", "work.minutesPerDay")]
    [InlineData("work.minutesPerDay", "20", "layers[0].minutes")]
    [InlineData("work.daysOff[0]", "\"2026-4-3\"", "work.daysOff[0]")]
    [InlineData("work.hours", "8", "work.hours")]
    [InlineData("preparation[0].name", "\" \"", "preparation[0].name")]
    [InlineData("preparation[0].days", "-1", "preparation[0].days")]
    [InlineData("preparation[0].minutes", "\"10\"", "preparation[0].minutes")]
    [InlineData("preparation[0].forLayer", "0", "preparation[0].forLayer")]
    [InlineData("preparation[0].forLayer", "3", "preparation[0].forLayer")]
    [InlineData("preparation[0].forLayer", "1.5", "preparation[0].forLayer")]
    [InlineData("preparation[0].doneAt", "\"1999-01-01T00:00\"", "preparation[0].doneAt")]
    [InlineData("preparation[0].hours", "1", "preparation[0].hours")]
    [InlineData("resins", "{}", "resins")]
    [InlineData("resins.clear.kinetics.kappa", "0", "resins.clear.kinetics.kappa")]
    [InlineData("resins.clear.dataSheet.demouldHours", "0", "resins.clear.dataSheet.demouldHours")]
    [InlineData("resins.clear", "{}", "resins.clear")]
    [InlineData("room", "[]", "room")]
    [InlineData("room", "21", "room")]
    [InlineData("room", "{}", "room.celsius")]
    [InlineData("room.hours", "0", "room.hours")]
    [InlineData("room", "[{ \"hours\": 1e9, \"celsius\": 20 }]", "room[0].hours")]
    [InlineData("layers", "[]", "layers")]
    [InlineData("layers[0].minutes", null, "layers[0].minutes")]
    [InlineData("layers[0].minutes", "241", "layers[0].minutes")]
    [InlineData("layers[0].resin", "\"blue\"", "layers[0].resin")]
    [InlineData("layers[1].waitHours", "-1", "layers[1].waitHours")]
    [InlineData("layers[1].pouredAt", "\"2026-03-01T09:00\"", "layers[1].pouredAt")]
    [InlineData("layers[0].afterGelOf", "\"b\"", "layers[0].afterGelOf")]
    [InlineData("demould", null, "demould")]
    [InlineData("demould.minutes", "300", "demould.minutes")]
    [InlineData("demould.at", "\"2026-03-01T09:00\"", "demould.at")]
    [InlineData("finishing[0].done", "\"yes\"", "finishing[0].done")]
    [InlineData("finishing[0].minutes", "1e9", "finishing[0].minutes")]
    [InlineData("abradeMinutes", "-1", "abradeMinutes")]
    [InlineData("deliveryDays", "-1", "deliveryDays")]
    [InlineData("reserveDays", "0.5", "reserveDays")]
    [InlineData("neededBy", "\"20 April\"", "neededBy")]
    [InlineData("neededBy", "null", "neededBy")]
    public void What_cannot_be_used_is_named_by_its_path_and_by_no_other(string field, string? value, string path)
    {
        var errors = Ask.Errors("time", Good.With(field, value));
        errors.Select(e => e.Path).Distinct().ShouldContain(path);
        errors.ShouldAllBe(e => e.Path == path || (field == "work.minutesPerDay" && value == "20" && e.Path == "layers[1].minutes"));
        errors.ShouldAllBe(e => e.Message.EndsWith('.'));
    }

    [Fact]
    public void Every_error_comes_at_once() =>
        Ask.Errors("time", Good.With("start", "\"soon\"").With("work.from", "9").With("layers[1].resin", "\"blue\"").With("demould.minutes", "-1").With("extra", "1").With("resins.clear.kinetics.m", "-1"))
            .Select(e => e.Path).ShouldBe(["start", "work.from", "extra", "resins.clear.kinetics.m", "layers[1].resin", "demould.minutes"], ignoreOrder: true);

    [Fact]
    public void What_is_refused_is_said_in_words_that_say_what_to_write()
    {
        Ask.Errors("time", Good.With("start", "\"2026-03-02\"")).ShouldHaveSingleItem().Message
            .ShouldBe("Must be a local time to the minute such as \"2026-03-02T09:00\", without a zone; the text \"2026-03-02\" was given.");
        Ask.Errors("time", Good.With("layers[1].pouredAt", "\"2026-03-01T09:00\"")).ShouldHaveSingleItem().Message
            .ShouldBe("Layer 'b' is poured and 'a' under it is not. Give the time of that one too, or of neither.");
    }

    // the two must not tell two stories: what calc cure says of the pours that calc time plans is what calc time says
    [Fact]
    public void Cure_times_are_those_of_calc_cure_with_kinetics_and_a_room_that_changes()
    {
        var input = Good.With("room", """[{ "hours": -5, "celsius": 24 }, { "hours": 20, "celsius": 17 }, { "hours": 90, "celsius": 21 }]""");
        var plan = Ask.Result("time", input);
        double Hours(string path) => (DateTime.Parse(plan.Text(path), CultureInfo.InvariantCulture) - Plans.Monday).TotalHours;
        var cure = Ask.Result("cure", $$"""
            { "resins": {{JsonElement.Parse(input).At("resins").GetRawText()}}, "room": {{JsonElement.Parse(input).At("room").GetRawText()}}, "untilHours": 9999,
              "layers": [{{string.Join(", ", Enumerable.Range(0, 2).Select(i => $$"""{ "name": "{{i}}", "resin": "clear", "pouredAtHours": {{Hours($"layers[{i}].pouredAt").ToString("R", CultureInfo.InvariantCulture)}} }"""))}}] }
            """);
        foreach (var (time, milestone) in new[] { ("gelAt", "gelHours"), ("demouldFrom", "demouldHours"), ("fullCureAt", "fullCureHours") })
        {
            for (var i = 0; i < 2; i++)
            {
                Hours($"layers[{i}].{time}").ShouldBe(Math.Ceiling((cure.Number($"layers[{i}].{milestone}") * 60) - 1e-6) / 60, 1e-9);
            }
        }

        Hours("layers[1].windowFrom").ShouldBe(Math.Ceiling((cure.Number("layers[0].nextPourFromHours") * 60) - 1e-6) / 60, 1e-9);
        Hours("layers[1].windowUntil").ShouldBe(Math.Floor((cure.Number("layers[0].nextPourUntilHours") * 60) + 1e-6) / 60, 1e-9);
        plan.Text("layers[0].restsOn.gelAt.kind").ShouldBe("reading");
    }

    [Fact]
    public void A_steady_room_that_cannot_be_one_is_named_where_it_was_written()
    {
        var result = Ask.Result("time", Good.With("room.celsius", "73"));
        result.Text("findings[0].path").ShouldBe("room.celsius");
        result.At("earliestOn").ValueKind.ShouldBe(JsonValueKind.Null);
        result.Text("reasons.finishedAt").ShouldStartWith("Layer a: No room temperature is logged.");
    }
}
