using System.Diagnostics;
using Studio.Bench;
using Studio.Climate;
using Studio.Clock;
using Studio.Engine.Cure;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Shelf;
using Studio.Tests.Bench;

namespace Studio.Tests.Clock;

/// <summary>
/// The clock from kinetics and from the readings of the piece's own place. What the kinetics give is checked in the engine's tests (closed form, scipy,
/// a fine integration); here it is that the shelf and the bench say neither more nor less than the engine.
/// </summary>
public sealed class KineticClockTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook book;
    private readonly ClockBook clock;
    private readonly ShelfBook shelf;

    public KineticClockTests()
    {
        var settings = new SettingsBook(studio.Factory, studio.News);
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, settings, new(studio.Factory, studio.Clock));
        clock = new(studio.Factory, studio.Clock, studio.News, settings);
        shelf = new(studio.Factory, studio.Clock);
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task Only_a_fit_that_somebody_took_over_goes_with_a_pour_and_the_lots_own_first()
    {
        var id = await scene.PieceAsync(layers: 3);
        var resin = (await scene.AllAsync<Resin>()).Single().Id;
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Proposed, slower: 8);
        await PourAsync(id, "L1");
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Accepted, slower: 2);
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Accepted, slower: 3, lot: "L7");
        await PourAsync(id, "L1");
        await PourAsync(id, "L7");
        var pours = (await scene.AllAsync<Pour>()).OrderBy(p => p.LayerOrder).ToList();
        pours[0].Kinetics.ShouldBeNull();
        pours[1].Kinetics.ShouldBe(KnownCureScene.Slower(2).Best().Kinetics);
        pours[2].Kinetics.ShouldBe(KnownCureScene.Slower(3).Best().Kinetics);
    }

    [Fact]
    public async Task A_slow_fit_makes_the_clock_later_and_says_what_the_sheet_would_say_and_a_fast_one_never_makes_it_earlier()
    {
        var slow = Times(KnownCureScene.Slower(6).Best().Kinetics);
        var fast = Times(KnownCureScene.Slower(0.2).Best().Kinetics);
        var sheet = Times(null);
        slow.Layers[0].Gel.At!.Value.ShouldBeGreaterThan(sheet.Layers[0].Gel.At!.Value);
        slow.Layers[0].Gel.RestsOn.ShouldEndWith("The resin's fitted cure decides; its sheet alone would say today 11:00.");
        (fast.Layers[0].Gel.At, fast.Layers[0].From.At, fast.Demould.At, fast.FullCure.At).ShouldBe((sheet.Layers[0].Gel.At, sheet.Layers[0].From.At, sheet.Demould.At, sheet.FullCure.At));
        await Task.CompletedTask;

        PieceTimes Times(Kinetics? kinetics) => PieceClock.Of(
            new() { Stage = Making.Casting, Layers = [new(0, "base")], Pours = [new(1, 0, "base", scene.Now, Scene.Casting) { Kinetics = kinetics }], Room = new([new(scene.Now, 23)]) }, scene.Now, TimeZoneInfo.Utc);
    }

    // decision 022: what would shorten waits for a person, what makes a gel later does not, nor for the next pour
    [Theory]
    [InlineData(KnownCure.Accepted, 1.4)]
    [InlineData(KnownCure.Proposed, 1.4)]
    [InlineData(KnownCure.Proposed, 10)]
    public async Task A_slower_fit_makes_the_gel_of_an_earlier_pour_later_taken_over_or_not_and_what_must_not_come_before_it(string standing, double slower)
    {
        var (before, after) = await AroundAsync(standing, slower);
        var gel = after.Layers[0].Gel.At!.Value;
        (after.Demould.At, after.FullCure.At).ShouldBe((Later(before.Demould), Later(before.FullCure)));
        after.Layers[0].Gel.At!.Value.ShouldBeGreaterThan(before.Layers[0].Gel.At!.Value.AddHours(6));
        after.Layers[0].From.At!.Value.ShouldBeGreaterThanOrEqualTo(after.Layers[0].Gel.At!.Value);
        after.Layers[0].Gel.RestsOn.ShouldContain("The slowest that this resin may be");

        DateTime? Later(ClockTime time) => time.At > gel ? time.At : gel;
    }

    [Theory]
    [InlineData(KnownCure.Accepted, 0.1)]
    [InlineData(KnownCure.Proposed, 0.1)]
    [InlineData(KnownCure.Declined, 10)]
    public async Task A_quicker_fit_and_one_that_was_declined_move_no_clock_of_an_earlier_pour(string standing, double slower)
    {
        var (before, after) = await AroundAsync(standing, slower);
        (after.Demould.At, after.FullCure.At, after.Layers[0].Gel.At, after.Layers[0].From.At).ShouldBe((before.Demould.At, before.FullCure.At, before.Layers[0].Gel.At, before.Layers[0].From.At));
    }

    // one layer poured, and what its clock says before and after a fit of its resin comes
    private async Task<(PieceTimes Before, PieceTimes After)> AroundAsync(string standing, double slower)
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        await PourAsync(id, "L1");
        var before = (await clock.OfPieceAsync(id))!;
        await KnownCureScene.AddAsync(studio, (await scene.AllAsync<Resin>()).Single().Id, standing, slower);
        return (before, (await clock.OfPieceAsync(id))!);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(4.0)]
    public async Task A_night_that_cools_moves_the_demoulding_later_by_what_the_engine_says(double? slower)
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        if (slower is { } times)
        {
            await KnownCureScene.AddAsync(studio, (await scene.AllAsync<Resin>()).Single().Id, KnownCure.Accepted, times);
        }

        await PourAsync(id, "");
        var pour = (await scene.AllAsync<Pour>()).Single();
        var start = pour.StartedAt;
        var warm = await DemouldAsync();
        warm.ShouldBe(Engine([new(0, 23)]));

        // a sensor's night: half a kelvin less every half hour
        var readings = new List<RoomReading> { new(0, 23) };
        for (var i = 1; i <= 20; i++)
        {
            studio.Clock.Advance(TimeSpan.FromMinutes(30));
            await scene.ReadingAsync(23 - (i * 0.5));
            readings.Add(new((scene.Now - start).TotalHours, 23 - (i * 0.5)));
        }

        var cold = await DemouldAsync();
        cold.ShouldBe(Engine(readings));
        cold.ShouldBeGreaterThan(warm.AddHours(4));
        (await shelf.ReadAsync(TimeZoneInfo.Utc)).Pieces.Single().Next.From.ShouldBe(cold);

        async Task<DateTime> DemouldAsync() => (await clock.OfPieceAsync(id))!.Demould.At!.Value;

        DateTime Engine(List<RoomReading> room)
        {
            var told = CureClock.Run([new("base", pour.Sheet, 0) { Kinetics = pour.Kinetics, Likely = slower is { } by ? KnownCures.Likely(KnownCureScene.Slower(by)) : null, Heat = LotCures.Heat(pour.Foretold) }], room, double.PositiveInfinity).Demould.AtHours!.Value;
            return CureRounding.UpToMinute(start.AddTicks((long)Math.Ceiling(told * TimeSpan.TicksPerHour)));
        }
    }

    [Fact]
    public async Task A_piece_goes_by_its_own_place_and_says_where_another_stands_in_for_it()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => p.StandsIn = "Attic");
        var stood = (await clock.OfPieceAsync(id))!;
        stood.Findings.ShouldContain(f => f.Code == "room-of-another-place" && f.Message.StartsWith("Attic was never read"));
        stood.Demould.At.ShouldBe(scene.Now.AddHours(24));

        await ReadAsync("Attic", 17);
        var own = (await clock.OfPieceAsync(id))!;
        own.Findings.ShouldNotContain(f => f.Code == "room-of-another-place");
        own.Demould.At!.Value.ShouldBeGreaterThan(scene.Now.AddHours(36)); // 24 h × 2^0.6 = 36.4 h: rate × 2 per 10 °C, common practice
        (await shelf.ReadAsync(TimeZoneInfo.Utc)).Pieces.Single().Next.From.ShouldBe(own.Demould.At);
    }

    [Fact]
    public async Task A_doubted_reading_a_probes_and_one_taken_back_make_nothing_earlier()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(17);
        await scene.PourAsync(id, 0, scene.Now);
        var before = (await clock.OfPieceAsync(id))!.Demould;
        studio.Clock.Advance(TimeSpan.FromHours(1));
        await ReadAsync(RoomBook.CastingRoom, 40, doubt: "spike");
        await ReadAsync(RoomBook.CastingRoom, 40, withdrawn: true);
        await ReadAsync("", 60); // a thermometer that lies in a layer
        (await clock.OfPieceAsync(id))!.Demould.ShouldBe(before);
    }

    [Fact]
    public async Task A_dead_sensor_is_said_and_its_last_reading_held()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(17);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(13));
        (await clock.OfPieceAsync(id))!.Findings.ShouldContain(f => f.Code == "room-stale");
    }

    [Fact]
    public async Task A_sensor_of_every_minute_for_ten_weeks_keeps_the_shelf_quick()
    {
        const int many = 100_000;
        var id = await scene.PieceAsync(layers: 1);
        var start = scene.Now.AddMinutes(-many);
        await using (var db = studio.Open())
        {
            db.ChangeTracker.AutoDetectChangesEnabled = false;
            for (var i = 0; i < many; i++)
            {
                db.Add(new Reading { At = start.AddMinutes(i), Celsius = 19 + (2 * Math.Sin(i / 229.0)), Place = RoomBook.CastingRoom, By = "Sensor" });
            }

            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await scene.PourAsync(id, 0, start.AddMinutes(5));
        await shelf.ReadAsync(TimeZoneInfo.Utc);
        var watch = Stopwatch.StartNew();
        var view = await shelf.ReadAsync(TimeZoneInfo.Utc);
        watch.Stop();
        view.Pieces.Single().Next.Kind.ShouldBe(ActKind.Demould);
        TestContext.Current.TestOutputHelper!.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalMilliseconds:0} ms"));
        watch.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(3)); // on a busy machine; the benchmark measures
    }

    [Fact]
    public async Task A_cold_room_that_stops_the_cure_is_said_with_the_warmth_that_would_finish_it()
    {
        var kinetics = KnownCureScene.Slower(1).Best().Kinetics;
        var times = PieceClock.Of(
            new() { Stage = Making.Casting, Layers = [new(0, "base")], Pours = [new(1, 0, "base", scene.Now, Scene.Casting) { Kinetics = kinetics }], Room = new([new(scene.Now, -15)]) }, scene.Now, TimeZoneInfo.Utc);
        times.Findings.ShouldContain(f => f.Code == "cure-stops-short");
        await Task.CompletedTask;
    }

    private async Task PourAsync(int id, string lot)
    {
        var layer = (await book.ReadAsync(id))!.ToPour!;
        var saved = await book.PourAsync(new() { PieceId = id, LayerId = layer.LayerId, Lot = lot, Why = "In a test.", Tally = [new(1, "A", layer.Plan!.PartAG), new(1, "B", layer.Plan.PartBG)] }, "Maker");
        saved.Words.ShouldBe("");
        studio.Clock.Advance(TimeSpan.FromMinutes(2));
    }

    private async Task ReadAsync(string place, double celsius, string doubt = "", bool withdrawn = false)
    {
        await using var db = studio.Open();
        db.Add(new Reading { At = scene.Now, Celsius = celsius, Place = place, By = "Sensor", Doubt = doubt, Withdrawn = withdrawn });
        await db.SaveChangesAsync();
    }
}
