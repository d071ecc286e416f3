using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Resins;

/// <summary>The ledger of resins.</summary>
public sealed partial class ResinsPage
{
    private static readonly (string Key, string Words)[] Orders = [("name", "Name, A to Z"), ("name-down", "Name, Z to A"), ("depth", "Deepest pour first"), ("price", "Cheapest first")];

    [Inject]
    private ResinBook Book { get; set; } = default!;

    private string Count => Shown.Count == 1 ? "1 resin" : $"{Shown.Count} resins";

    protected override Task<IReadOnlyList<ResinLine>> FetchAsync() => Book.ListAsync(retired: true);

    protected override string Words(ResinLine line) => $"{line.Name} {ResinWords.Class(line.Class)}";

    protected override string NameOf(ResinLine line) => line.Name;

    protected override bool IsRetired(ResinLine line) => line.Retired;

    protected override Task<Saved> TurnAsync(ResinLine line, bool retired, string by) => retired ? Book.RetireAsync(line.Id, by) : Book.RestoreAsync(line.Id, by);

    protected override IEnumerable<ResinLine> Ordered(IEnumerable<ResinLine> lines) => Order switch
    {
        "name-down" => lines.OrderByDescending(r => r.Name, StringComparer.OrdinalIgnoreCase),
        "depth" => lines.OrderByDescending(r => r.MaxPourMm),
        "price" => lines.OrderBy(r => r.PricePerKg ?? decimal.MaxValue),
        _ => lines.OrderBy(r => r.Name, StringComparer.OrdinalIgnoreCase),
    };
}
