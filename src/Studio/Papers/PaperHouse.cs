using System.Globalization;
using Studio.Engine.Price;
using Studio.Settings;

namespace Studio.Papers;

/// <summary>The studio as every paper shows it: its head, how it writes, and the sheet that its printer takes.</summary>
/// <param name="Letterhead">Name and addresses.</param>
/// <param name="Format">Money, dates, times and lengths.</param>
/// <param name="Size">The sheet.</param>
public sealed record PaperHouse(PaperLetterhead Letterhead, PaperFormat Format, PaperSize Size)
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>From the studio's settings.</summary>
    /// <param name="settings">As they are now.</param>
    /// <param name="currency">ISO 4217, where the paper's money is not the studio's usual one.</param>
    public static PaperHouse Of(StudioSettings settings, string? currency = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var money = currency ?? settings.Currency;
        return new(
            new(settings.StudioName, Lines(settings.Address), settings.Email, settings.Phone),
            new(English, money, Currencies.MinorDigits(money) ?? 2, TimeZoneInfo.TryFindSystemTimeZoneById(settings.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc, settings.Units == "inch"),
            Sheet(settings.Paper));
    }

    /// <summary>The sheet of a name, as settings and addresses write it.</summary>
    public static PaperSize Sheet(string name) => string.Equals(name, "Letter", StringComparison.OrdinalIgnoreCase) ? PaperSize.Letter : PaperSize.A4;

    /// <summary>An address line by line; one that was typed in one line is cut at its commas.</summary>
    public static string[] Lines(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return address.Split(address.Contains('\n', StringComparison.Ordinal) ? '\n' : ',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}
