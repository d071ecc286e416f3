using System.Globalization;

namespace Studio.Papers;

/// <summary>How every paper writes money, dates, times and lengths: the studio's culture, currency and time zone.</summary>
/// <param name="Culture">Decimal marks and the order of dates.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="CurrencyDigits">Digits of the currency's minor unit, 0 to 4.</param>
/// <param name="Zone">Where the studio's clock hangs; instants come in as UTC.</param>
/// <param name="Inches">Lengths in inches in place of millimetres.</param>
public sealed record PaperFormat(CultureInfo Culture, string Currency, int CurrencyDigits, TimeZoneInfo Zone, bool Inches = false)
{
    private bool English => string.Equals(Culture.TwoLetterISOLanguageName, "en", StringComparison.Ordinal);

    /// <summary>The papers' words are English: names of months follow the words, numbers follow the culture.</summary>
    private CultureInfo Words => English ? Culture : CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Language tag of the paper's words, as a screen reader wants it.</summary>
    public string Language => English && Culture.Name.Length > 2 ? Culture.Name : "en";

    /// <summary>An amount with its sign where the culture owns the currency (£480.00), else with its code (480,00 EUR).</summary>
    public string Money(decimal amount)
    {
        var digits = CurrencyDigits.ToString(CultureInfo.InvariantCulture);
        return OwnsCurrency()
            ? amount.ToString("C" + digits, Culture)
            : amount.ToString("N" + digits, Culture) + "\u00A0" + Currency;
    }

    public string Percent(decimal percent) => percent.ToString("0.##", Culture) + "\u00A0%";

    /// <summary>Grams as a bench scale shows them: two decimals under 10 g, else one.</summary>
    public string Grams(double grams) => GramsFigure(grams) + "\u00A0g";

    /// <summary>The number alone, where its column says grams.</summary>
    public string GramsFigure(double grams) => grams.ToString(Math.Abs(grams) < 10 ? "N2" : "N1", Culture);

    /// <summary>The grams that a reader reads from <see cref="GramsFigure"/>.</summary>
    public decimal PrintedGrams(double grams) => decimal.Parse(GramsFigure(grams), NumberStyles.Number, Culture);

    /// <summary>A length given in millimetres, in the unit that the studio reads.</summary>
    public string Length(double millimetres) => Inches
        ? (millimetres / 25.4).ToString("0.00", Culture) + "\u00A0in"
        : millimetres.ToString("0.#", Culture) + "\u00A0mm";

    public string Celsius(double celsius) => celsius.ToString("0.#", Culture) + "\u00A0°C";

    public string Number(double value) => value.ToString("#,0.##", Culture);

    public string Day(DateOnly day) => day.ToDateTime(TimeOnly.MinValue).ToString(DayPattern, Words);

    /// <summary>The day, in the studio's zone, on which an instant falls.</summary>
    public string Day(DateTime utc) => Local(utc).ToString(DayPattern, Words);

    /// <summary>An instant as day and time, cut to the minute.</summary>
    public string Moment(DateTime utc) => Write(Local(utc));

    /// <summary>Day with its year, and time.</summary>
    public string FullMoment(DateTime utc)
    {
        var local = Local(utc);
        return local.ToString("dddd ", Words) + local.ToString(DayPattern, Words) + ", " + local.ToString(TimePattern, Words);
    }

    /// <summary>For what must not happen before an instant: rounded up to the minute.</summary>
    public string NotBefore(DateTime utc)
    {
        var spare = utc.Ticks % TimeSpan.TicksPerMinute;
        return Moment(spare == 0 ? utc : utc.AddTicks(TimeSpan.TicksPerMinute - spare));
    }

    /// <summary>For what must not happen after an instant: rounded down to the minute.</summary>
    public string NotAfter(DateTime utc) => Moment(utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMinute)));

    private string TimePattern => Words.Name is "en-US" ? "h:mm\u00A0tt" : "HH:mm";

    private string DayPattern => Words.Name is "en-US" ? "MMMM d, yyyy" : "d MMMM yyyy";

    private DateTime Local(DateTime utc) => TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(utc, DateTimeKind.Utc), Zone);

    private string Write(DateTime local)
    {
        var time = local.ToString(TimePattern, Words);
        var day = local.ToString(Words.Name is "en-US" ? "dddd, MMMM d" : "dddd d MMMM", Words);
        return Zone.IsAmbiguousTime(local) ? $"{day}, {time} (the clocks go back that night)" : $"{day}, {time}";
    }

    private bool OwnsCurrency()
    {
        if (Culture.IsNeutralCulture || Culture.Name.Length == 0)
        {
            return false;
        }

        return string.Equals(new RegionInfo(Culture.Name).ISOCurrencySymbol, Currency, StringComparison.OrdinalIgnoreCase);
    }
}
