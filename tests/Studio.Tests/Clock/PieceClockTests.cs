using CsCheck;
using Microsoft.Extensions.Time.Testing;
using Studio.Climate;
using Studio.Clock;
using Studio.Engine.Cure;
using Studio.Pieces;
using Studio.Tests.Bench;

namespace Studio.Tests.Clock;

/// <summary>
/// Hours are those of the invented sheets in <see cref="Scene"/>. Colder rooms: rate × 2 per 10 °C, frets.com ShopTips/166 (common practice, 1.5 to 2.5);
/// at 17 °C against 23 °C that is × 2^0.6 = 1.515717 by hand.
/// </summary>
public sealed class PieceClockTests
{
    private static readonly DateTime Nine = new(2026, 3, 2, 9, 0, 0, DateTimeKind.Utc);
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");
    private readonly FakeTimeProvider clock = new(new DateTimeOffset(Nine));

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    [Fact]
    public void Without_a_pour_it_asks_for_the_first_layer_at_any_time()
    {
        var next = Of(Piece()).Next;
        next.Kind.ShouldBe(ActKind.PourFirst);
        next.LayerName.ShouldBe("base");
        next.Words.ShouldBe("Pour the first layer, base, when you are ready.");
        next.Urgency.ShouldBe(Urgency.Whenever);
    }

    [Fact]
    public void The_window_opens_and_closes_at_the_printed_hours_in_a_room_as_warm_as_the_sheets()
    {
        var input = Piece(room: 23, pours: [(0, Nine, Scene.Casting)]);
        var next = Of(input).Next;
        next.Kind.ShouldBe(ActKind.WaitForWindow);
        next.Words.ShouldBe("Next pour from 15:00, window closes tomorrow 09:00.");
        next.RestsOn.ShouldBe("Rests on the reading 23 °C of today 09:00, held since. The data sheet's printed hours decide.");

        At(Nine.AddHours(6).AddSeconds(-1));
        Of(input).Next.Kind.ShouldBe(ActKind.WaitForWindow);
        At(Nine.AddHours(6));
        Of(input).Next.Kind.ShouldBe(ActKind.PourNext);
        Of(input).Next.LayerName.ShouldBe("band");
        At(Nine.AddHours(24).AddSeconds(-1));
        Of(input).Next.Kind.ShouldBe(ActKind.PourNext);
        At(Nine.AddHours(24));
        Of(input).Next.Kind.ShouldBe(ActKind.WindowClosed);
        Of(input).Next.Words.ShouldBe("The window closed at 09:00: abrade and clean before the next pour, as its data sheet says.");
        Of(input).Next.Since.ShouldBe(Nine.AddHours(24));
    }

    [Fact]
    public void A_cold_room_lengthens_every_time_and_rounds_ready_up_and_closing_down()
    {
        var layer = Of(Piece(room: 17, pours: [(0, Nine, Scene.Casting)])).Layers[0];

        // 6 h × 1.515717 = 9 h 05 min 39 s; 24 h × 1.515717 = 36 h 22 min 38 s
        layer.From.At.ShouldBe(new DateTime(2026, 3, 2, 18, 6, 0, DateTimeKind.Utc));
        layer.Until.At.ShouldBe(new DateTime(2026, 3, 3, 21, 22, 0, DateTimeKind.Utc));
        layer.Demould.At.ShouldBe(new DateTime(2026, 3, 3, 21, 23, 0, DateTimeKind.Utc));
    }

    [Fact]
    public void A_warm_room_is_never_ready_before_the_printed_hours()
    {
        var layer = Of(Piece(room: 29, pours: [(0, Nine, Scene.Casting)])).Layers[0];
        layer.From.At.ShouldBe(Nine.AddHours(6));
        layer.Demould.At.ShouldBe(Nine.AddHours(24));
    }

