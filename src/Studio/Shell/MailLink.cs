namespace Studio.Shell;

/// <summary>Makes the links that open a mail; nowhere else is one written, so that nothing a form took in can add receivers, words or lines to it.</summary>
public static class MailLink
{
    private const string CarriageReturnLineFeed = "\r\n";

    /// <summary>
    /// The link of RFC 6068, everything but letters, digits and <c>- . _ ~</c> percent-encoded. An address that cannot be one (no name, @ and
    /// domain, or a character that cannot be printed) is left out; null where then nothing is left.
    /// </summary>
    /// <param name="address">One address; empty to let the maker choose it.</param>
    /// <param name="subject">One line; breaks in it become spaces.</param>
    /// <param name="body">As many lines as it has.</param>
    public static string? To(string? address, string subject = "", string body = "")
    {
        var fields = new[] { ("subject", subject.ReplaceLineEndings(" ")), ("body", body.ReplaceLineEndings(CarriageReturnLineFeed)) }
            .Where(f => f.Item2.Length > 0).Select(f => $"{f.Item1}={Uri.EscapeDataString(f.Item2)}");
        var parts = new[] { Receiver((address ?? "").Trim()), string.Join('&', fields) };
        return parts is ["", ""] ? null : "mailto:" + string.Join('?', parts[1].Length > 0 ? parts : parts[..1]);
    }

    private static string Receiver(string address)
    {
        var at = address.LastIndexOf('@');
        return at <= 0 || at == address.Length - 1 || address.Any(c => char.IsControl(c) || char.IsWhiteSpace(c))
            ? ""
            : $"{Uri.EscapeDataString(address[..at])}@{Uri.EscapeDataString(address[(at + 1)..])}";
    }
}
