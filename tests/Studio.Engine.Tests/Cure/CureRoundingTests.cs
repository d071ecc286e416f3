using Studio.Engine.Cure;

namespace Studio.Engine.Tests.Cure;

public sealed class CureRoundingTests
{
    private static readonly DateTime Minute = new(2026, 3, 1, 14, 10, 0, DateTimeKind.Utc);

    [Fact]
    public void Ready_times_go_to_the_later_minute_and_closing_times_to_the_earlier()
    {
        CureRounding.UpToMinute(Minute.AddSeconds(1)).ShouldBe(Minute.AddMinutes(1));
        CureRounding.UpToMinute(Minute.AddMilliseconds(1)).ShouldBe(Minute.AddMinutes(1));
        CureRounding.DownToMinute(Minute.AddSeconds(59)).ShouldBe(Minute);
        CureRounding.DownToMinute(Minute.AddMilliseconds(-1)).ShouldBe(Minute.AddMinutes(-1));
    }

    [Theory]
    [InlineData(-10)]
    [InlineData(0)]
    [InlineData(10)]
    public void Whole_minute_stays_in_spite_of_the_last_digits_of_a_double(int ticks)
    {
        CureRounding.UpToMinute(Minute.AddTicks(ticks)).ShouldBe(Minute);
        CureRounding.DownToMinute(Minute.AddTicks(ticks)).ShouldBe(Minute);
    }

    // the shown minute, taken back to hours, must find the milestone reached and the window open
    [Fact]
    public void What_is_shown_as_ready_is_ready_at_that_minute()
    {
        for (var i = 0; i < 1000; i++)
        {
            var cure = Sheets.RunFrom(1.0 / 7 * i, Sheets.Casting, [new(0, 15 + (i % 11))]);
            var shown = CureRounding.UpToMinute(Minute.AddHours(cure.Demould.AtHours!.Value));
            cure.Demould.ReachedAt((shown - Minute).TotalHours).ShouldBeTrue();
            cure.Demould.ReachedAt((shown - Minute).TotalHours - (1.0 / 60)).ShouldBeFalse();
        }
    }

    [Fact]
    public void Kind_of_the_instant_is_kept() => CureRounding.UpToMinute(Minute.AddSeconds(1)).Kind.ShouldBe(DateTimeKind.Utc);
}
