using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Engine.Time;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Tests.Bench;

namespace Studio.Tests.Clock;

/// <summary>
/// The earliest day of a piece as the studio's records have it. The scene's resin takes its next pour after 6 to 24 h, may be demoulded after 24 h and
/// is cured after 72 h at 23 °C; it is Monday 2 March 2026, 09:00, the maker works nine to five.
/// </summary>
public sealed class PieceTimeTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly PieceTimeBook book;
    private readonly SettingsBook settings;

    public PieceTimeTests()
    {
        scene = new(studio.Factory, studio.Clock);
        settings = new(studio.Factory, studio.News);
        book = new(studio.Factory, studio.Clock, settings, new Studio.Quotes.Promises());
    }

    public void Dispose() => studio.Dispose();

    // 25 minutes a pour: base 09:00 to 09:25; band 15:25 to 15:50; opens 21:50, so top Tuesday 09:00 to 09:25; demould a day later, full cure
    // Friday 09:25, and an hour of finishing; three days in hand: Monday 9 March
    [Fact]
    public async Task A_piece_that_is_only_drawn_is_reckoned_from_now_on()
    {
        await UsualAsync(23);
        var result = await OfAsync(await scene.PieceAsync());
        result.Layers.Select(l => Said(l.PourAt)).ShouldBe(["Mon 2 09:00", "Mon 2 15:25", "Tue 3 09:00"]);
        Said(result.DemouldAt).ShouldBe("Wed 4 09:25");
        Said(result.FinishedAt).ShouldBe("Fri 6 10:25");
        (result.EarliestOn, result.PromiseOn).ShouldBe((new DateOnly(2026, 3, 6), new DateOnly(2026, 3, 9)));
        result.RestsOn.ShouldBe("Reckoned with 23 °C, the room's usual temperature by the settings.");
    }

    [Fact]
    public async Task The_studios_own_hours_days_off_and_way_to_the_family_count()
    {
        await UsualAsync(23, s => (s.WorkDays, s.WorkFrom, s.WorkUntil, s.DaysOff, s.DeliveryDays, s.ReserveDays) = (["mon", "wed", "sat"], new(10, 0), new(12, 0), [new DateOnly(2026, 3, 4)], 4, 5), minutes: 120);
        var id = await scene.PieceAsync(layers: 1, neededBy: new DateOnly(2026, 3, 12));
        await scene.ChangeAsync<Commission>(_ => true, c => c.Handover = "delivery");
        // base Monday 10:00 to 10:25; demould Saturday, for Wednesday is off; cured long before; finished Saturday 11:15
        var result = await OfAsync(id);
        Said(result.DemouldAt).ShouldBe("Sat 7 10:00");
        Said(result.FinishedAt).ShouldBe("Sat 7 11:15");
        (result.EarliestOn, result.PromiseOn, result.DaysToSpare).ShouldBe((new DateOnly(2026, 3, 11), new DateOnly(2026, 3, 16), 1));
        result.Findings.Select(f => f.Code).ShouldContain("no-reserve");
        // collected, nothing is on the way
        await scene.ChangeAsync<Commission>(_ => true, c => c.Handover = "collection");
        (await OfAsync(id)).EarliestOn.ShouldBe(new DateOnly(2026, 3, 7));
    }

    [Fact]
    public async Task Without_a_usual_temperature_the_last_fourteen_days_of_its_place_count()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(22, scene.Now.AddDays(-13));
        await scene.ReadingAsync(24, scene.Now.AddDays(-1));
        await scene.ReadingAsync(5, scene.Now.AddDays(-15));
        await ReadAsync(40, "Attic");
        await ReadAsync(40, RoomBook.CastingRoom, doubt: "jump");
        await ReadAsync(40, RoomBook.CastingRoom, withdrawn: true);
        var result = await OfAsync(id);
        result.RestsOn.ShouldBe("Reckoned with 23 °C, the mean of the last 14 days of readings of Casting room.");
        Said(result.FinishedAt).ShouldBe("Fri 6 10:25");
        await scene.ChangeAsync<Piece>(_ => true, p => p.StandsIn = "Attic");
        (await OfAsync(id)).RestsOn.ShouldStartWith("Reckoned with 40 °C");
    }

    [Fact]
    public async Task A_room_that_nobody_read_gives_no_day_and_no_temperature_is_guessed()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(22, scene.Now.AddDays(-15));
        var result = await OfAsync(id);
        (result.EarliestOn, result.PromiseOn).ShouldBe((null, null));
        result.Layers[0].PouredAt.At.ShouldNotBeNull();
        result.RestsOn.ShouldBe("How warm Casting room usually is, is not known: it was not read in the last 14 days. Log its temperature, or type what is usual in the settings.");
        result.Findings.ShouldHaveSingleItem().Code.ShouldBe("not-known");
    }

    [Fact]
    public async Task The_day_that_was_promised_counts_before_the_one_they_asked_for()
    {
        await UsualAsync(23);
        var id = await scene.PieceAsync(neededBy: new DateOnly(2026, 3, 4));
        (await OfAsync(id)).DaysToSpare!.Value.ShouldBeLessThan(0);
        InTime.Of(await OfAsync(id), new DateOnly(2026, 3, 2)).Words.ShouldContain("after the day on which they need it");

        var commission = (await scene.FindAsync(id)).CommissionId;
        await using (var db = studio.Open())
        {
            db.Add(new Studio.Quotes.Quote { CommissionId = commission, PieceId = id, State = Studio.Quotes.QuoteState.Accepted, CreatedAt = db.Now, Form = new() { PromiseOn = new DateOnly(2026, 3, 27) } });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var result = await OfAsync(id);
        result.DaysToSpare!.Value.ShouldBeGreaterThan(7);
        result.RestsOn.ShouldStartWith("You promised it for 27 March; they asked for Wednesday.");
        InTime.Of(result, new DateOnly(2026, 3, 2)).Late.ShouldBeFalse();
    }

    [Fact]
    public async Task What_was_poured_counts_by_its_own_sheet_and_the_room_as_it_was()
    {
        await UsualAsync(23);
        var id = await scene.PieceAsync();
        // ten degrees colder since the pour: half as fast, so of 6 h only 3 h are done by 09:00 and 3 h are left
        await scene.ReadingAsync(13, scene.Now.AddHours(-6));
        await scene.ReadingAsync(13, scene.Now.AddMinutes(-1));
        await scene.PourAsync(id, 0, scene.Now.AddHours(-6));
        await scene.ChangeAsync<Resin>(_ => true, r => r.Times = [.. Scene.DeepPour.Times]);
        var result = await OfAsync(id);
        Said(result.Layers[0].PouredAt).ShouldBe("Mon 2 03:00");
        result.Layers[1].WindowFrom.At!.Value.ShouldBeInRange(new DateTime(2026, 3, 2, 11, 59, 0), new DateTime(2026, 3, 2, 12, 1, 0));
        // the second goes by the resin of today: next pour after 48 h
        (result.Layers[2].WindowFrom.At - result.Layers[1].PouredAt.At).ShouldBe(TimeSpan.FromHours(48));
        result.Steps[0].Done.ShouldBeTrue();
    }

    [Fact]
    public async Task Out_of_its_mould_and_finished_are_facts_and_home_has_no_answer()
    {
        await UsualAsync(23);
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23, scene.Now.AddDays(-9));
        await scene.PourAsync(id, 0, scene.Now.AddDays(-4));
        await scene.ChangeAsync<Piece>(_ => true, p => (p.Stage, p.DemouldedAt) = (Making.Demoulded, scene.Now.AddDays(-3).AddSeconds(-20)));
        var demoulded = await OfAsync(id);
        Said(demoulded.DemouldAt).ShouldBe("Fri 27 09:00");
        Said(demoulded.FinishedAt).ShouldBe("Mon 2 10:00");

        await scene.ChangeAsync<Piece>(_ => true, p => (p.Stage, p.FinishedAt) = (Making.Finished, scene.Now.AddDays(-1)));
        var finished = await OfAsync(id);
        Said(finished.FinishedAt).ShouldBe("Sun 1 09:00");
        finished.EarliestOn.ShouldBe(new DateOnly(2026, 3, 2));

        await scene.ChangeAsync<Piece>(_ => true, p => p.Stage = Making.Home);
        (await book.OfPieceAsync(id)).ShouldBeNull();
        (await book.OfPieceAsync(4711)).ShouldBeNull();
    }

    [Fact]
    public async Task Its_own_hand_work_is_what_finishes_it()
    {
        await UsualAsync(23);
        var id = await scene.PieceAsync(layers: 1);
        await scene.ChangeAsync<Piece>(_ => true, p => p.Tasks = [new("sand", 240), new("polish", 30)]);
        // cured Thursday 09:25: 240 minutes that day, 30 on Friday
        var result = await OfAsync(id);
        result.Steps.Where(s => s.What == TimeStep.Finish).Select(s => $"{s.Name} {Said(s.Until)}").ShouldBe(["sand Thu 5 13:25", "polish Fri 6 09:30"]);
    }

    [Fact]
    public async Task A_design_that_cannot_be_says_so_in_place_of_a_day()
    {
        await UsualAsync(23);
        var nothing = await scene.PieceAsync(layers: 0);
        (await OfAsync(nothing)).FinishedAt.Reason.ShouldBe("Its layers are not designed yet.");
        var gap = await scene.PieceAsync("gap");
        await scene.PourAsync(gap, 1, scene.Now.AddHours(-8));
        (await OfAsync(gap)).FinishedAt.Reason.ShouldBe("Layer 'heather band' is poured and 'clear base' under it is not. Give the time of that one too, or of neither.");
        await UsualAsync(23, minutes: 20);
        (await OfAsync(await scene.PieceAsync("short days"))).FinishedAt.Reason!.ShouldContain("must fit into the 20 minutes");
    }

    [Fact]
    public async Task A_slower_cure_holds_the_next_pours_whether_a_person_took_it_over_or_not_and_a_declined_one_does_not()
    {
        await UsualAsync(23);
        var id = await scene.PieceAsync();
        var before = await OfAsync(id);
        var resin = (await scene.AllAsync<Resin>()).Single().Id;
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Declined, slower: 8);
        (await OfAsync(id)).Layers.Select(l => l.PourAt).ShouldBe(before.Layers.Select(l => l.PourAt));
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Proposed, slower: 2);
        var proposed = (await OfAsync(id)).Layers[1].WindowFrom.At!.Value;
        proposed.ShouldBeGreaterThan(before.Layers[1].WindowFrom.At!.Value);
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Accepted, slower: 8);
        (await OfAsync(id)).Layers[1].WindowFrom.At!.Value.ShouldBeGreaterThan(proposed);
    }

    [Fact]
    public async Task Many_pieces_at_once_are_answered_as_each_alone()
    {
        await UsualAsync(null);
        await scene.ReadingAsync(21, scene.Now.AddDays(-2));
        int[] ids = [await scene.PieceAsync("a"), await scene.PieceAsync("b", layers: 4), await scene.PieceAsync("c", sheet: Scene.DeepPour)];
        await scene.PourAsync(ids[1], 0, scene.Now.AddHours(-20));
        var together = await book.OfPiecesAsync(ids);
        together.Keys.ShouldBe(ids, ignoreOrder: true);
        foreach (var id in ids)
        {
            var alone = await OfAsync(id);
            together[id].Steps.ShouldBe(alone.Steps);
            together[id].EarliestOn.ShouldBe(alone.EarliestOn);
        }

        (await book.OfPiecesAsync([])).ShouldBeEmpty();
    }

    // the zone's clock: 09:00 UTC on 2 March is 10:00 in Berlin
    [Fact]
    public async Task Hours_are_those_of_the_studios_own_clock()
    {
        await UsualAsync(23, s => s.TimeZone = "Europe/Berlin");
        Said((await OfAsync(await scene.PieceAsync())).Layers[0].PourAt).ShouldBe("Mon 2 10:00");
    }

    private static string? Said(Moment moment) => moment.At?.ToString("ddd d HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    private async Task<TimeResult> OfAsync(int id) => (await book.OfPieceAsync(id)).ShouldNotBeNull();

    private async Task UsualAsync(double? celsius, Action<StudioSettings>? more = null, int minutes = 240)
    {
        var own = await settings.ReadAsync();
        (own.UsualRoomC, own.WorkMinutesPerDay) = (celsius, minutes);
        more?.Invoke(own);
        var saved = await settings.SaveAsync(own, "Wren");
        saved.Ok.ShouldBeTrue(saved.Words);
    }

    private async Task ReadAsync(double celsius, string place, string doubt = "", bool withdrawn = false)
    {
        await using var db = studio.Open();
        db.Add(new Reading { At = scene.Now.AddHours(-1), Celsius = celsius, Place = place, Doubt = doubt, Withdrawn = withdrawn, By = "Wren" });
        await db.SaveChangesAsync();
    }
}
