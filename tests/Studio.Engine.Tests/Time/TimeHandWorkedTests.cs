using Studio.Engine.Time;

namespace Studio.Engine.Tests.Time;

/// <summary>Plans reckoned by hand, the reckoning beside each. 2 March 2026 is a Monday.</summary>
public sealed class TimeHandWorkedTests
{
    // ground 09:00 to 09:30; its window opens 6 h later, 15:30; top 15:30 to 16:00; demould 24 h after that, Tuesday 16:00;
    // full cure 72 h after it, Thursday 16:00; an hour of polish ends with the working day
    [Fact]
    public void Two_layers_in_a_room_as_warm_as_the_sheet()
    {
        var result = Plans.Run(Plans.Two);
        Said(result.Layers[0].PourAt).ShouldBe("Mon 2 09:00");
        Said(result.Layers[0].PouredAt).ShouldBe("Mon 2 09:30");
        Said(result.Layers[1].WindowFrom).ShouldBe("Mon 2 15:30");
        Said(result.Layers[1].WindowUntil).ShouldBe("Tue 3 09:30");
        Said(result.Layers[1].PourAt).ShouldBe("Mon 2 15:30");
        Said(result.DemouldAt).ShouldBe("Tue 3 16:00");
        Said(result.FullCureAt).ShouldBe("Thu 5 16:00");
        Said(result.FinishedAt).ShouldBe("Thu 5 17:00");
        result.EarliestOn.ShouldBe(new DateOnly(2026, 3, 5));
        result.Layers[0].WindowFrom.Reason.ShouldBe("It is the first pour: nothing lies under it.");
        result.Findings.ShouldBeEmpty();
    }

    // 10 K below the sheet everything takes twice as long: opens 21:30, so Tuesday 09:00; closes 48 h after 09:30, Wednesday; demould 48 h after
    // Tuesday 09:30; full cure 144 h after it, Monday 9 March 09:30
    [Fact]
    public void Ten_degrees_colder_takes_twice_as_long()
    {
        var result = Plans.Run(Plans.Two with { Room = [new(0, 13)] });
        Said(result.Layers[1].WindowFrom).ShouldBe("Mon 2 21:30");
        Said(result.Layers[1].WindowUntil).ShouldBe("Wed 4 09:30");
        Said(result.Layers[1].PourAt).ShouldBe("Tue 3 09:00");
        Said(result.DemouldAt).ShouldBe("Thu 5 09:30");
        Said(result.FinishedAt).ShouldBe("Mon 9 10:30");
        result.Findings.ShouldAllBe(f => f.Code == "cold-room");
    }

    // poured Friday 11:30, opens 17:30 when nobody is there, closes Saturday 11:30: on Monday 15 minutes more, 09:00 to 09:45
    [Fact]
    public void A_window_that_closes_over_the_weekend_costs_the_abrading()
    {
        var result = Plans.Run(Plans.Two with { Start = Plans.Monday.AddDays(4).AddHours(2) });
        (Said(result.Layers[1].PourAt), Said(result.Layers[1].PouredAt)).ShouldBe(("Mon 9 09:00", "Mon 9 09:45"));
        result.Layers[1].MissesWindow.ShouldBe(true);
        result.Steps[1].HandsMinutes.ShouldBe(45);
        var missed = result.Findings.ShouldHaveSingleItem();
        (missed.Code, missed.Severity, missed.Path).ShouldBe(("window-missed", Severity.Warn, "layers[1]"));
        missed.Message.ShouldBe("Hands have layer top in the mould on Monday 9 March 2026, 09:45 at the earliest, and the window of layer ground closes on Saturday 7 March 2026, 11:30. 15 minutes are added to abrade and clean it first; pouring ground at another hour may save them.");
    }