    [Fact]
    public void Nothing_is_ever_called_ready_before_the_engine_says_so()
    {
        Gen.Select(Gen.Int[0, 3599], Gen.Double[8, 29], Gen.Double[8, 29], Gen.Int[10, 4000]).Sample((second, warm, later, minutes) =>
        {
            var start = Nine.AddSeconds(second);
            var room = new[] { new PlaceReading(start, warm), new PlaceReading(start.AddMinutes(minutes), later) };
            var far = start.AddDays(30);
            var times = PieceClock.Of(Piece(pours: [(0, start, Scene.Casting)]) with { Room = new(room) }, far, London).Layers[0];
            var engine = CureClock.Run([new("base", Scene.Casting, 0)], [new(0, warm), new(minutes / 60.0, later)], double.PositiveInfinity).Layers[0];
            Late(times.From.At!.Value, start, engine.NextPourFrom);
            Late(times.Demould.At!.Value, start, engine.Demould);
            Late(times.FullCure.At!.Value, start, engine.FullCure);
            (times.Until.At!.Value - start).TotalHours.ShouldBeInRange(engine.NextPourUntil.AtHours!.Value - (1.0 / 60) - 1e-9, engine.NextPourUntil.AtHours.Value + 1e-9);
        });

        static void Late(DateTime said, DateTime start, Milestone milestone) =>
            (said - start).TotalHours.ShouldBeInRange(milestone.AtHours!.Value - 1e-9, milestone.AtHours.Value + (1.0 / 60));
    }

    [Fact]
    public void Demould_waits_for_the_slowest_layer_even_when_it_was_poured_first()
    {
        At(Nine.AddHours(60));
        var input = Piece(room: 23, pours: [(0, Nine, Scene.DeepPour), (1, Nine.AddHours(48), Scene.Casting)]) with { Layers = [new(0, "base"), new(1, "band")] };
        Of(input).Demould.At.ShouldBe(Nine.AddHours(72));
        At(Nine.AddHours(72).AddMinutes(-1));
        Of(input).Next.Kind.ShouldBe(ActKind.WaitDemould);
        Of(input).Next.Words.ShouldBe("Demould at 09:00.");
        At(Nine.AddHours(72));
        Of(input).Next.Kind.ShouldBe(ActKind.Demould);
        Of(input).Next.Words.ShouldBe("Ready to demould since 09:00.");
    }

    [Fact]
    public void With_a_layer_still_to_pour_it_never_speaks_of_the_mould()
    {
        At(Nine.AddHours(300));
        Of(Piece(room: 23, pours: [(0, Nine, Scene.Casting), (1, Nine.AddHours(6), Scene.Casting)])).Next.Kind.ShouldBe(ActKind.WindowClosed);
    }

    [Theory]
    [InlineData(1, "Not before the last layer is poured: 2 of 3 are still to pour.")]
    [InlineData(2, "Not before the last layer is poured: 1 of 3 is still to pour.")]
    public void With_a_layer_still_to_pour_the_piece_has_no_day(int poured, string why)
    {
        var pours = new (int, DateTime, CureSheet)[] { (0, Nine, Scene.Casting), (1, Nine.AddHours(6), Scene.Casting) };
        At(Nine.AddHours(7));
        var times = Of(Piece(room: 23, pours: pours[..poured]));
        (times.Demould.At, times.Demould.RestsOn).ShouldBe((null, why));
        (times.FullCure.At, times.FullCure.RestsOn).ShouldBe((null, why));
    }

    // what came out with a layer less has the layers that it has
    [Fact]
    public void Out_of_its_mould_it_cures_by_the_layers_that_it_has()
    {
        var input = Piece(room: 23, pours: [(0, Nine, Scene.Casting)]) with { Stage = Making.Demoulded };
        Of(input).FullCure.At.ShouldBe(Nine.AddHours(72));
    }

    [Fact]
    public void Once_the_printed_hours_are_over_in_a_cold_room_it_forbids_the_mould_in_plain_words()
    {
        var input = Piece(room: 17, pours: [(0, Nine, Scene.Casting)]) with { Layers = [new(0, "base")] };
        At(Nine.AddHours(20));
        Of(input).Next.Words.ShouldBe("Demould at 21:23.");
        At(Nine.AddHours(24));
        Of(input).Next.Words.ShouldBe("Do not demould yet: at 17 °C it needs until 21:23.");
    }

    [Fact]
    public void Without_a_reading_it_asks_for_one_and_guesses_nothing()
    {
        var times = Of(Piece(pours: [(0, Nine, Scene.Casting)]));
        times.Next.Kind.ShouldBe(ActKind.WaitReading);
        times.Next.Urgency.ShouldBe(Urgency.Now);
        times.Layers[0].From.At.ShouldBeNull();
    }

