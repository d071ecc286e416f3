using CsCheck;
using Studio.Calibration;

namespace Studio.Tests.Calibration;

/// <summary>Logs as thermometers, spreadsheets and people write them.</summary>
public sealed class LogTextTests
{
    // poured on 2 March 2026 at 09:00 UTC, which is London's own time then
    private static readonly LogFrame Frame = new(new DateTime(2026, 3, 2, 9, 0, 0, DateTimeKind.Utc), 22, TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));

    [Theory]
    [InlineData("0; 22\n30; 25,5")]
    [InlineData("0\t22\n30\t25.5")]
    [InlineData("min;°C\n0;22\n30;25,5")]
    [InlineData("Time,Temperature (C)\n0,22\n30,25.5")]
    [InlineData("09:00; 22\n09:30; 25.5 °C")]
    [InlineData("2026-03-02 09:00; 22\n2026-03-02 09:30; 25.5")]
    [InlineData("0; 71.6 °F\n30; 77.9 °F")]
    public void A_log_is_read_however_it_is_written(string text)
    {
        var read = LogText.Read(text, Frame);
        read.Errors.ShouldBeEmpty();
        read.Readings.Select(r => r.AfterHours).ShouldBe([0, 0.5], 1e-6);
        read.Readings.Select(r => r.Celsius).ShouldBe([22, 25.5], 1e-2);
        read.AsksFahrenheit.ShouldBeFalse();
    }

    [Fact]
    public void Lines_that_cannot_be_read_are_told_by_number_and_lose_nothing()
    {
        var read = LogText.Read("0; 22\nten; 23\n20; warm\n30; 25.5", Frame);
        read.Readings.Select(r => r.Celsius).ShouldBe([22, 25.5]);
        read.Errors.Select(e => e.Line).ShouldBe([2, 3]);
    }

    [Fact]
    public void Fahrenheit_without_a_word_is_asked_about()
    {
        var text = "0; 72\n30; 80\n60; 95";
        LogText.Read(text, Frame).AsksFahrenheit.ShouldBeTrue();
        var told = LogText.Read(text, Frame with { Unit = "F" });
        told.AsksFahrenheit.ShouldBeFalse();
        told.Readings[0].Celsius.ShouldBe(22.222, 1e-3);
    }

    [Fact]
    public void A_long_log_keeps_its_warmest_and_stays_small()
    {
        var text = string.Join('\n', Enumerable.Range(0, 100_000).Select(s => FormattableString.Invariant($"{s / 60.0:0.####}; {(s == 43_210 ? 61.7 : 30):0.#}")));
        var read = LogText.Read(text, Frame);
        read.Errors.ShouldBeEmpty();
        read.Readings.Count.ShouldBeLessThanOrEqualTo(4200);
        read.Readings.Max(r => r.Celsius).ShouldBe(61.7, 1e-9);
    }

    [Fact]
    public void No_text_is_too_strange() => Gen.String[0, 400].Sample(text =>
    {
        var read = LogText.Read(text, Frame);
        return read.Readings.All(r => double.IsFinite(r.AfterHours) && double.IsFinite(r.Celsius));
    }, iter: 20_000);
}
