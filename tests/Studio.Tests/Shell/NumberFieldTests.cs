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

    private IRenderedComponent<NumberField> Field(Action<ComponentParameterCollectionBuilder<NumberField>>? more = null, double value = 100) => Render<NumberField>(p =>
    {
        p.Add(f => f.Label, "Height").Add(f => f.Unit, "mm").Add(f => f.Value, value).Add(f => f.ValueChanged, EventCallback.Factory.Create<double?>(this, v => told = v));
        more?.Invoke(p);
    });
}