    // 50 minutes a day: ground takes 30, so top waits for Tuesday and is in the mould at 09:30, as the window closes; with the demoulding and the
    // polish in the same way: demould Wednesday 09:30; full cure Friday 09:30; 50 of 60 minutes on Friday, 10 on Monday
    [Fact]
    public void A_day_gives_no_more_than_its_minutes()
    {
        var result = Plans.Run(Plans.Two with { Work = Plans.Usual with { MinutesPerDay = 50 } });
        Said(result.Layers[1].PouredAt).ShouldBe("Tue 3 09:30");
        result.Layers[1].MissesWindow.ShouldBe(false);
        Said(result.DemouldAt).ShouldBe("Wed 4 09:30");
        Said(result.FinishedAt).ShouldBe("Mon 9 09:10");
    }

    // full cure Thursday 16:00: 60 minutes that day, 240 on Friday, 200 on Monday from 09:00
    [Fact]
    public void Long_work_goes_on_the_next_working_day() =>
        Said(Plans.Run(Plans.Two with { Finishing = [new("polish", 500)] }).FinishedAt).ShouldBe("Mon 9 12:20");

    [Fact]
    public void Work_that_need_not_wait_for_full_cure_begins_out_of_the_mould()
    {
        // out of the mould Tuesday 16:15; 45 minutes that day, 15 on Wednesday; full cure Thursday 16:00 ends it all
        var result = Plans.Run(Plans.Two with { Finishing = [new("trim", 60, AfterFullCure: false)] });
        Said(result.Steps[^2].Until).ShouldBe("Wed 4 09:15");
        Said(result.FinishedAt).ShouldBe("Thu 5 16:00");
    }

    // the hands do the second thing after the first, 10 + 20 minutes; a week from 09:30 is Monday 9 March 09:30
    [Fact]
    public void The_first_pour_waits_for_the_slowest_preparation()
    {
        var result = Plans.Run(Plans.Two with { Preparation = [new("box", 0, 10), new("heather in silica gel", 7, 20)] });
        Said(result.PreparedAt).ShouldBe("Mon 9 09:30");
        Said(result.Layers[0].PourAt).ShouldBe("Mon 9 09:30");
    }

    [Fact]
    public void A_preparation_for_the_second_layer_holds_only_that_one()
    {
        var result = Plans.Run(Plans.Two with { Preparation = [new("heather in silica gel", 0.5, ForLayer: 2)] });
        Said(result.Layers[0].PourAt).ShouldBe("Mon 2 09:00");
        Said(result.PreparedAt).ShouldBe("Mon 2 21:00");
        Said(result.Layers[1].PourAt).ShouldBe("Tue 3 09:00");
    }

    [Fact]
    public void A_planned_wait_counts_where_it_is_longer_than_the_window_asks()
    {
        PlannedPour[] waits(double hours) => [Plans.Two.Layers[0], Plans.Two.Layers[1] with { WaitHours = hours }];
        Said(Plans.Run(Plans.Two with { Layers = waits(1) }).Layers[1].PourAt).ShouldBe("Mon 2 15:30");
        Said(Plans.Run(Plans.Two with { Layers = waits(7) }).Layers[1].PourAt).ShouldBe("Mon 2 16:30");
    }

    // finished Thursday 5 March; two days on the way: Saturday 7; three in hand: Tuesday 10
    [Theory]
    [InlineData(12, 5, null, null)]
    [InlineData(10, 3, null, null)]
    [InlineData(9, 2, "no-reserve", "2 days to spare, and the studio keeps 3 days in hand")]
    [InlineData(7, 0, "no-reserve", "0 days to spare")]
    [InlineData(6, -1, "too-late", "on Saturday 7 March 2026 at the earliest and is needed on Friday 6 March 2026: 1 day too late")]
    public void A_needed_day_is_met_or_said_to_be_missed(int day, int spare, string? code, string? says)
    {
        var result = Plans.Run(Plans.Two with { DeliveryDays = 2, ReserveDays = 3, NeededBy = new DateOnly(2026, 3, day) });
        (result.EarliestOn, result.PromiseOn, result.DaysToSpare).ShouldBe((new DateOnly(2026, 3, 7), new DateOnly(2026, 3, 10), spare));
        result.Findings.Select(f => f.Code).ShouldBe(code is null ? [] : [code]);
        result.Findings.ShouldAllBe(f => f.Message.Contains(says!, StringComparison.Ordinal) && f.Severity == (code == "too-late" ? Severity.Stop : Severity.Warn));
    }

