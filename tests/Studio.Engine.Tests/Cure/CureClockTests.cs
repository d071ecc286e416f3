using Studio.Engine.Cure;
using static Studio.Engine.Tests.Cure.Sheets;

namespace Studio.Engine.Tests.Cure;

public sealed class CureClockTests
{
    private const double Exact = 1e-9;

    [Fact]
    public void Room_at_the_sheets_temperature_gives_the_printed_hours()
    {
        var cure = RunFrom(10, Casting, [new(0, 23)]);
        All(cure).ShouldBe([12, 16, 34, 82, 34], Exact);
        cure.Findings.ShouldBeEmpty();
    }

    // rule of thumb: the rate doubles per 10 °C (18 °F), frets.com ShopTips/166; common practice, 1.5 to 2.5 in reality
    [Fact]
    public void Ten_degrees_colder_doubles_every_time()
    {
        var cure = Run(Casting, new RoomReading(0, 13));
        All(cure).ShouldBe([4, 12, 48, 144, 48], Exact);
    }

    // the same source's example is a pot life, 40 min at 25 °C and 20 min at 35 °C: seen here where nothing floors it, at the window's end
    [Fact]
    public void Ten_degrees_warmer_halves_what_the_printed_hours_do_not_floor()
    {
        var sheet = One(25, until: 40.0 / 60);
        Run(sheet, new RoomReading(0, 35)).NextPourUntil.AtHours!.Value.ShouldBe(20.0 / 60, Exact);
    }

    [Fact]
    public void Warm_room_never_shortens_the_printed_hours()
    {
        var cure = Run(Casting, new RoomReading(0, 30));
        Ready(cure).ShouldBe([2, 6, 24, 72], Exact);
        cure.Demould.FromPrintedHours.ShouldBeTrue();
    }

    // common practice, no source: issue 2 names both as facts of the trade
    [Theory]
    [InlineData(20)]
    [InlineData(22)]
    [InlineData(24)]
    public void Casting_layer_takes_its_next_pour_after_about_six_hours_and_a_deep_one_after_about_two_days(double roomC)
    {
        Run(Casting, new RoomReading(0, roomC)).NextPourFrom.AtHours!.Value.ShouldBeInRange(5, 8);
        Run(DeepPour, new RoomReading(0, roomC)).NextPourFrom.AtHours!.Value.ShouldBeInRange(40, 60);
    }

    // by hand: 12 h at 23 °C do half of 24 h; the other half at 13 °C takes 24 h more. The room changes within a second.
    [Fact]
    public void Room_that_turns_cold_half_way()
    {
        const double second = 1.0 / 3600;
        var cure = Run(Casting, new(0, 23), new(12, 23), new(12 + second, 13));
        cure.Demould.AtHours!.Value.ShouldBe(36, 2 * second);
    }

    // by hand: T = 13 + s·t, sheet at 23 °C: ∫ 2^((s·t − 10)/10) dt = (10/(s·ln 2))·(2^(s·t/10) − 1)/2 reaches H at
    // t = (10/s)·log2(1 + 2·H·s·ln 2/10); s = 1/4 and H = 48 give 40·log2(1 + 1.66355) = 56.534 h
    [Fact]
    public void Room_that_warms_evenly()
    {
        var byHand = 40 * Math.Log2(1 + (2.4 * Math.Log(2)));
        byHand.ShouldBe(56.534, 0.001);
        RoomReading[] ramp = [new(0, 13), new(80, 33)];
        Run(One(23, demould: 48), ramp).Demould.AtHours!.Value.ShouldBe(byHand, Exact);
        Run(One(23, until: 48), ramp).NextPourUntil.AtHours!.Value.ShouldBe(byHand, Exact);
    }

    [Fact]
    public void Two_printed_rows_are_joined_evenly_in_the_logarithm_of_the_hours()
    {
        var sheet = Two(20, 48, 30, 12);
        Run(sheet, new RoomReading(0, 25)).Demould.AtHours!.Value.ShouldBe(24, Exact); // √(48·12)
        Run(sheet, new RoomReading(0, 30)).Demould.AtHours!.Value.ShouldBe(12, Exact);
        Run(sheet, new RoomReading(0, 10)).Demould.AtHours!.Value.ShouldBe(96, Exact); // by the factor from the coldest row
        Run(sheet, new RoomReading(0, 40)).Demould.AtHours!.Value.ShouldBe(12, Exact); // the warmest row is the floor
    }

