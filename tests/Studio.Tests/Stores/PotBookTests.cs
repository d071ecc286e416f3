using Microsoft.EntityFrameworkCore;
using Studio.Bench;
using Studio.Engine;
using Studio.Heat;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;
using Studio.Stores;
using Studio.Tests.Bench;

namespace Studio.Tests.Stores;

public sealed class PotBookTests : IDisposable
{
    private static readonly PotValidator Validator = new();
    private readonly StudioDatabase studio = new();
    private readonly PotBook book;

    public PotBookTests() => book = new(studio.Factory, studio.News, studio.Clock, new SettingsBook(studio.Factory, studio.News));

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_pot_comes_back_as_it_was_kept()
    {
        var id = (await book.SaveAsync(Pot(), "Ada")).Id;
        var back = (await book.FormAsync(id))!;
        (back.Name, back.RatedBar, back.WorkingBar, back.TestedOn, back.TestDueOn, back.InnerDiameterMm).ShouldBe(("Grey pot", 4, 3, new DateOnly(2025, 6, 1), new DateOnly(2026, 6, 1), 260));
    }

    [Fact]
    public async Task A_bubble_at_fifty_psi_keeps_its_share_by_boyle()
    {
        // Boyle's law by hand: 14.696 / (14.696 + 50) = 0.227, its cube root 0.610
        var form = Pot();
        form.WorkingBar = 3.447379;
        await book.SaveAsync(form, "Ada");
        var plan = (await book.ListAsync()).Single().Plan;
        plan.Planned.ShouldBeTrue();
        plan.VolumeRatio!.Value.ShouldBe(0.227, 5e-4);
        plan.DiameterRatio!.Value.ShouldBe(0.610, 5e-4);
    }

    [Theory]
    [InlineData("rating")]
    [InlineData("test")]
    [InlineData("overdue")]
    public async Task Nothing_is_planned_in_a_pot_without_rating_or_test(string lacking)
    {
        var form = Pot();
        form.RatedBar = lacking == "rating" ? null : form.RatedBar;
        form.TestedOn = lacking == "test" ? null : form.TestedOn;
        form.TestDueOn = lacking == "overdue" ? new DateOnly(2026, 3, 1) : form.TestDueOn;
        await book.SaveAsync(form, "Ada");
        var plan = (await book.ListAsync()).Single().Plan;
        plan.Planned.ShouldBeFalse();
        plan.DiameterRatio.ShouldBeNull();
    }

    [Fact]
    public async Task A_test_falls_due_the_day_after_it_was_due()
    {
        var form = Pot();
        form.TestDueOn = new DateOnly(2026, 3, 2);
        await book.SaveAsync(form, "Ada");
        (await book.ListAsync()).Single().Plan.Planned.ShouldBeTrue();
        studio.Clock.Advance(TimeSpan.FromDays(1));
        (await book.ListAsync()).Single().Plan.Planned.ShouldBeFalse();
    }

    [Fact]
    public void Working_above_the_rating_is_refused_beside_its_field()
    {
        var form = Pot();
        form.WorkingBar = 4.01;
        Validator.Validate(form).Errors.ShouldHaveSingleItem().PropertyName.ShouldBe(nameof(PotForm.WorkingBar));
        form.WorkingBar = 4;
        Validator.Validate(form).IsValid.ShouldBeTrue();
    }

    [Fact]
    public async Task Two_pots_do_not_share_a_name()
    {
        await book.SaveAsync(Pot(), "Ada");
        var twin = Pot();
        twin.Name = "grey POT ";
        (await book.SaveAsync(twin, "Ada")).Ok.ShouldBeFalse();
    }

    [Fact]
    public async Task A_retired_pot_is_listed_only_when_asked_for_and_comes_back()
    {
        var id = (await book.SaveAsync(Pot(), "Ada")).Id;
        await book.RetireAsync(id, true, "Ada");
        (await book.ListAsync()).ShouldBeEmpty();
        (await book.ListAsync(retired: true)).ShouldHaveSingleItem();
        await book.RetireAsync(id, false, "Ada");
        (await book.ListAsync()).ShouldHaveSingleItem();
    }

    [Fact]
    public async Task The_bench_says_how_long_the_pressure_stays()
    {
        var (scene, bench, piece) = await PlannedAsync(Pot());
        (await bench.ReadAsync(piece))!.Layers[0].Cautions[0].Message.ShouldStartWith("Under pressure in Grey pot at 3 bar (44 psi) until the layer has gelled");
        // printed for 23 °C: gel after 2 h; nothing was read in the room, so the clock may say later, never earlier
        await scene.PourAsync(piece, 0, scene.Now);
        var sheet = (await bench.ReadAsync(piece))!;
        var gel = sheet.Times.Layers[0].Gel;
        var said = sheet.Pot!.Of(sheet.Times.Layers[0], sheet.Zone, sheet.Now);
        said.Message.ShouldContain(gel.At is { } at ? $"until at least {Say.When(at, sheet.Zone, sheet.Now)}" : "is not known");
        (gel.At ?? DateTime.MaxValue).ShouldBeGreaterThanOrEqualTo(scene.Now.AddHours(2));
    }

    [Fact]
    public async Task The_bench_gives_no_pressure_for_a_pot_whose_test_is_overdue()
    {
        var form = Pot();
        form.TestDueOn = new DateOnly(2026, 3, 1);
        var (_, bench, piece) = await PlannedAsync(form);
        var caution = (await bench.ReadAsync(piece))!.Layers[0].Cautions[0];
        (caution.Code, caution.Severity).ShouldBe(("pot-not-planned", Severity.Warn));
        caution.Message.ShouldNotContain(" bar");
    }

    private static PotForm Pot() => new() { Name = "Grey pot", RatedBar = 4, WorkingBar = 3, TestedOn = new DateOnly(2025, 6, 1), TestDueOn = new DateOnly(2026, 6, 1), InnerDiameterMm = 260, InnerHeightMm = 300 };

    private async Task<(Scene Scene, BenchBook Bench, int Piece)> PlannedAsync(PotForm form)
    {
        var pot = (await book.SaveAsync(form, "Ada")).Id;
        var scene = new Scene(studio.Factory, studio.Clock);
        var piece = await scene.PieceAsync();
        await using (var db = studio.Open())
        {
            await db.Set<Piece>().Where(p => p.Id == piece).ExecuteUpdateAsync(s => s.SetProperty(p => p.PotId, pot));
        }

        return (scene, new BenchBook(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock)), piece);
    }
}