    [Fact]
    public void What_was_done_is_taken_as_it_is_and_the_rest_follows_from_it()
    {
        // poured Sunday night at 23:00, though nobody works then; opens Monday 05:00; hands are there from 13:00
        var result = Plans.Run(Plans.Two with { Start = Plans.Monday.AddHours(4), Layers = [Plans.Two.Layers[0] with { PouredAt = Plans.Monday.AddHours(-10) }, Plans.Two.Layers[1]] });
        Said(result.Layers[0].PouredAt).ShouldBe("Sun 1 23:00");
        Said(result.Layers[1].WindowFrom).ShouldBe("Mon 2 05:00");
        Said(result.Layers[1].PourAt).ShouldBe("Mon 2 13:00");
        result.Layers[1].GelAt.RestsOn!.Kind.ShouldBe(Engine.Cure.RestsOnKind.Held);
        (result.Steps[0].Done, result.Steps[0].HandsMinutes, result.Steps[1].Done).ShouldBe((true, 0, false));
    }

    [Fact]
    public void A_piece_that_was_finished_long_ago_goes_home_from_the_start_on()
    {
        var done = Plans.Two with
        {
            Layers = [.. Plans.Two.Layers.Select((l, i) => l with { PouredAt = Plans.Monday.AddDays(i - 30) })],
            Demould = new(15, Plans.Monday.AddDays(-20)),
            Finishing = [new("polish", 60, DoneAt: Plans.Monday.AddDays(-10))],
            DeliveryDays = 2,
        };
        var result = Plans.Run(done);
        Said(result.FinishedAt).ShouldBe("Fri 20 09:00");
        result.EarliestOn.ShouldBe(new DateOnly(2026, 3, 4));
        // without a time it was done by the start at the latest
        Said(Plans.Run(done with { Finishing = [new("polish", 60, Done: true)] }).FinishedAt).ShouldBe("Mon 2 09:00");
    }

    [Fact]
    public void Work_done_before_full_cure_does_not_make_the_piece_cured()
    {
        var poured = Plans.Two with { Layers = [.. Plans.Two.Layers.Select((l, i) => l with { PouredAt = Plans.Monday.AddHours((8 * i) - 40) })] };
        // full cure 72 h after Sunday 1 March 01:00: Wednesday 01:00
        var trimmed = poured with { Demould = new(15, Plans.Monday.AddHours(-1)), Finishing = [new("trim", 30, AfterFullCure: false, DoneAt: Plans.Monday)] };
        Said(Plans.Run(trimmed).FinishedAt).ShouldBe("Wed 4 01:00");
    }

    [Fact]
    public void A_fact_after_the_start_is_said_to_be_one()
    {
        var result = Plans.Run(Plans.Two with { Layers = [Plans.Two.Layers[0] with { PouredAt = Plans.Monday.AddMinutes(20) }, Plans.Two.Layers[1] with { PouredAt = Plans.Monday.AddHours(7) }] });
        var said = result.Findings.ShouldHaveSingleItem();
        (said.Code, said.Severity, said.Path).ShouldBe(("past-start", Severity.Note, "layers[0].pouredAt"));
    }

    [Fact]
    public void A_pour_before_the_one_under_it_is_doubted_as_the_cure_clock_does()
    {
        var result = Plans.Run(Plans.Two with { Layers = [.. Plans.Two.Layers.Select((l, i) => l with { PouredAt = Plans.Monday.AddHours(-i) })] });
        result.Findings.Single(f => f.Code == "poured-before-layer-below").ShouldSatisfyAllConditions(f => f.Path.ShouldBe("layers[1].pouredAt"), f => f.Severity.ShouldBe(Severity.Stop));
    }