    [Fact]
    public void Sheet_that_says_warmer_takes_longer_is_read_the_careful_way()
    {
        var sheet = Two(20, 24, 30, 36);
        Run(sheet, new RoomReading(0, 20)).Demould.AtHours!.Value.ShouldBe(36, Exact);
        Run(sheet, new RoomReading(0, 10)).Demould.AtHours!.Value.ShouldBe(72, Exact);
        var closing = new CureSheet { Times = [.. sheet.Times.Select(t => new CureTimes { AtCelsius = t.AtCelsius, NextPourUntilHours = t.DemouldHours })] };
        Run(closing, new RoomReading(0, 30)).NextPourUntil.AtHours!.Value.ShouldBe(24, Exact);
    }

    [Fact]
    public void Heat_above_the_sheets_range_counts_for_nothing_and_is_said()
    {
        var sheet = Two(20, 48, 30, 12) with { MaxC = 25 };
        var cure = Run(sheet, new RoomReading(0, 35));
        cure.Demould.AtHours!.Value.ShouldBe(24, Exact);
        cure.Findings.ShouldContain(f => f.Code.StartsWith("outside-data-sheet") && f.Message.Contains("35 °C"));
    }

    [Fact]
    public void Cold_below_the_sheets_range_is_slower_and_keeps_no_window_open()
    {
        var cure = Run(Casting with { MinC = 18 }, new RoomReading(0, 13));
        cure.NextPourFrom.AtHours!.Value.ShouldBe(12, Exact);
        cure.NextPourUntil.AtHours!.Value.ShouldBe(24 * Math.Pow(2, 0.5), Exact); // as at 18 °C
        cure.Findings.ShouldContain(f => f.Code.StartsWith("outside-data-sheet") && f.Message.Contains("13 °C"));
    }

    [Theory]
    [InlineData(17.2, false)] // 2^0.58 = 1.495
    [InlineData(17.1, true)] // 2^0.59 = 1.505
    public void Cold_room_is_said_once_it_takes_half_as_long_again(double roomC, bool said) =>
        Run(Casting, new RoomReading(0, roomC)).Findings.Select(f => f.Code).Contains("cold-room").ShouldBe(said);

    [Fact]
    public void Window_that_closes_before_it_opens_closes_as_it_opens_and_is_doubted()
    {
        var cure = Run(One(23, from: 6, until: 8), new RoomReading(0, 33));
        cure.NextPourFrom.AtHours!.Value.ShouldBe(6, Exact);
        cure.NextPourUntil.AtHours!.Value.ShouldBe(6, Exact);
        cure.Findings.Single().Code.ShouldBe("window-uncertain");
    }

    [Fact]
    public void What_the_sheet_does_not_print_is_not_guessed()
    {
        var cure = Run(One(23, demould: 24), new RoomReading(0, 23));
        cure.Gel.ShouldBe(Milestone.Unknown("The data sheet prints no gel time."));
        cure.NextPourUntil.Reason!.ShouldContain("end of the next-pour window");
        cure.Demould.AtHours.ShouldNotBeNull();
    }

    [Fact]
    public void Without_a_reading_nothing_is_guessed()
    {
        var piece = CureClock.Run([new("1", Casting, 0)], [], 1000);
        piece.Demould.AtHours.ShouldBeNull();
        piece.Layers[0].Gel.Reason!.ShouldStartWith("No room temperature is logged");
    }

    [Theory]
    [InlineData(-273)]
    [InlineData(-30.5)]
    [InlineData(60.5)]
    [InlineData(85)] // power-on value of a common sensor, from memory
    public void Reading_no_workroom_has_is_left_out_and_named(double celsius)
    {
        var piece = CureClock.Run([new("1", Casting, 0)], [new(0, 23), new(5, celsius)], 1000);
        piece.Demould.AtHours!.Value.ShouldBe(24, Exact);
        var finding = piece.Findings.Single();
        (finding.Code, finding.Path).ShouldBe(("room-reading-implausible", "room[1]"));
    }

