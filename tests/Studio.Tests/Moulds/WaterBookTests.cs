using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Moulds;
using Studio.Pieces;

namespace Studio.Tests.Moulds;

public sealed class WaterBookTests : IDisposable
{
    private readonly StudioDatabase database = new();
    private readonly MouldBook book;

    public WaterBookTests() => book = new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses());

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task A_fill_is_kept_with_who_poured_and_when()
    {
        var form = await KeptAsync();
        (await book.CheckAsync(form, 50, 515, "Ada")).Ok.ShouldBeTrue();
        var kept = (await book.FormAsync(form.Id))!;
        kept.Checks.ShouldBe([new WaterCheck(50, 515, database.Clock.GetUtcNow().UtcDateTime, "Ada")]);
        kept.Version.ShouldBe(form.Version, "what else is typed can still be kept");
    }

    [Fact]
    public async Task Scaling_keeps_factor_and_spread_and_the_capacity_says_them() // 1525/1500 = 1.017; a millimetre at each mark: sqrt(200)/1500 = 0.9 %, and the marks differ by 1 % to either side
    {
        var form = await KeptAsync();
        await book.CheckAsync(form, 50, 515, "Ada");
        await book.CheckAsync(form, 100, 1010, "Ada");
        book.Water(form).Offer.ShouldBeTrue();
        (await book.ScaleAsync(form, "Ada")).Ok.ShouldBeTrue();
        (form.VolumeFactor, form.VolumeSpreadPercent).ShouldBe((1.017, 1.0));
        book.Water(form).Offer.ShouldBeFalse();
        var line = (await book.ListAsync()).Single();
        line.CapacityMl!.Value.ShouldBe(1017, 1e-9);
        line.SpreadMl!.Value.ShouldBe(10.17, 1e-9);
        (await book.SetScaleAsync(form, 1, null, "Ada")).Ok.ShouldBeTrue();
        (await book.ListAsync()).Single().CapacityMl!.Value.ShouldBe(1000, 1e-9);
    }

    [Fact]
    public async Task A_check_taken_out_comes_back_in_its_place()
    {
        var form = await KeptAsync();
        await book.CheckAsync(form, 50, 515, "Ada");
        await book.CheckAsync(form, 100, 1010, "Ada");
        var first = form.Checks[0];
        await book.DropCheckAsync(form, 0, "Ada");
        form.Checks.Select(c => c.HeightMm).ShouldBe([100]);
        await book.BringCheckBackAsync(form, 0, first, "Ada");
        (await book.FormAsync(form.Id))!.Checks.Select(c => c.HeightMm).ShouldBe([50, 100]);
    }

    [Fact]
    public async Task A_mark_above_the_rim_is_refused_and_nothing_is_kept()
    {
        var form = await KeptAsync();
        (await book.CheckAsync(form, 120, 1200, "Ada")).Words.ShouldContain("above the rim");
        (await book.FormAsync(form.Id))!.Checks.ShouldBeEmpty();
    }

    [Fact]
    public async Task Somebody_elses_newer_version_is_not_scaled_over()
    {
        var form = await KeptAsync();
        var theirs = (await book.FormAsync(form.Id))!;
        theirs.Notes = "leaks";
        await book.SaveAsync(theirs, "Bo");
        (await book.CheckAsync(form, 50, 515, "Ada")).Words.ShouldBe(Saved.SomeoneElse);
    }

    [Fact]
    public async Task New_measures_let_go_of_a_factor_found_against_the_old_ones()
    {
        var form = await KeptAsync();
        await book.CheckAsync(form, 100, 1030, "Ada");
        await book.ScaleAsync(form, "Ada");
        form.Dimensions["widthMm"] = 103;
        book.Look(form).CapacityMl!.Value.ShouldBe(1030, 1e-9); // the new width alone, no longer times 1.03
        await book.SaveAsync(form, "Ada");
        var kept = (await book.FormAsync(form.Id))!;
        (kept.VolumeFactor, kept.VolumeSpreadPercent, kept.Checks.Count).ShouldBe((1, null, 1));
        book.Water(kept).Sum!.Factor.ShouldBe(1, 1e-9);
    }

    [Fact]
    public async Task A_new_name_keeps_the_factor()
    {
        var form = await KeptAsync();
        await book.CheckAsync(form, 100, 1030, "Ada");
        await book.ScaleAsync(form, "Ada");
        form.Name = "Block";
        await book.SaveAsync(form, "Ada");
        (await book.FormAsync(form.Id))!.VolumeFactor.ShouldBe(1.03);
    }

    [Fact]
    public async Task Who_scaled_what_is_written_down()
    {
        var form = await KeptAsync();
        await book.CheckAsync(form, 100, 1030, "Ada");
        await book.ScaleAsync(form, "Bo");
        await using var db = database.Open();
        (await db.Set<AuditEntry>().OrderByDescending(a => a.Id).FirstAsync(TestContext.Current.CancellationToken)).ShouldSatisfyAllConditions(a => a.By.ShouldBe("Bo"), a => a.Changes.ShouldContain("VolumeFactor"));
    }

    private async Task<MouldForm> KeptAsync()
    {
        var id = (await book.SaveAsync(new() { Name = "Cube", Shape = "cuboid", Dimensions = new(StringComparer.Ordinal) { ["widthMm"] = 100, ["depthMm"] = 100, ["heightMm"] = 100 } }, "Ada")).Id;
        return (await book.FormAsync(id))!;
    }
}
