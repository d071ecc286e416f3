using Studio.Engine.Custody;
using Studio.Keepsakes;

namespace Studio.Tests.Keepsakes;

public sealed class IntakeFormTests
{
    [Fact]
    public void An_empty_form_says_everything_at_once()
    {
        var fields = new IntakeValidator().Validate(new IntakeForm()).Errors.Select(e => e.PropertyName);
        fields.ShouldBe(["Kind", "Description", "Permits", "Place"], ignoreOrder: true);
    }

    [Theory]
    [InlineData("0", false)]
    [InlineData("1", true)]
    [InlineData("2.5", false)]
    [InlineData("9999", true)]
    [InlineData("10000", false)]
    [InlineData("-3", false)]
    public void Things_are_counted_in_whole_numbers(string typed, bool good)
    {
        var form = KeepsakeScene.Form();
        form.Take(Fields(("count", typed))).ShouldBeEmpty();
        new IntakeValidator().Validate(form).IsValid.ShouldBe(good);
    }

    [Theory]
    [InlineData("12.4", 12.4)]
    [InlineData("12,4 g", 12.4)]
    [InlineData("1 oz", 28.349523125)] // exact by definition of the international avoirdupois ounce
    [InlineData("0.5 kg", 500)]
    public void A_mass_is_read_as_people_type_it(string typed, double grams)
    {
        var form = KeepsakeScene.Form();
        form.Take(Fields(("massG", typed))).ShouldBeEmpty();
        form.MassG.ShouldBe(grams);
    }

    [Theory]
    [InlineData("12 stones")]
    [InlineData("heavy")]
    [InlineData("NaN")]
    [InlineData("1,250")]
    public void A_mass_that_cannot_be_read_is_complained_of_and_costs_no_other_word(string typed)
    {
        var form = new IntakeForm();
        var wrong = form.Take(Fields(("massG", typed), ("description", "hive nails"), ("place", "Bench")));
        wrong.Keys.ShouldBe(["massG"]);
        (form.Description, form.Place).ShouldBe(("hive nails", "Bench"));
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("0")]
    [InlineData("1e9")]
    public void An_absurd_mass_is_refused_with_a_sentence(string typed)
    {
        var form = KeepsakeScene.Form();
        form.Take(Fields(("massG", typed)));
        new IntakeValidator().Validate(form).Errors.ShouldHaveSingleItem().PropertyName.ShouldBe("MassG");
    }

    [Fact]
    public void A_poor_rating_wants_to_know_why()
    {
        var form = KeepsakeScene.Form();
        form.Overall = "Poor";
        new IntakeValidator().Validate(form).Errors.ShouldHaveSingleItem().ErrorMessage.ShouldContain("why it is poor");
        form.Damage = ["crack"];
        new IntakeValidator().Validate(form).IsValid.ShouldBeTrue();
    }

    [Fact]
    public void Somebody_else_who_brings_it_says_by_what_right()
    {
        // Spectrum, object entry (Collections Trust): the depositor's authority where the depositor is not the owner
        var form = KeepsakeScene.Form();
        form.DepositorName = "Ewan Fraser";
        new IntakeValidator().Validate(form).Errors.ShouldHaveSingleItem().PropertyName.ShouldBe("DepositorAuthority");
    }

    [Fact]
    public void The_next_one_keeps_what_stays_the_same_and_forgets_the_rest()
    {
        var form = KeepsakeScene.Form(massG: 12);
        (form.Method, form.Overall, form.Damage, form.PhotoIds) = ("by post", "Good", ["crack"], [7]);
        var next = form.Next();
        (next.Place, next.Permits, next.Method).ShouldBe(("Drawer 1", "", "by post"), "where it lies is carried, what the family permits is asked anew");
        next.Carried.ShouldBe(["Place", "Method"]);
        next.Blank.ShouldBeTrue();
        next.PhotoIds.ShouldBeEmpty();
        next.SubmitKey.ShouldNotBe(form.SubmitKey);
    }

    [Fact]
    public void A_draft_gives_back_every_word_and_the_key_it_was_begun_with()
    {
        var form = new IntakeForm();
        form.Take(Fields(("submitKey", "k1"), ("kind", "iron"), ("description", "hive nails"), ("damage", "corrosion"), ("overall", "Fair"), ("permits", Permissions.EmbedPart), ("returnBy", "2026-05-01")));
        (form.SubmitKey, form.Kind, form.Overall, form.Permits, form.ReturnDay).ShouldBe(("k1", "iron", "Fair", Permissions.EmbedPart, new DateOnly(2026, 5, 1)));
        form.Damage.ShouldBe(["corrosion"]);
    }

    private static Dictionary<string, string[]> Fields(params (string Name, string Value)[] fields) =>
        fields.ToDictionary(f => f.Name, f => new[] { f.Value }, StringComparer.Ordinal);
}
