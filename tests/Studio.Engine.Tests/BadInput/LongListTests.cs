using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Studio.Engine.Tests.BadInput;

/// <summary>Twenty thousand wrong entries are told of as fast as they are read, whichever list they stand in, and the first two hundred of them by name.</summary>
/// <remarks>The bound is far above what it takes (about a fifth of a second) and far below what comparing each with each takes (a minute).</remarks>
public sealed class LongListTests
{
    private const int Many = 20_000;
    private const int Shown = 200;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(8);

    public static TheoryData<string, string, string> Lists => new()
    {
        { "layers", "layers", "{}" },
        { "layers", "layers", """{ "name": "x", "resin": "none", "toMm": 5 }""" },
        { "layers", "layers[0].additions", "{}" },
        { "layers", "layers[0].scatter", "{}" },
        { "layers", "layers[0].placed", """{ "name": "", "massG": -1 }""" },
        { "layers", "mould.readings", "{}" },
        { "layers", "mould.readings", """{ "heightMm": 5, "volumeMl": 5 }""" },
        { "price", "materials", "{}" },
        { "price", "labour", "{}" },
        { "price", "equipment", "7" },
        { "cure", "layers", "{}" },
        { "cure", "layers", """{ "name": "x", "resin": "r", "afterGelOf": "x" }""" },
        { "cure", "room", "{}" },
        { "cure", "room", """{ "hours": 1e9, "celsius": 20 }""" },
        { "time", "layers", "{}" },
        { "time", "preparation", "{}" },
        { "time", "finishing", "{}" },
        { "time", "work.days", "\"mon\"" },
        { "time", "work.days", "\"day\"" },
        { "time", "work.daysOff", "5" },
        { "time", "room", "{}" },
        { "heat", "layers", "{}" },
        { "heat", "room", "{}" },
        { "heat", "room", """{ "hours": "\ud800", "celsius": 20 }""" },
    };

    [Theory]
    [MemberData(nameof(Lists))]
    public void A_list_of_wrong_entries(string calculation, string list, string entry) =>
        Refused(calculation, Inputs.Whole[calculation].With(list, $"[{string.Join(',', Enumerable.Repeat(entry, Many))}]"));

    [Theory]
    [InlineData("layers")]
    [InlineData("cure")]
    [InlineData("time")]
    [InlineData("heat")]
    public void As_many_empty_resins_and_as_many_layers_of_none_of_them(string calculation) => Refused(
        calculation,
        Inputs.Whole[calculation]
            .With("resins", $"{{{string.Join(',', Enumerable.Range(0, Many).Select(i => string.Create(CultureInfo.InvariantCulture, $"\"r{i}\":{{}}")))}}}")
            .With("layers", $"[{string.Join(',', Enumerable.Repeat("""{ "name": "x", "resin": "none" }""", Many))}]"));

    [Theory]
    [InlineData("layers", "mould")]
    [InlineData("price", "fee")]
    [InlineData("cure", "resins.r.kinetics")]
    [InlineData("time", "work")]
    [InlineData("heat", "boundary")]
    public void As_many_fields_that_nobody_knows(string calculation, string at) => Refused(
        calculation,
        Inputs.Whole[calculation].With(at, $"{{{string.Join(',', Enumerable.Range(0, Many).Select(i => string.Create(CultureInfo.InvariantCulture, $"\"f{i}\":1,\"f{i}\":2")))}}}"));

    [Fact]
    public void What_is_left_out_is_counted()
    {
        // two fields are missing in each of 150 readings
        var errors = Ask.Errors("cure", Inputs.Whole["cure"].With("room", $"[{string.Join(',', Enumerable.Repeat("{}", 150))}]"));
        errors.Count.ShouldBe(Shown + 1);
        errors[Shown - 1].Path.ShouldBe("room[99].celsius");
        errors[Shown].Path.ShouldBe("");
        errors[Shown].Message.ShouldStartWith("and 100 more");
    }

    [Fact]
    public void Two_hundred_are_all_told()
    {
        var errors = Ask.Errors("cure", Inputs.Whole["cure"].With("room", $"[{string.Join(',', Enumerable.Repeat("{}", Shown / 2))}]"));
        errors.Count.ShouldBe(Shown);
        errors[^1].Path.ShouldBe("room[99].celsius");
    }

    private static void Refused(string calculation, string json)
    {
        var watch = Stopwatch.StartNew();
        var answer = Calculations.Run(calculation, json);
        TestContext.Current.TestOutputHelper!.WriteLine($"{watch.ElapsedMilliseconds} ms");
        answer.ExitCode.ShouldBe(2);
        JsonElement.Parse(answer.Json).GetProperty("errors").GetArrayLength().ShouldBeInRange(1, Shown + 1);
        answer.Json.Length.ShouldBeLessThan(1_000_000);
        watch.Elapsed.ShouldBeLessThan(Longest);
    }
}
