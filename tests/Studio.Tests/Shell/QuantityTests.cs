using CsCheck;
using Studio.Shell;

namespace Studio.Tests.Shell;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("150", 150)]
    [InlineData("150 mm", 150)]
    [InlineData("150mm", 150)]
    [InlineData("  150  ", 150)]
    [InlineData("15 cm", 150)]
    [InlineData("6 in", 152.4)]
    [InlineData("6\"", 152.4)]
    [InlineData("6″", 152.4)]
    [InlineData("6”", 152.4)]
    [InlineData("6 inches", 152.4)]
    [InlineData("5 1/2 in", 139.7)]
    [InlineData("5½\"", 139.7)]
    [InlineData("1/2 in", 12.7)]
    [InlineData("1 ft", 304.8)]
    [InlineData("1,5", 1.5)]
    [InlineData("1.5", 1.5)]
    [InlineData(",5", 0.5)]
    [InlineData(".5", 0.5)]
    [InlineData("0,250", 0.25)]
    [InlineData("1.250", 1.25)]
    [InlineData("1.250,75", 1250.75)]
    [InlineData("1,250.75", 1250.75)]
    [InlineData("1.250.000", 1250000)]
    [InlineData("1,250,000", 1250000)]
    [InlineData("1 250", 1250)]
    [InlineData("1\u00A0250,5", 1250.5)]
    [InlineData("1\u202F250 mm", 1250)]
    [InlineData("1'250.5", 1250.5)]
    [InlineData("1’250", 1250)]
    [InlineData("1234,567", 1234.567)]
    [InlineData("-3", -3)]
    [InlineData("−3", -3)]
    [InlineData("–3", -3)]
    [InlineData("+3", 3)]
    [InlineData("-1.250,5", -1250.5)]
    [InlineData("1e3", 1000)]
    [InlineData("1e9", 1e9)]
    [InlineData("2.5E-1", 0.25)]
    [InlineData("１５０", 150)]
    [InlineData("１，５", 1.5)]
    [InlineData("１５０ｍｍ", 150)]
    [InlineData("١٥٠", 150)]
    [InlineData("1\u200B50", 150)]
    [InlineData("150\u00A0mm", 150)]
    public void Lengths_are_read_as_people_type_them(string typed, double mm)
    {
        var (value, wrong) = Quantity.Read(typed, "mm");
        wrong.ShouldBeNull();
        value!.Value.ShouldBe(mm, 1e-9);
    }

    // exact by definition: 1 lb = 453.59237 g, 1 oz = 28.349523125 g; 68 °F = 20 °C; 1 P = 0.1 Pa·s
    [Theory]
    [InlineData("68 °F", "°C", 20)]
    [InlineData("68F", "°C", 20)]
    [InlineData("68 ºF", "°C", 20)]
    [InlineData("68 ℉", "°C", 20)]
    [InlineData("-40 °F", "°C", -40)]
    [InlineData("19,5 °C", "°C", 19.5)]
    [InlineData("19.5 deg C", "°C", 19.5)]
    [InlineData("20°", "°C", 20)]
    [InlineData("5 deg", "°", 5)]
    [InlineData("5°", "°", 5)]
    [InlineData("1 lb", "g", 453.59237)]
    [InlineData("12 oz", "g", 340.1942775)]
    [InlineData("1.5 kg", "g", 1500)]
    [InlineData("2 l", "ml", 2000)]
    [InlineData("375 cm³", "ml", 375)]
    [InlineData("1100 kg/m³", "g/ml", 1.1)]
    [InlineData("1,10 g/cm3", "g/ml", 1.1)]
    [InlineData("7 days", "h", 168)]
    [InlineData("90 min", "h", 1.5)]
    [InlineData("5 h", "min", 300)]
    [InlineData("60 %", "%", 60)]
    [InlineData("350 cP", "mPa·s", 350)]
    [InlineData("0.35 Pa·s", "mPa·s", 350)]
    [InlineData("£12.50", "GBP", 12.5)]
    [InlineData("12,50 €", "EUR", 12.5)]
    [InlineData("$1,250.00", "USD", 1250)]
    [InlineData("12.50 GBP", "GBP", 12.5)]
    public void Another_unit_of_the_same_kind_is_converted(string typed, string unit, double expected)
    {
        var (value, wrong) = Quantity.Read(typed, unit);
        wrong.ShouldBeNull();
        value!.Value.ShouldBe(expected, 1e-9);
    }

    [Theory]
    [InlineData("NaN")]
    [InlineData("∞")]
    [InlineData("Infinity")]
    [InlineData("ten")]
    [InlineData("--3")]
    [InlineData("~20")]
    [InlineData("3x4")]
    [InlineData("1/0 in")]
    [InlineData("12,34.5")]
    [InlineData("1.25,750.5")]
    [InlineData("12 5")]
    [InlineData("1,2,3")]
    [InlineData("1e999")]
    [InlineData("<script>")]
    public void What_is_no_number_is_refused_with_a_sentence(string typed)
    {
        var (value, wrong) = Quantity.Read(typed, "mm");
        value.ShouldBeNull();
        wrong.ShouldNotBeNull();
        wrong.ShouldEndWith(".");
    }

    [Theory]
    [InlineData("12 g", "mm")]
    [InlineData("12 mm", "g")]
    [InlineData("20 °C", "mm")]
    [InlineData("20 °C", "g")]
    [InlineData("12 g", "°C")]
    [InlineData("3 h", "g/ml")]
    [InlineData("5 %", "mm")]
    [InlineData("3 pieces", "")]
    [InlineData("€5", "GBP")]
    [InlineData("5 °F", "°")]
    public void A_unit_of_another_kind_is_named_in_the_refusal(string typed, string unit)
    {
        var (value, wrong) = Quantity.Read(typed, unit);
        value.ShouldBeNull();
        wrong.ShouldNotBeNull();
        wrong.ShouldContain(typed.Contains('€', StringComparison.Ordinal) ? "€" : typed.Split(' ')[1]);
    }

    [Theory]
    [InlineData("1,250", "1250 or 1.25")]
    [InlineData("12,500", "12500 or 12.5")]
    [InlineData("-1,250", "1250 or 1.25")]
    [InlineData("１，２５０", "1250 or 1.25")]
    public void Two_readings_are_asked_about_and_never_guessed(string typed, string readings)
    {
        var (value, wrong) = Quantity.Read(typed, "mm");
        value.ShouldBeNull();
        wrong.ShouldNotBeNull();
        wrong.ShouldContain(readings);
    }

    [Theory]
    [InlineData("48-72 h")]
    [InlineData("48–72")]
    [InlineData("2 to 4 h")]
    [InlineData("48h-72h")]
    public void A_range_from_a_data_sheet_is_told_apart_from_nonsense(string typed)
    {
        var (value, wrong) = Quantity.Read(typed, "h");
        value.ShouldBeNull();
        wrong.ShouldNotBeNull();
        wrong.ShouldContain("range");
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("\u00A0\u200B")]
    public void Nothing_typed_is_nothing_said(string? typed) => Quantity.Read(typed, "mm").ShouldBe((null, null));

    [Fact]
    public void A_bare_number_counts_in_the_unit_shown() => Quantity.Read("6", "mm", "in").Value!.Value.ShouldBe(152.4, 1e-9);

    [Fact]
    public void A_typed_unit_outweighs_the_one_shown() => Quantity.Read("150 mm", "mm", "in").Value.ShouldBe(150);

    [Fact]
    public void A_long_paste_is_refused_at_once() => Quantity.Read(new string('1', 5000), "mm").Wrong.ShouldNotBeNull();

    [Fact]
    public void No_text_makes_it_throw_or_answer_twice() =>
        Gen.String[0, 80].Sample(typed =>
        {
            var (value, wrong) = Quantity.Read(typed, "mm");
            (value is null || wrong is null).ShouldBeTrue();
            (value is null || double.IsFinite(value.Value)).ShouldBeTrue();
        });

    [Fact]
    public void Every_ordinary_number_survives_both_ways_of_writing_it() =>
        Gen.Int[-9_999_999, 9_999_999].Sample(hundredths =>
        {
            var number = hundredths / 100.0;
            var invariant = System.Globalization.CultureInfo.InvariantCulture;
            Quantity.Read(number.ToString("0.00", invariant), "g").Value.ShouldBe(number);
            Quantity.Read(number.ToString("#,##0.00", invariant), "g").Value.ShouldBe(number);
            Quantity.Read(number.ToString("#,##0.00", invariant).Replace(',', '_').Replace('.', ',').Replace('_', '.'), "g").Value.ShouldBe(number);
        });
}
