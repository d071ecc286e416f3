using Studio.Papers;

namespace Studio.Quotes;

/// <summary>What has become of a quote, for the head of its paper.</summary>
internal static class QuoteToday
{
    /// <summary>"Draft", "Sent on 2 March 2026", "Accepted on …", "Replaced by version 2", "Lapsed: it stood until …".</summary>
    /// <exception cref="InvalidOperationException">No such state.</exception>
    public static string Words(QuoteView view, PaperFormat format)
    {
        var quote = view.Quote;
        return quote.State switch
        {
            QuoteState.Draft => "Draft",
            QuoteState.Sent when view.Expired => $"Lapsed: it stood until {format.Day(quote.ValidUntil)}",
            QuoteState.Sent => On("Sent", quote.SentAt, format),
            QuoteState.Accepted => On("Accepted", quote.AcceptedAt, format),
            QuoteState.Superseded => (view.NeverSent ? "Draft, never sent. " : "") + (view.ReplacedBy is { } newer ? FormattableString.Invariant($"Replaced by version {newer}") : "Replaced"),
            QuoteState.Declined => "Declined",
            var unknown => throw new InvalidOperationException($"A quote cannot stand at '{unknown}'."),
        };
    }

    private static string On(string what, DateTime? at, PaperFormat format) => at is { } when ? $"{what} on {format.Day(when)}" : what;
}