    [Theory]
    [InlineData(double.NaN, 20)]
    [InlineData(0, double.NaN)]
    [InlineData(double.PositiveInfinity, 20)]
    [InlineData(0, double.NegativeInfinity)]
    public void Reading_that_is_no_number_is_refused(double hours, double celsius) =>
        Should.Throw<ArgumentException>(() => CureClock.Run([new("1", Casting, 0)], [new(hours, celsius)], 10)).Message.ShouldContain("room[0]");

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Printed_hours_that_cannot_be_are_refused(double hours) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Run(One(23, gel: hours), new RoomReading(0, 23)));

    [Fact]
    public void Of_two_readings_at_one_moment_the_later_entry_counts() =>
        Run(Casting, new(0, 40), new(0, 13)).Demould.AtHours!.Value.ShouldBe(48, Exact);

    [Fact]
    public void Each_time_names_the_reading_it_rests_on()
    {
        var cure = Run(Casting, new(4, 23), new(8, 23));
        cure.Gel.RestsOn.ShouldBe(new(RestsOnKind.Assumed, 4, 23));
        cure.NextPourFrom.RestsOn.ShouldBe(new(RestsOnKind.Reading, 4, 23));
        cure.Demould.RestsOn.ShouldBe(new(RestsOnKind.Held, 8, 23));
        cure.Demould.RestsOn!.Sentence("14:10", "23 °C").ShouldBe("Holds if the room stays at its last reading, 23 °C at 14:10.");
    }

    [Fact]
    public void Piece_waits_for_its_slowest_layer()
    {
        var piece = CureClock.Run([new("photograph", DeepPour, 0), new("top", Casting, 50)], [new(0, 23)], 1000);
        piece.Demould.AtHours!.Value.ShouldBe(74, Exact);
        CureClock.Run([new("photograph", DeepPour, 0), new("top", One(23, gel: 2), 50)], [new(0, 23)], 1000)
            .Demould.ShouldBe(Milestone.Unknown("Layer top: The data sheet prints no demould time."));
        CureClock.Run([], [new(0, 23)], 1000).Demould.Reason.ShouldBe("Nothing has been poured yet.");
    }

    [Fact]
    public void Layer_logged_before_the_one_under_it_is_stopped()
    {
        var piece = CureClock.Run([new("a", Casting, 10), new("b", Casting, 9)], [new(0, 23)], 1000);
        var finding = piece.Layers[1].Findings.Single();
        (finding.Code, finding.Severity, finding.Path).ShouldBe(("poured-before-layer-below", Severity.Stop, "layers[1].pouredAtHours"));
    }

    [Theory]
    [InlineData(5.9, "poured-before-window")]
    [InlineData(6, null)]
    [InlineData(24, null)]
    [InlineData(24.1, "poured-after-window")]
    public void Layer_poured_outside_the_window_of_the_one_under_it_is_doubted(double pouredAt, string? code)
    {
        var piece = CureClock.Run([new("a", Casting, 0), new("b", Casting, pouredAt)], [new(0, 23)], 1000);
        piece.Layers[0].Findings.ShouldBeEmpty();
        piece.Layers[1].Findings.SingleOrDefault()?.Code.ShouldBe(code);
        piece.Layers[1].Findings.Count.ShouldBe(code is null ? 0 : 1);
    }

    [Fact]
    public void What_lies_beyond_the_time_asked_for_is_not_reached()
    {
        var layer = CureClock.Run([new("1", Casting, 0)], [new(0, 23)], 24).Layers[0];
        layer.Demould.AtHours!.Value.ShouldBe(24, Exact);
        layer.FullCure.Reason!.ShouldStartWith("Not reached");
    }

    private static CureSheet Two(double coldC, double coldHours, double warmC, double warmHours) => new()
    {
        Times = [new() { AtCelsius = warmC, DemouldHours = warmHours }, new() { AtCelsius = coldC, DemouldHours = coldHours }],
    };
}
