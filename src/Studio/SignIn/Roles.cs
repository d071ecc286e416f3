namespace Studio.SignIn;

/// <summary>Who may do what: the owner everything, a maker the work, the front desk customers, keepsakes and quotes.</summary>
public static class Roles
{
    public const string Owner = "owner";
    public const string Maker = "maker";
    public const string FrontDesk = "front desk";

    /// <summary>The policy of the makers' rooms: pieces, bench, stores. The owner makes, too.</summary>
    public const string Making = "making";

    public static IReadOnlyList<(string Key, string Means)> All { get; } =
    [
        (Owner, "Everything, people and settings included."),
        (Maker, "Pieces, bench, stores, keepsakes, commissions and quotes."),
        (FrontDesk, "Commissions, customers, keepsakes and quotes."),
    ];
}
