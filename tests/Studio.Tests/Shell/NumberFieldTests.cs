using Bunit;
using Microsoft.AspNetCore.Components;
using MudBlazor.Services;
using Studio.Shell;

namespace Studio.Tests.Shell;

public sealed class NumberFieldTests : BunitContext
{
    private double? told = 100;

    public NumberFieldTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        RenderTree.Add<CascadingValue<UnreadNumbers>>(p => p.Add(c => c.Value, new UnreadNumbers()));
    }

    [Fact]
    public void What_cannot_be_read_stays_as_typed_with_a_sentence_beside_it()
    {
        var field = Field();
        field.Find("input").Change("ten");
        field.Find("input").GetAttribute("value").ShouldBe("ten");
        field.Markup.ShouldContain("“ten” is not a number");
        told.ShouldBe(100);
    }

    [Fact]
    public void It_still_stands_there_when_the_page_draws_itself_again()
    {
        var field = Field();
        field.Find("input").Change("12 g");
        field.Render(p => p.Add(f => f.Helper, "The page drew itself again"));
        field.Find("input").GetAttribute("value").ShouldBe("12 g");
    }

    [Fact]
    public void Mending_it_tells_the_page_and_clears_the_complaint()
    {
        var field = Field();
        field.Find("input").Change("ten");
        field.Find("input").Change("6 in");
        told!.Value.ShouldBe(152.4, 1e-9);
        field.Markup.ShouldNotContain("is not a number");
    }

    [Fact]
    public void A_text_that_was_read_is_not_rewritten_under_the_fingers()
    {
        var field = Field();
        field.Find("input").Change("6 in");
        field.Render(p => p.Add(f => f.Value, told));
        field.Find("input").GetAttribute("value").ShouldBe("6 in");
    }

    [Fact]
    public void Clearing_it_tells_the_page_that_there_is_nothing()
    {
        var field = Field();
        field.Find("input").Change("");
        told.ShouldBeNull();
    }

    [Fact]
    public void Inches_are_shown_and_read_where_the_studio_measures_in_inches()
    {
        var field = Field(f => f.Add(x => x.Units, "inch"), 152.4);
        field.Find("input").GetAttribute("value").ShouldBe("6");
        field.Find("input").Change("4");
        told!.Value.ShouldBe(101.6, 1e-9);
    }

    [Fact]
    public void Limits_are_named_in_the_unit_that_is_shown()
    {
        var field = Field(f => f.Add(x => x.Units, "inch").Add(x => x.Min, 25.4).Add(x => x.Max, 254));
        field.Find("input").Change("99");
        field.Markup.ShouldContain("Must be between 1 and 10 in.");
    }

    [Fact]
    public void A_form_learns_which_fields_cannot_be_read_until_they_are_mended_or_gone()
    {
        var unread = new UnreadNumbers();
        var field = Field(f => f.AddCascadingValue(unread));
        field.Find("input").Change("ten");
        unread.Labels.ShouldBe(["Height [mm]"]);
        field.Find("input").Change("10");
        unread.Any.ShouldBeFalse();
        field.Find("input").Change("ten");
        field.Instance.Dispose();
        unread.Any.ShouldBeFalse();
    }

    [Theory]
    [InlineData("mm", "-1", true)]
    [InlineData("GBP", "-0.01", true)]
    [InlineData("", "-3", true)]
    [InlineData("°C", "-1", false)]
    [InlineData("K", "-0.5", false)]
    [InlineData("g", "0", false)]
    public void Nothing_is_less_than_nothing_but_a_temperature(string unit, string typed, bool refused)
    {
        var field = Field(unit: unit);
        field.Find("input").Change(typed);
        field.Markup.Contains("Must be at least 0", StringComparison.Ordinal).ShouldBe(refused);
        (told == 100).ShouldBe(refused);
    }

    [Fact]
    public void A_count_is_whole_and_is_not_rounded_to_one()
    {
        var field = Field(f => f.Add(x => x.Whole, true), unit: "");
        field.Find("input").Change("2.7");
        field.Markup.ShouldContain("Must be a whole number.");
        told.ShouldBe(100);
    }

    [Fact]
    public void A_form_says_which_field_what_stands_in_it_and_what_to_type()
    {
        var unread = new UnreadNumbers();
        var field = Field(f => f.AddCascadingValue(unread).Add(x => x.Max, 200));
        field.Find("input").Change("ten");
        unread.Refused.ShouldBeEmpty("nobody wanted to keep it yet");
        unread.Refuse().ShouldBeTrue();
        unread.Refused.ShouldBe("Nothing was kept yet. Height [mm]: “ten” is not a number. Type digits, with a unit if you like, such as 150 or 6 in.");
        field.Find("input").Change("999");
        unread.Refused.ShouldBe("Nothing was kept yet. Height [mm]: “999” stands there. Must be between 0 and 200 mm.");
        field.Find("input").Change("100");
        unread.Refused.ShouldBeEmpty();
        unread.Refuse().ShouldBeFalse();
    }

    [Fact]
    public async Task What_is_put_back_shows_the_value_again()
    {
        var unread = new UnreadNumbers();
        var field = Field(f => f.AddCascadingValue(unread));
        field.Find("input").Change("ten");
        await field.InvokeAsync(unread.PutBack);
        field.Find("input").GetAttribute("value").ShouldBe("100");
        unread.Any.ShouldBeFalse();
    }

    [Fact]
    public void What_cannot_be_read_in_a_part_cannot_be_read_in_the_whole()
    {
        var whole = new UnreadNumbers();
        var part = new UnreadNumbers(whole);
        var field = Field(f => f.AddCascadingValue(part));
        field.Find("input").Change("ten");
        (whole.Any, part.Any).ShouldBe((true, true));
        field.Find("input").Change("10");
        (whole.Any, part.Any).ShouldBe((false, false));
    }

    // 29 March 2026, 01:30 does not exist in London: the clocks go forward (EU and UK summer time, last Sunday of March at 01:00 UTC)
    [Theory]
    [InlineData("2026-03-29T01:30", true)]
    [InlineData("2026-03-29T02:30", false)]
    public void A_moment_that_the_clock_leaves_out_is_not_the_one_before(string typed, bool refused)
    {
        var unread = new UnreadNumbers();
        DateTime? at = new DateTime(2026, 3, 28, 9, 0, 0, DateTimeKind.Utc);
        var field = Render<MomentField>(p => p.AddCascadingValue(unread).Add(f => f.Label, "Poured at").Add(f => f.Id, "at").Add(f => f.Zone, TimeZoneInfo.FindSystemTimeZoneById("Europe/London"))
            .Add(f => f.Value, at).Add(f => f.ValueChanged, EventCallback.Factory.Create<DateTime?>(this, v => at = v)));
        field.Find("input").Change(typed);
        unread.Refuse().ShouldBe(refused);
        field.Find("input").GetAttribute("value").ShouldBe(typed);
        at.ShouldBe(refused ? new DateTime(2026, 3, 28, 9, 0, 0, DateTimeKind.Utc) : new DateTime(2026, 3, 29, 1, 30, 0, DateTimeKind.Utc));
    }

    private IRenderedComponent<NumberField> Field(Action<ComponentParameterCollectionBuilder<NumberField>>? more = null, double value = 100, string unit = "mm") => Render<NumberField>(p =>
    {
        p.Add(f => f.Label, "Height").Add(f => f.Unit, unit).Add(f => f.Value, value).Add(f => f.ValueChanged, EventCallback.Factory.Create<double?>(this, v => told = v));
        more?.Invoke(p);
    });
}
