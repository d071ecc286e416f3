using Studio.Calibration;
using Studio.Clock;
using Studio.Engine.Fit;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Tests.Bench;

namespace Studio.Tests.Calibration;

public sealed class CuringBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly CuringBook book;

    public CuringBookTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News));
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_log_teaches_nothing_until_it_is_taken_over_and_then_its_own_lot_alone()
    {
        var pour = await LoggedAsync();
        var refit = await book.RefitAsync(pour.Id, Stop);
        refit.Refused.ShouldBeEmpty();
        refit.Refit.ShouldNotBeNull().Series.Count.ShouldBeGreaterThan(5);
        (await scene.AllAsync<KnownCure>()).ShouldBeEmpty("working it out changes nothing");

        (await book.DecideAsync(refit, accept: true, "Wren")).Ok.ShouldBeTrue();
        var row = (await scene.AllAsync<KnownCure>()).ShouldHaveSingleItem();
        (row.Lot, row.Standing, row.DecidedBy).ShouldBe(("L7", KnownCure.Accepted, "Wren"));
        await using var db = studio.Open();
        (await KnownCures.AcceptedAsync(db, pour.ResinId, "L7")).ShouldNotBeNull().Id.ShouldBe(row.Id);
        (await KnownCures.AcceptedAsync(db, pour.ResinId, "L8")).ShouldBeNull();
        var after = (await scene.AllAsync<Pour>()).ShouldHaveSingleItem();
        after.Kinetics.ShouldBeNull("an old pour's clock stays as it was");
        after.Version.ShouldBe(pour.Version);
    }

    [Fact]
    public async Task What_is_left_aside_is_kept_and_not_gone_by()
    {
        var pour = await LoggedAsync();
        await book.DecideAsync(await book.RefitAsync(pour.Id, Stop), accept: false, "Wren");
        (await scene.AllAsync<KnownCure>()).ShouldHaveSingleItem().Standing.ShouldBe(KnownCure.Declined);
        await using var db = studio.Open();
        (await KnownCures.AcceptedAsync(db, pour.ResinId, "L7")).ShouldBeNull();
    }

    [Fact]
    public async Task A_refit_of_a_log_that_was_changed_since_is_not_taken_over()
    {
        var pour = await LoggedAsync();
        var refit = await book.RefitAsync(pour.Id, Stop);
        var form = (await book.ReadAsync(pour.Id))!.Form;
        form.Take([new(0.25, 22)]);
        (await book.SaveAsync(form, "Wren")).Ok.ShouldBeTrue();
        (await book.DecideAsync(refit, accept: true, "Wren")).Ok.ShouldBeFalse();
        (await scene.AllAsync<KnownCure>()).ShouldBeEmpty();
    }

    // a round body in the mould's place is warmer than the mould: the resin would be taken for a slower one
    [Fact]
    public async Task A_log_in_a_mould_of_which_only_the_areas_are_known_teaches_nothing_and_says_why()
    {
        var pour = await LoggedAsync();
        await scene.ChangeAsync<Studio.Moulds.Mould>(_ => true, m => (m.Shape, m.Readings) = ("measured", [new(0, 0), new(60, 600)]));
        var refit = await book.RefitAsync(pour.Id, Stop);
        refit.Refit.ShouldBeNull();
        refit.Refused.ShouldHaveSingleItem().ShouldContain("the resin would be blamed for the difference");
    }

    // an invented layer of 10 mm that warmed by seven kelvin in three hours
    private async Task<Pour> LoggedAsync()
    {
        var id = await scene.PieceAsync(shape: "cuboid", sizeMm: 100, layers: 1);
        await scene.ChangeAsync<Resin>(_ => true, r => (r.Class, r.PotLifeMinutes, r.PotLifeMassG, r.PotLifeAtC, r.MaxPourMm) = ("casting", 40, 100, 23, 15));
        await scene.ChangeAsync<PieceLayer>(_ => true, l => l.ToMm = 10);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        await scene.ChangeAsync<Pour>(_ => true, p => (p.ResinLot, p.FromMm, p.ToMm) = ("L7", 0, 10));
        var pour = (await scene.AllAsync<Pour>()).Single();
        var form = new LogForm { PourId = pour.Id, Place = LogPlace.Hottest };
        form.Take([.. Enumerable.Range(0, 30).Select(i => new LogReading(i / 4.0, 23 + (7 * Math.Exp(-Math.Pow(((i / 4.0) - 3) / 1.8, 2)))))]);
        (await book.SaveAsync(form, "Wren")).Ok.ShouldBeTrue();
        return pour;
    }
}
