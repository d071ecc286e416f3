namespace Studio.Engine.Custody;

/// <summary>How much of a keepsake may be cast.</summary>
public enum CastShare
{
    /// <summary>Nothing of it, in any form.</summary>
    None,

    /// <summary>A copy; never the thing itself.</summary>
    Copy,

    /// <summary>A part of it; never the whole.</summary>
    Part,

    /// <summary>Some or all of it.</summary>
    All,
}

/// <summary>What a family can permit, with the words for it on every page and paper.</summary>
/// <param name="Key">Stable kebab-case key, stored with the keepsake.</param>
/// <param name="OnForm">The choice as it is tapped while the family looks on, and the label in lists.</param>
/// <param name="OnReceipt">A whole sentence to the family.</param>
/// <param name="OnQuote">What becomes of it, to follow its name and a colon.</param>
/// <param name="MayCast">How much of it may be cast.</param>
/// <param name="OriginalReturns">True where what came in must go back, all of it or what is not cast.</param>
/// <param name="Beyond">The sentence that refuses more than this, and says what to do.</param>
public sealed record PermissionRule(string Key, string OnForm, string OnReceipt, string OnQuote, CastShare MayCast, bool OriginalReturns, string Beyond)
{
    /// <summary>False for a key that nobody here knows: it refuses everything.</summary>
    public bool Known { get; init; } = true;

    /// <summary>Whether the thing itself may go into resin, in part or whole.</summary>
    public bool ThingMayBeCast => MayCast is CastShare.Part or CastShare.All;

    /// <summary>Whether a copy may: a copy is less than a part.</summary>
    public bool CopyMayBeCast => MayCast is not CastShare.None;
}

/// <summary>The permissions a family can give. A new one is one record here and one row of cases in the tests.</summary>
public static class Permissions
{
    public const string EmbedAll = "embed-all";
    public const string EmbedPart = "embed-part";
    public const string CopyReturn = "copy-return";
    public const string ReturnUntouched = "return-untouched";

    private const string Changed = "If they have changed their mind, correct what they permit first and write who said so.";

    /// <summary>All permissions in the order of the list to choose from.</summary>
    public static IReadOnlyList<PermissionRule> All { get; } =
    [
        new(EmbedAll, "Cast all of it", "All of it may be cast in resin.", "set into the piece", CastShare.All, OriginalReturns: false,
            "All of it may be cast, and no more than there is."),
        new(EmbedPart, "Cast a part, return the rest", "A part may be cast in resin; the rest goes back to you.", "a part is set into the piece, the rest comes back to you", CastShare.Part, OriginalReturns: true,
            "The family permits a part to be cast and wants the rest back, so never all of it. " + Changed),
        new(CopyReturn, "Copy it, return the original", "A copy may be cast in resin; the original goes back to you.", "copied, and the original comes back to you", CastShare.Copy, OriginalReturns: true,
            "The family permits a copy to be cast and wants the original back. Cast the copy instead. " + Changed),
        new(ReturnUntouched, "Return untouched", "It goes back to you untouched.", "comes back to you untouched", CastShare.None, OriginalReturns: true,
            "The family asked for it back untouched, so it stays out of the resin. " + Changed),
    ];

    /// <summary>The permission of a key. One that nobody here knows refuses everything, and says so on every page and paper.</summary>
    public static PermissionRule For(string? key) => All.FirstOrDefault(p => string.Equals(p.Key, key, StringComparison.Ordinal)) ?? Unknown(key);

    private static PermissionRule Unknown(string? key)
    {
        var noted = string.IsNullOrWhiteSpace(key) ? "nothing" : $"“{key}”";
        return new(
            key ?? "",
            $"Not known ({noted} is noted)",
            $"What you permit is not known to us ({noted} is noted), so nothing is done with it before you have told us.",
            "nothing is done with it before you have told us what you permit",
            CastShare.None,
            OriginalReturns: true,
            $"What the family permits is not known: {noted} is noted. Ask them, and correct what they permit before anything is done with it.")
        { Known = false };
    }
}
