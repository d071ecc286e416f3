using System.Globalization;
using CsCheck;
using Studio.Papers;

namespace Studio.Tests.Papers;

public sealed class PaperKitTests
{
    private static readonly PaperFormat British = PaperSamples.Format;

    /// <summary>Digits of minor units: ISO 4217 (pound 2, yen 0, Kuwaiti dinar 3).</summary>
    [Theory]
    [InlineData("en-GB", "GBP", 2, "£1,234.50")]
    [InlineData("en-US", "USD", 2, "$1,234.50")]
    [InlineData("de-DE", "EUR", 2, "1.234,50 €")]
    [InlineData("de-DE", "GBP", 2, "1.234,50 GBP")]
    [InlineData("ja-JP", "JPY", 0, "￥1,235|¥1,235")]
    [InlineData("en-GB", "KWD", 3, "1,234.500 KWD")]
    public void Money_follows_the_culture_and_the_currencys_digits(string culture, string currency, int digits, string expected)
    {
        var format = British with { Culture = CultureInfo.GetCultureInfo(culture), Currency = currency, CurrencyDigits = digits };
        expected.Split('|').ShouldContain(format.Money(1234.5m).Replace('\u00A0', ' '));
    }

    [Fact]
    public void Instants_are_told_in_the_studios_zone_and_a_doubled_hour_is_owned_up_to()
    {
        British.Moment(new DateTime(2026, 7, 1, 13, 10, 0, DateTimeKind.Utc)).ShouldBe("Wednesday 1 July, 14:10");
        British.FullMoment(new DateTime(2026, 1, 1, 13, 10, 0, DateTimeKind.Utc)).ShouldBe("Thursday 1 January 2026, 13:10");

        // summer time in London ends on Sunday 25 October 2026 at 02:00 (last Sunday of October, Summer Time Act 1972 as amended)
        British.Moment(new DateTime(2026, 10, 25, 0, 30, 0, DateTimeKind.Utc)).ShouldContain("clocks go back");
    }

    [Fact]
    public void What_may_not_come_early_is_never_printed_early()
    {
        Gen.Long[0, TimeSpan.TicksPerDay * 365].Sample(ticks =>
        {
            var instant = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddTicks(ticks);
            var minute = TimeSpan.TicksPerMinute;
            var up = new DateTime((instant.Ticks + minute - 1) / minute * minute, DateTimeKind.Utc);
            var down = new DateTime(instant.Ticks / minute * minute, DateTimeKind.Utc);
            return British.NotBefore(instant) == British.Moment(up) && British.NotAfter(instant) == British.Moment(down);
        });
    }

    [Theory]
    [InlineData(0.8234, "0.82 g")]
    [InlineData(48.26, "48.3 g")]
    [InlineData(1450, "1,450.0 g")]
    public void Grams_are_written_as_a_scale_shows_them(double grams, string expected) => British.Grams(grams).Replace('\u00A0', ' ').ShouldBe(expected);

    [Fact]
    public void Lengths_follow_the_unit_the_studio_reads()
    {
        British.Length(152.4).ShouldBe("152.4\u00A0mm");
        (British with { Inches = true }).Length(152.4).ShouldBe("6.00\u00A0in");
    }

    /// <summary>Spelling alphabet: ICAO Annex 10, volume II (from memory).</summary>
    [Theory]
    [InlineData("KS-26-00042-H", "K S 26 00042 H", "kilo sierra, two six, zero zero zero four two, hotel")]
    [InlineData("KS-2026-00042H", "K S 2026 00042 H", "kilo sierra, two zero two six, zero zero zero four two, hotel")]
    [InlineData("ks 7x", "K S 7 X", "kilo sierra, seven, x-ray")]
    [InlineData("", "", "")]
    public void An_entry_number_is_written_and_said_in_groups(string number, string spaced, string spoken)
    {
        EntryWords.Spaced(number).ShouldBe(spaced);
        EntryWords.Spell(number).ShouldBe(spoken);
    }

    [Fact]
    public void Wrapped_lines_fit_and_lose_no_letter()
    {
        var word = Gen.String[Gen.Char["abcőŁ-/."], 1, 40];
        Gen.Select(word.Array[0, 30], Gen.Double[1, 60]).Sample((words, width) =>
        {
            var text = string.Join(' ', words);
            var lines = PaperWrap.Lines(text, width, s => s.Length);
            string.Concat(lines).Replace(" ", "", StringComparison.Ordinal).ShouldBe(text.Replace(" ", "", StringComparison.Ordinal));
            lines.ShouldAllBe(l => l.Length <= Math.Max(1, width));
        });
    }

    [Fact]
    public void Control_marks_and_broken_surrogates_do_not_reach_the_paper()
    {
        PaperWrap.Clean("a\tb\r\nc\u0000\u200D\uD800").ShouldBe("a b\nc\uFFFD");
        PaperWrap.Clean("o\u030B").ShouldBe("ő");
        PaperWrap.Clean(null).ShouldBe("");
    }

    [Fact]
    public void Hatching_fills_a_square_with_evenly_spaced_lines_and_stays_inside()
    {
        (double X, double Y)[] square = [(0, 0), (10, 0), (10, 10), (0, 10)];
        var level = PaperHatch.Lines(square, 0, 2).ToList();
        level.Count.ShouldBe(5);
        level.ShouldAllBe(l => Math.Abs(l.To.X - l.From.X - 10) < 1e-9);

        var slanted = PaperHatch.Lines(square, 45, 1).SelectMany(l => new[] { l.From, l.To });
        slanted.ShouldAllBe(p => p.X > -1e-9 && p.X < 10 + 1e-9 && p.Y > -1e-9 && p.Y < 10 + 1e-9);

        // the lines' length times their distance is the area, as closely as a step allows
        var area = PaperHatch.Lines(square, 45, 0.05).Sum(l => Math.Sqrt(Math.Pow(l.To.X - l.From.X, 2) + Math.Pow(l.To.Y - l.From.Y, 2)) * 0.05);
        area.ShouldBe(100, 0.1);
        PaperHatch.Dots(square, 2).ShouldAllBe(p => p.X >= 0 && p.X <= 10 && p.Y > 0 && p.Y < 10);
    }
}
