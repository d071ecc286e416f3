using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Resins;

namespace Studio.Tests.Resins;

public sealed class CureBookTests : IDisposable
{
    private readonly StudioDatabase database = new();
    private readonly ResinBook resins;
    private readonly CureBook cures;

    public CureBookTests() => (resins, cures) = (new(database.Factory, database.News, new Studio.Pieces.PieceUses()), new(database.Factory, database.Clock, database.News, new Studio.Calibration.LogPours()));

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task Nothing_is_taken_over_by_itself()
    {
        var id = await ResinAsync();
        await using var db = database.Open();
        var known = await KnownCures.OfAsync(db, id, "L1");
        known.State.ShouldNotBeNull();
        known.Accepted.ShouldBeFalse();
        known.RestsOn.ShouldContain("nobody has looked");
        (await cures.HistoryAsync(id)).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_fit_taken_over_counts_for_every_lot_without_one_of_its_own()
    {
        var id = await ResinAsync();
        (await cures.DecideSheetAsync(id, (await cures.KeptSheetAsync(id))!, accept: true, "Ada")).Words.ShouldBe("");
        await using var db = database.Open();
        var known = await KnownCures.OfAsync(db, id, "L1");
        known.Accepted.ShouldBeTrue();
        known.RestsOn.ShouldContain("Ada");
        var row = (await cures.HistoryAsync(id)).Single();
        row.InUse.ShouldBeTrue();
        row.EarlierSheet.ShouldBeFalse();
        row.Lines.Select(l => l.What).ShouldContain("Pot life of the cup");
    }

    [Fact]
    public async Task A_declined_fit_stays_in_the_history_and_is_not_used()
    {
        var id = await ResinAsync();
        await cures.DecideSheetAsync(id, (await cures.KeptSheetAsync(id))!, accept: false, "Ada");
        await using var db = database.Open();
        (await KnownCures.OfAsync(db, id, "")).Accepted.ShouldBeFalse();
        (await cures.HistoryAsync(id)).Single().Standing.ShouldBe(KnownCure.Declined);
    }

    [Fact]
    public async Task A_later_edit_of_the_sheet_marks_the_fit_and_changes_none_of_its_numbers()
    {
        var id = await ResinAsync();
        await cures.DecideSheetAsync(id, (await cures.KeptSheetAsync(id))!, accept: true, "Ada");
        var before = await StoredAsync();
        var form = (await resins.FormAsync(id))!;
        form.PotLifeMinutes = 90;
        await resins.SaveAsync(form, "Bo");
        (await cures.HistoryAsync(id)).Single().EarlierSheet.ShouldBeTrue();
        (await StoredAsync()).ShouldBe(before);
        await using var db = database.Open();
        (await KnownCures.OfAsync(db, id, "")).Accepted.ShouldBeTrue();
    }

    [Fact]
    public async Task A_sheet_changed_by_someone_else_meanwhile_is_not_taken_over()
    {
        var id = await ResinAsync();
        var fitted = (await cures.KeptSheetAsync(id))!;
        var form = (await resins.FormAsync(id))!;
        form.PotLifeMinutes = 90;
        await resins.SaveAsync(form, "Bo");
        (await cures.DecideSheetAsync(id, fitted, accept: true, "Ada")).Words.ShouldContain("Keep this sheet first");
        (await cures.HistoryAsync(id)).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_fit_can_be_let_go_of_and_taken_over_again()
    {
        var id = await ResinAsync();
        var row = (await cures.DecideSheetAsync(id, (await cures.KeptSheetAsync(id))!, accept: true, "Ada")).Id;
        var before = await StoredAsync();
        await cures.DecideAsync(row, accept: false, "Bo");
        var kept = (await cures.HistoryAsync(id)).Single();
        kept.InUse.ShouldBeFalse();
        kept.DecidedBy.ShouldBe("Bo");
        await cures.DecideAsync(row, accept: true, "Ada");
        (await cures.HistoryAsync(id)).Single().InUse.ShouldBeTrue();
        (await StoredAsync()).ShouldBe(before);
    }

    private async Task<int> ResinAsync() => (await resins.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;

    // what a fit said, as text: it must never change once it is kept
    private async Task<string> StoredAsync()
    {
        await using var db = database.Open();
        return JsonColumn.Write(await db.Set<KnownCure>().AsNoTracking().Select(k => new { k.State, k.Data, k.Findings, k.Sheet, k.At, k.By }).SingleAsync());
    }
}
