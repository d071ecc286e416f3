namespace Studio.Engine.Price;

/// <summary>
/// The active codes of ISO 4217 with the digits of their minor unit, written down from memory as of 2026; check a rare one against the
/// standard's list before relying on it. Codes without a minor unit (metals, testing, drawing rights) are left out.
/// </summary>
public static class Currencies
{
    private const string None = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
    private const string Three = "BHD IQD JOD KWD LYD OMR TND";
    private const string Four = "CLF UYW";

    private const string Two = """
        AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK
        DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR
        LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR
        SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER
        ZAR ZMW ZWG
        """;

    private static readonly char[] Gaps = [' ', '\n', '\r'];

    private static readonly Dictionary<string, int> Digits = new[] { (None, 0), (Two, 2), (Three, 3), (Four, 4) }
        .SelectMany(group => group.Item1.Split(Gaps, StringSplitOptions.RemoveEmptyEntries).Select(code => (Code: code, Digits: group.Item2)))
        .ToDictionary(c => c.Code, c => c.Digits, StringComparer.Ordinal);

    /// <summary>All codes.</summary>
    public static IReadOnlyCollection<string> Codes => Digits.Keys;

    /// <summary>Digits after the point of a currency's minor unit, or null when there is no such code.</summary>
    public static int? MinorDigits(string code) => Digits.TryGetValue(code, out var digits) ? digits : null;

    /// <summary>The minor unit itself, such as 0.01.</summary>
    /// <param name="digits">Digits after the point, 0 to 4.</param>
    public static decimal MinorUnit(int digits) => new(1, 0, 0, false, (byte)Require.Within(digits, 0, 4, "digits"));
}
