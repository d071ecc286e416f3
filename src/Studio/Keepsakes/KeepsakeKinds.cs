using Studio.Engine;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>A choice that can be tapped.</summary>
/// <param name="Key">What is stored.</param>
/// <param name="Label">What is read.</param>
/// <param name="Note">A few words under it; may be empty.</param>
/// <param name="Group">The heading that it stands under; may be empty.</param>
public sealed record Choice(string Key, string Label, string Note = "", string Group = "");

/// <summary>The engine's materials, grouped for a thumb: what families bring most stands first.</summary>
public static class KeepsakeKinds
{
    private const string Rest = "Other things";

    private static readonly (string Group, string[] Keys)[] Groups =
    [
        ("Paper", ["photograph-", "letter"]),
        ("Grown", ["dried-flower", "wood", "hair", "ashes"]),
        ("Metal and cloth", ["brass", "iron", "textile"]),
    ];

    /// <summary>All materials in the order of the groups; one the groups do not know stands under the last heading.</summary>
    public static IReadOnlyList<Choice> All { get; } =
    [
        .. Groups.SelectMany(g => MaterialRules.All.Where(r => GroupOf(r.Key) == g.Group).Select(r => Of(r, g.Group))),
        .. MaterialRules.All.Where(r => GroupOf(r.Key) == Rest).Select(r => Of(r, Rest)),
    ];

    public static string Label(string key) => MaterialRules.For(key).Label;

    /// <summary>What to mind before resin, and at the door, for what is filled in so far.</summary>
    public static IReadOnlyList<Finding> Findings(string kind, double? massG) =>
        kind.Length == 0 ? [] :
        [
            MaterialRules.For(kind).At("kind"),
            .. kind == "ashes" && massG is null
                ? new[] { new Finding("ashes-not-weighed", Severity.Warn, "massG", "Weigh the ashes before they leave the family's table, so that what goes into the piece and what goes back can be checked against it.", "our rule") }
                : [],
        ];

    private static Choice Of(MaterialRule rule, string group) => new(rule.Key, rule.Label, "", group);

    private static string GroupOf(string key) =>
        Groups.FirstOrDefault(g => g.Keys.Any(k => key.StartsWith(k, StringComparison.Ordinal))).Group ?? Rest;
}
