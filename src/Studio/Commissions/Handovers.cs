namespace Studio.Commissions;

/// <summary>How a piece reaches the family: the keys of <see cref="Commission.Handover"/>.</summary>
public static class Handovers
{
    public const string Collection = "collection";
    public const string Delivery = "delivery";

    /// <summary>As the family reads it on their paper.</summary>
    /// <exception cref="InvalidOperationException">The key is none of these: nothing is said to a family that nobody chose.</exception>
    public static string OnPaper(string key) => key switch
    {
        Collection => "Collected from the studio",
        Delivery => "Delivered to you",
        var unknown => throw new InvalidOperationException($"There is no handover '{unknown}', so the paper was not made. Choose collection or delivery on the commission's page."),
    };
}
