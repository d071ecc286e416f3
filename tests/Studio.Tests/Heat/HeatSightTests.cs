using System.Text.RegularExpressions;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Heat;

namespace Studio.Tests.Heat;

public sealed partial class HeatSightTests
{
    [Fact]
    public void A_calm_layer_says_its_interval_and_what_is_in_hand()
    {
        var sight = HeatSight.Of("Layer 1, base", Told(38, 36, 43), [HeatLimit.Resin]);
        sight.Band.ShouldBe("calm");
        sight.Stops.ShouldBeFalse();
        sight.Peak.ShouldBe("36 to 43 °C, most likely 38 °C");
        sight.Limits.ShouldHaveSingleItem().ShouldContain("32 K in hand");
    }

    [Fact]
    public void Gel_is_said_with_its_latest_or_that_nobody_knows_it()
    {
        var told = Told(38, 36, 43);
        HeatSight.Of("base", told, []).More.ShouldContain("gelled throughout after 11 h (at the latest after 12 h).");
        HeatSight.Of("base", told with { Intervals = told.Intervals! with { LastGelAfterHours = null } }, []).More.ShouldContain("gelled throughout after 11 h (the latest is not known).");
        HeatSight.Of("base", told with { Intervals = null }, []).More.ShouldContain("gelled throughout after 11 h.");
    }

    [Fact]
    public void What_may_break_a_limit_is_warned_of_and_what_most_likely_breaks_it_is_stopped()
    {
        var may = HeatSight.Of("base", Told(60, 50, 90), [HeatLimit.Resin]);
        (may.Band, may.Stops).ShouldBe(("hot", false));
        var does = HeatSight.Of("base", Told(80, 70, 95), [HeatLimit.Resin]);
        (does.Band, does.Stops).ShouldBe(("hot", true));
        does.Says.ShouldBe("Too hot for the resin.");
    }

    // the rule of the house: above about 120 °C no number is said
    [Theory]
    [InlineData(165, 130, 220)]
    [InlineData(110, 70, 160)]
    public void A_run_away_says_no_number_above_120(double peak, double low, double high)
    {
        var sight = HeatSight.Of("base", Told(peak, low, high), [HeatLimit.Resin, HeatLimit.SiliconeMould]);
        sight.Band.ShouldBe("runaway");
        sight.Says.ShouldContain("do not pour");
        var all = string.Join(' ', [sight.Says, sight.Peak, sight.More, .. sight.Limits]);
        Numbers().Matches(all).Select(m => double.Parse(m.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture)).ShouldAllBe(n => n <= 120);
    }

    [Fact]
    public void A_room_by_night_turns_within_two_hours_and_comes_back()
    {
        var room = HeatRoom.Readings(22, 15, 48);
        room.Select(r => r.Hours).ShouldBeInOrder();
        At(room, 0).ShouldBe(22);
        At(room, 13).ShouldBe(15, 1e-9, "22:00 is thirteen hours after nine");
        At(room, 20).ShouldBe(15, 1e-9);
        At(room, 24).ShouldBe(22, 1e-9);
        At(room, 38).ShouldBe(15, 1e-9, "the second night");
        HeatRoom.Readings(22, null, 48).ShouldHaveSingleItem();
    }

    private static double At(IReadOnlyList<Engine.Cure.RoomReading> room, double hours)
    {
        var (before, after) = (room.Last(r => r.Hours <= hours), room.FirstOrDefault(r => r.Hours > hours) ?? room[^1]);
        return after.Hours <= before.Hours ? before.Celsius : before.Celsius + ((after.Celsius - before.Celsius) * (hours - before.Hours) / (after.Hours - before.Hours));
    }

    private static ForecastLayer Told(double peak, double low, double high) => new()
    {
        Best = new LayerHeat
        {
            PeakCelsius = peak,
            PeakAfterHours = 9,
            PeakHeightMm = 12,
            PeakBeforeNextPourCelsius = peak,
            PeakBeforeNextPourAfterHours = 9,
            AdiabaticCelsius = 210,
            FirstGelAfterHours = 8,
            LastGelAfterHours = 11,
            LeastConversion = 0.8,
            MeanConversion = 0.85,
            MouldFacePeakCelsius = peak - 6,
            SteepestFallKPerH = 1,
            Curve = [new(0, 21, 21), new(9, peak, peak - 8), new(40, 23, 22)],
        },
        Intervals = new(new FitInterval(low, high), new(8, 10), new(low - 6, high - 6), new(7, 9), new(10, 12), new(0.75, 0.85), new(0.8, 0.9)),
    };

    [GeneratedRegex(@"(?<n>\d+(\.\d+)?) (°C|K)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Numbers();
}
