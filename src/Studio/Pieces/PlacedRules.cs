using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Keepsakes;

namespace Studio.Pieces;

/// <summary>What a commission lent, and which of it other pieces already hold.</summary>
/// <param name="All">Every keepsake of the commission.</param>
/// <param name="Elsewhere">Keepsake to the name of another piece it is set into.</param>
public sealed record KeepsakeShelf(IReadOnlyList<Keepsake> All, IReadOnlyDictionary<int, string> Elsewhere)
{
    public static KeepsakeShelf Empty { get; } = new([], new Dictionary<int, string>());
}

/// <summary>What may be set into resin: the family's word first, then the material's rule, then whether it is here at all.</summary>
public static class PlacedRules
{
    private const string OurRule = "our rule";
    private const string Family = "what the family permits";

    /// <summary>Everything to be said about what a design sets in, each at its layer.</summary>
    public static IEnumerable<Finding> Of(Piece piece, KeepsakeShelf shelf)
    {
        var layers = piece.Layers.OrderBy(l => l.Order).ToList();
        var seen = new Dictionary<int, int>();
        for (var i = 0; i < layers.Count; i++)
        {
            for (var j = 0; j < layers[i].Placed.Count; j++)
            {
                if (layers[i].Placed[j].KeepsakeId is not { } id)
                {
                    continue;
                }

                var path = $"layers[{i}].placed[{j}]";
                if (shelf.All.FirstOrDefault(k => k.Id == id) is not { } keepsake)
                {
                    yield return new Finding("keepsake-unknown", Severity.Stop, path, $"“{layers[i].Placed[j].Name}” is not among this commission's keepsakes. Take it out, or choose it anew.", Family);
                    continue;
                }

                seen[id] = seen.GetValueOrDefault(id) + 1;
                foreach (var finding in About(keepsake, path, seen[id], shelf))
                {
                    yield return finding;
                }
            }
        }
    }

    /// <summary>Why a keepsake must not be set in, in a sentence that says what to do; null when it may.</summary>
    public static string? Refusal(Keepsake keepsake)
    {
        ArgumentNullException.ThrowIfNull(keepsake);
        var what = $"{keepsake.Description} ({keepsake.EntryNumber})";
        var (permission, rule) = (keepsake.Permission, MaterialRules.For(keepsake.Kind));
        return keepsake switch
        {
            _ when !permission.ThingMayBeCast => $"{what}: {permission.Beyond}",
            { Custody: CustodyWhereabouts.Returned } => $"{what} has gone back to the family. Take it out of the design.",
            { Custody: CustodyWhereabouts.Withdrawn or CustodyWhereabouts.Lost or CustodyWhereabouts.Used } => $"{what} is not here: {CustodyWords.Label(keepsake.Custody).ToLowerInvariant()}. Take it out of the design.",
            { Kind: "electronics" } => $"{what}: {rule.NeedsBeforeResin}",
            _ when rule.NeverEmbed && !(rule.MayBeOverruled && keepsake.OverruledWhy.Length > 0) => $"{what}: {rule.NeedsBeforeResin}",
            _ => null,
        };
    }

    private static IEnumerable<Finding> About(Keepsake keepsake, string path, int times, KeepsakeShelf shelf)
    {
        var (permission, rule) = (keepsake.Permission, MaterialRules.For(keepsake.Kind));
        if (Refusal(keepsake) is { } refusal)
        {
            yield return new Finding("keepsake-not-permitted", Severity.Stop, path, refusal, permission.ThingMayBeCast ? rule.Source : Family);
            yield break;
        }

        if (rule.Severity is Severity.Warn)
        {
            yield return rule.At(path) with { Message = $"{keepsake.Description}: {rule.NeedsBeforeResin}" };
        }

        if (permission.MayCast == CastShare.Part)
        {
            yield return new Finding("keepsake-part", Severity.Note, path, $"Only a part of {keepsake.Description} goes in{(keepsake is { PartCount: null, PartG: null } ? "" : $", at most {CustodyWords.Amount(keepsake.PartCount, keepsake.PartG)}")}; weigh what goes back.", Family);
        }

        if (keepsake.Count == 1 && shelf.Elsewhere.TryGetValue(keepsake.Id, out var other))
        {
            yield return new Finding("keepsake-twice", Severity.Warn, path, $"{keepsake.Description} ({keepsake.EntryNumber}) is drawn into “{other}” as well, and there is only one. Check which piece it belongs to.", OurRule);
        }
        else if (times > keepsake.Count)
        {
            yield return new Finding("keepsake-twice", Severity.Warn, path, $"{keepsake.Description} ({keepsake.EntryNumber}) is set in more often than there are of it. Check the count.", OurRule);
        }
    }
}
