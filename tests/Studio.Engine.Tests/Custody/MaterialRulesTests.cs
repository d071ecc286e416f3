using Studio.Engine.Custody;

namespace Studio.Engine.Tests.Custody;

public sealed class MaterialRulesTests
{
    // one row a rule: a figure or word that the source or our rule demands, and how grave it is
    [Theory]
    [InlineData("photograph-only-copy", Severity.Stop, "scan it")]
    [InlineData("photograph-dye-inkjet", Severity.Warn, "65 %")] // Image Permanence Institute DP3
    [InlineData("photograph-pigment-inkjet", Severity.Note, "rub")]
    [InlineData("photograph-laser", Severity.Note, "spare strip")]
    [InlineData("letter", Severity.Warn, "copy")]
    [InlineData("dried-flower", Severity.Warn, "2 to 7 days")] // extension leaflet, reprinted
    [InlineData("iron", Severity.Warn, "35 %")] // WA Museum conservation manual
    [InlineData("brass", Severity.Note, "45 %")] // WA Museum conservation manual
    [InlineData("textile", Severity.Note, "bubbles")]
    [InlineData("wood", Severity.Warn, "lighter than resin")]
    [InlineData("ashes", Severity.Warn, "Weigh")]
    [InlineData("hair", Severity.Note, "air")]
    [InlineData("plastic", Severity.Note, "softens")]
    [InlineData("electronics", Severity.Warn, "cavity")]
    [InlineData("battery", Severity.Stop, "never goes inside")] // backed by 16 CFR 1263, UL 4200A-2023
    [InlineData("glass", Severity.Note, "air")]
    [InlineData("other", Severity.Warn, "copy")]
    public void Each_material_says_what_it_needs(string key, Severity severity, string says)
    {
        var rule = MaterialRules.For(key);
        rule.Key.ShouldBe(key);
        rule.Severity.ShouldBe(severity);
        rule.NeedsBeforeResin.ShouldContain(says);
        rule.NeedsBeforeResin.ShouldEndWith(".");
        rule.Source.ShouldNotBeNullOrWhiteSpace();
        rule.NeverEmbed.ShouldBe(severity == Severity.Stop);
    }

    [Fact]
    public void Every_rule_has_a_row_of_cases() => MaterialRules.All.Count.ShouldBe(
        typeof(MaterialRulesTests).GetMethod(nameof(Each_material_says_what_it_needs))!.GetCustomAttributes(typeof(InlineDataAttribute), false).Length);

    // flowers: the longer end of the leaflet's 2 to 7 days in silica gel; the others: common practice, no source
    [Theory]
    [InlineData("dried-flower", 7)]
    [InlineData("wood", 7)]
    [InlineData("textile", 1)]
    [InlineData("ashes", 1)]
    [InlineData("hair", 1)]
    public void What_must_dry_says_for_how_many_days(string key, double days) => MaterialRules.For(key).DryingDays.ShouldBe(days);

    [Fact]
    public void Only_what_must_dry_takes_days_and_each_of_them_names_a_source()
    {
        MaterialRules.All.Count(r => r.DryingDays > 0).ShouldBe(5);
        MaterialRules.All.ShouldAllBe(r => r.DryingDays > 0 == r.DryingSource.Length > 0);
    }

    [Fact]
    public void Keys_are_unique() => MaterialRules.All.Select(r => r.Key).ShouldBeUnique();

    [Theory]
    [InlineData(null)]
    [InlineData("a-key-of-long-ago")]
    public void An_unknown_material_is_stopped_and_says_that_it_is_unknown(string? key)
    {
        var rule = MaterialRules.For(key);
        rule.NeverEmbed.ShouldBeTrue();
        rule.Label.ShouldContain("not");
    }

    [Fact]
    public void Rule_becomes_a_finding_where_it_concerns() =>
        MaterialRules.For("battery").At("keepsakes[2]").ShouldBe(
            new Finding("material-battery", Severity.Stop, "keepsakes[2]", MaterialRules.For("battery").NeedsBeforeResin, MaterialRules.For("battery").Source));

    // Victorian Collections glossary
    [Theory]
    [InlineData("abrasion")]
    [InlineData("accretion")]
    [InlineData("bloom")]
    [InlineData("foxing")]
    [InlineData("loss")]
    public void Words_for_damage_are_those_of_the_trade(string word) => ConditionWords.Damage.ShouldContain(w => w.Word == word);

    [Fact]
    public void Words_for_damage_are_in_order_and_explained()
    {
        ConditionWords.Damage.Select(w => w.Word).ShouldBeInOrder();
        ConditionWords.Damage.ShouldAllBe(w => w.Meaning.Length > 5);
    }
}
