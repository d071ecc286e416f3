using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Tips;

/// <summary>The ledger of tips.</summary>
public sealed partial class TipsPage
{
    private static readonly (string Key, string Words)[] Orders = [("place", "By the choice they stand beside"), ("own", "Your own first"), ("text", "By their words, A to Z")];

    [Inject]
    private TipBook Book { get; set; } = default!;

    private string Count => Shown.Count == 1 ? "1 tip" : $"{Shown.Count} tips";

    protected override Task<IReadOnlyList<TipLine>> FetchAsync() => Book.ListAsync(retired: true);

    protected override string Words(TipLine line) => $"{line.Text} {line.Source} {TipPlaces.Words(line.Place)}";

    protected override string NameOf(TipLine line) => $"“{TipForm.TitleOf(line.Text)}”";

    protected override bool IsRetired(TipLine line) => line.Retired;

    protected override Task<Saved> TurnAsync(TipLine line, bool retired, string by) => Book.TurnAsync(line.Id, retired, by);

    protected override IEnumerable<TipLine> Ordered(IEnumerable<TipLine> lines) => Order switch
    {
        "own" => lines.OrderByDescending(t => t.Own),
        "text" => lines.OrderBy(t => t.Text, StringComparer.OrdinalIgnoreCase),
        _ => lines.OrderBy(t => TipPlaces.Words(t.Place), StringComparer.Ordinal),
    };
}
