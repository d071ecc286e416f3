namespace Studio.Quotes;

/// <summary>What the family pays for the way to them. Free is chosen on purpose and never follows from a nought.</summary>
public static class DeliveryTerms
{
    public const string Open = "";
    public const string Priced = "priced";
    public const string Free = "free";

    /// <summary>Key and label, as a form offers them.</summary>
    public static IReadOnlyList<(string Key, string Label)> All { get; } =
    [
        (Open, "Not decided yet"),
        (Priced, "They pay for it"),
        (Free, "Included, free"),
    ];

    /// <summary>How it stands in a form: a price is a price whatever was chosen, and a price of nought is none.</summary>
    public static string Of(QuoteForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return form.Delivery > 0 ? Priced : form.DeliveryAs == Free ? Free : Open;
    }
}