    [Theory]
    [InlineData(null, 24.0, 24.0, 72.0, "layers[1]", "Layer ground: The data sheet prints no time for the next pour.")]
    [InlineData(6.0, 24.0, null, 72.0, "demould", "Layer ground: The data sheet prints no demould time.")]
    [InlineData(6.0, 24.0, 24.0, null, "finishing[0]", "Layer ground: The data sheet prints no full-cure time.")]
    public void What_the_sheet_does_not_print_leaves_all_after_it_unknown(double? from, double? until, double? demould, double? full, string path, string reason)
    {
        var sheet = new TimeResin(Cure.Sheets.One(23, 2, from, until, demould, full));
        var result = Plans.Run(Plans.Two with { Resins = new Dictionary<string, TimeResin>(StringComparer.Ordinal) { ["clear"] = sheet } });
        result.FinishedAt.ShouldBe(Moment.Unknown(reason));
        (result.EarliestOn, result.PromiseOn, result.DaysToSpare).ShouldBe((null, null, null));
        var said = result.Findings.ShouldHaveSingleItem();
        (said.Code, said.Severity, said.Path, said.Message).ShouldBe(("not-known", Severity.Warn, path, "When it can be with the family is not known. " + reason));
        result.Steps.SkipWhile(s => s.From.At is not null).ShouldAllBe(s => s.From == Moment.Unknown(reason) && s.Until.At == null);
        result.Layers[0].PouredAt.At.ShouldNotBeNull();
        (result.DemouldAt.At is null).ShouldBe(path != "finishing[0]");
    }

    [Fact]
    public void A_sheet_that_prints_no_end_of_the_window_leaves_open_whether_it_is_missed()
    {
        var sheet = new TimeResin(Cure.Sheets.One(23, 2, 6, null, 24, 72));
        var layer = Plans.Run(Plans.Two with { Resins = new Dictionary<string, TimeResin>(StringComparer.Ordinal) { ["clear"] = sheet } }).Layers[1];
        layer.MissesWindow.ShouldBeNull();
        layer.WindowUntil.ShouldBe(Moment.Unknown("The data sheet prints no end of the next-pour window."));
        layer.PourAt.At.ShouldNotBeNull();
    }

    [Fact]
    public void Without_a_room_nothing_of_the_cure_is_guessed()
    {
        var result = Plans.Run(Plans.Two with { Room = [] });
        Said(result.Layers[0].PouredAt).ShouldBe("Mon 2 09:30");
        result.Layers[1].PourAt.Reason.ShouldBe("Layer ground: No room temperature is logged. Log the room to start the clock.");
    }

    // 22:00 to midnight, twice: the second evening's two hours are its own
    [Fact]
    public void Hands_that_work_until_midnight_have_each_evening_for_itself()
    {
        var nights = Plans.Two with { Work = new(Plans.Weekdays, TimeSpan.FromHours(22), TimeSpan.FromHours(24), 120), Layers = [new("only", "clear", 120)], Finishing = [], Demould = new(120) };
        var result = Plans.Run(nights);
        (Said(result.Layers[0].PourAt), Said(result.Layers[0].PouredAt)).ShouldBe(("Mon 2 22:00", "Tue 3 00:00"));
        // 24 h after midnight is Wednesday 00:00; Wednesday evening
        Said(result.DemouldAt).ShouldBe("Wed 4 22:00");
        Said(Plans.Run(nights with { Preparation = [new("box", 0, 240)] }).Layers[0].PourAt).ShouldBe("Wed 4 22:00");
    }

    [Fact]
    public void Abrading_that_no_day_has_room_for_is_not_known()
    {
        var full = Plans.Two with { Start = Plans.Monday.AddDays(4).AddHours(2), Work = Plans.Usual with { MinutesPerDay = 30 } };
        Plans.Run(full).Layers[1].PourAt.Reason.ShouldBe("Layer top: with abrading its pour takes 45 minutes of hands, and a working day has 30 for this piece.");
    }

    [Fact]
    public void A_studio_that_never_works_again_has_no_day_to_name()
    {
        var off = Enumerable.Range(0, 3700).Select(d => DateOnly.FromDateTime(Plans.Monday).AddDays(d));
        Plans.Run(Plans.Two with { Work = Plans.Usual with { DaysOff = [.. off] } }).FinishedAt.Reason.ShouldBe("There are no working hours for it within ten years of the start.");
    }

    private static string? Said(Moment moment) => moment.At?.ToString("ddd d HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
