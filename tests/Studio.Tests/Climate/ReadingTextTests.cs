using CsCheck;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Settings;

namespace Studio.Tests.Climate;

public sealed class ReadingTextTests
{
    private static readonly DateTime Now = new(2026, 11, 25, 16, 0, 0, DateTimeKind.Utc);
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");
    private static readonly string[] Bits = ["2026-11-25 14:10", ";", ",", "\t", "\n", "19,5", "°F", "%", "time", "temperature", "-", "99999999999999999999", "T", "Z", "+25:99"];

    [Theory]
    [InlineData("2026-11-25 14:10; 19,5; 48", 19.5, 48.0)]
    [InlineData("2026-11-25T14:10:00Z,19.5,48 %", 19.5, 48.0)]
    [InlineData("25.11.2026 14:10\t19.5 °C", 19.5, null)]
    [InlineData("2026-11-25T15:10:00+01:00;67.1 °F;48", 19.5, 48.0)]
    [InlineData("humidity;time;temperature (°F)\n48;2026-11-25 14:10;67,1", 19.5, 48.0)]
    public void A_table_is_read_as_thermometers_write_it(string text, double celsius, double? humidity)
    {
        var (readings, errors) = ReadingText.Read(text, Now, London);
        errors.ShouldBeEmpty();
        var one = readings.ShouldHaveSingleItem();
        one.At.ShouldBe(new DateTime(2026, 11, 25, 14, 10, 0, DateTimeKind.Utc));
        one.Celsius.ShouldBe(celsius, 1e-9);
        one.HumidityPercent.ShouldBe(humidity);
    }

    [Fact]
    public void Every_wrong_line_is_told_at_once_and_the_good_ones_are_there()
    {
        var (readings, errors) = ReadingText.Read("time;temperature\n2026-11-25 10:00;19\nyesterday;19\n2026-11-25 10:10;-127\n2026-11-26 10:10;19\n2026-11-25 10:20;18.5\n11/25/2026 10:00;19\n2026-11-25 10:30;68\n2026-11-25 10:40", Now, London);
        readings.Select(r => r.Celsius).ShouldBe([19, 18.5]);
        errors.Select(e => e.Line).ShouldBe([3, 4, 5, 7, 8, 9]);
        errors[4].Message.ShouldContain("Fahrenheit");
    }

    [Fact]
    public void Decimal_commas_between_commas_are_asked_about() =>
        ReadingText.Read("2026-11-25 14:10,19,5,48", Now, London).Errors.ShouldHaveSingleItem().Message.ShouldContain("semicolons");

    [Fact]
    public void No_text_is_too_strange() =>
        Gen.Select(Gen.Int[0, Bits.Length - 1], Gen.String[0, 6]).Select((i, odd) => Bits[i] + odd).Array[0, 12]
            .Sample(parts => ReadingText.Read(string.Concat(parts), Now, London).Readings.All(r => double.IsFinite(r.Celsius)), iter: 3000);

    [Fact]
    public async Task The_same_table_twice_is_kept_once_and_can_be_taken_back()
    {
        using var studio = new StudioDatabase();
        var book = new PasteBook(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News));
        var first = await book.KeepAsync("2026-03-01 10:00;19\n2026-03-01 11:00;18\nnonsense", "", "Wren");
        (first.Ids.Count, first.Errors.Count).ShouldBe((2, 1));
        (await book.KeepAsync("2026-03-01 10:00;19\n2026-03-01 11:00;18", "", "Wren")).There.ShouldBe(2);
        (await book.TakeBackAsync(first.Ids)).Ok.ShouldBeTrue();
        await using var db = studio.Open();
        (await db.Set<Reading>().CountAsync(r => r.Withdrawn, TestContext.Current.CancellationToken)).ShouldBe(2);
    }
}