    [Fact]
    public void A_sheet_that_prints_no_window_is_left_to_its_own_words()
    {
        At(Nine.AddHours(30));
        var silent = Scene.Sheet(gel: 2, demould: 24, full: 72);
        Of(Piece(room: 23, pours: [(0, Nine, silent)])).Next.Kind.ShouldBe(ActKind.AskSheet);
    }

    [Fact]
    public void A_reading_older_than_twelve_hours_is_named_while_something_cures()
    {
        var input = Piece(room: 20, pours: [(0, Nine, Scene.Casting)]);
        At(Nine.AddHours(12));
        Of(input).Findings.ShouldNotContain(f => f.Code == "room-stale");
        At(Nine.AddHours(12).AddMinutes(1));
        Of(input).Findings.ShouldContain(f => f.Code == "room-stale" && f.Message.Contains("20 °C", StringComparison.Ordinal));
        At(Nine.AddDays(9));
        Of(input).Findings.ShouldNotContain(f => f.Code == "room-stale");
    }

    [Fact]
    public void A_reading_from_the_future_counts_only_when_its_time_has_come()
    {
        var input = Piece(pours: [(0, Nine, Scene.Casting)]) with { Room = new([new(Nine, 23), new(Nine.AddHours(2), 17)]) };
        Of(input).Layers[0].From.At.ShouldBe(Nine.AddHours(6));
        At(Nine.AddHours(2));
        Of(input).Layers[0].From.At!.Value.ShouldBeGreaterThan(Nine.AddHours(6));
    }

    [Fact]
    public void Within_the_last_hour_the_window_is_closing()
    {
        var input = Piece(room: 23, pours: [(0, Nine, Scene.Casting)]);
        At(Nine.AddHours(23).AddMinutes(-1));
        Of(input).Next.Urgency.ShouldBe(Urgency.Now);
        At(Nine.AddHours(23));
        Of(input).Next.Urgency.ShouldBe(Urgency.Closing);
        Of(input).Next.Words.ShouldBe("Pour band now: the window closes 09:00.");
    }

    [Fact]
    public void Out_of_the_mould_it_cures_fully_before_it_is_finished()
    {
        var input = Piece(room: 23, pours: [(0, Nine, Scene.Casting)]) with { Layers = [new(0, "base")], Stage = Making.Demoulded, DemouldedAt = Nine.AddHours(25) };
        At(Nine.AddHours(26));
        Of(input).Next.Kind.ShouldBe(ActKind.WaitFullCure);
        At(Nine.AddHours(72));
        Of(input).Next.Kind.ShouldBe(ActKind.Finish);
        Of(input with { Stage = Making.Finished }).Next.Kind.ShouldBe(ActKind.Done);
    }

    [Fact]
    public void Times_are_said_by_the_studios_own_clock()
    {
        var june = new DateTime(2026, 6, 1, 7, 0, 0, DateTimeKind.Utc);
        At(june);
        var input = Piece(pours: [(0, june, Scene.Casting)]) with { Room = new([new(june, 23)]) };

        // summer time in London is one hour ahead of UTC
        PieceClock.Of(input, Now, London).Next.Words.ShouldBe("Next pour from 14:00, window closes tomorrow 08:00.");
    }

    private void At(DateTime utc) => clock.SetUtcNow(new DateTimeOffset(utc));

    private PieceTimes Of(ClockInput input) => PieceClock.Of(input, Now, London);

    private static ClockInput Piece(double? room = null, (int Order, DateTime At, CureSheet Sheet)[]? pours = null) => new()
    {
        Stage = pours is null ? Making.Drawn : Making.Casting,
        Layers = [new(0, "base"), new(1, "band"), new(2, "top")],
        Pours = [.. (pours ?? []).Select(p => new ClockPour(p.Order + 1, p.Order, p.Order == 0 ? "base" : p.Order == 1 ? "band" : "top", p.At, p.Sheet))],
        Room = new(room is { } c ? [new PlaceReading(Nine, c)] : []),
    };
}
