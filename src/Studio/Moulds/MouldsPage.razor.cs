using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Moulds;

/// <summary>The ledger of moulds.</summary>
public sealed partial class MouldsPage
{
    private static readonly (string Key, string Words)[] Orders = [("name", "Name, A to Z"), ("name-down", "Name, Z to A"), ("large", "Largest first"), ("shape", "Shape")];

    [Inject]
    private MouldBook Book { get; set; } = default!;

    private string Count => Shown.Count == 1 ? "1 mould" : $"{Shown.Count} moulds";

    private double Longest => Shown.Select(m => m.Sketch?.LongestMm ?? 0).DefaultIfEmpty(0).Max();

    protected override Task<IReadOnlyList<MouldLine>> FetchAsync() => Book.ListAsync(retired: true);

    protected override string Words(MouldLine line) => $"{line.Name} {MouldWords.Shape(line.Spec)}";

    protected override string NameOf(MouldLine line) => line.Name;

    protected override bool IsRetired(MouldLine line) => line.Retired;

    protected override Task<Saved> TurnAsync(MouldLine line, bool retired, string by) => retired ? Book.RetireAsync(line.Id, by) : Book.RestoreAsync(line.Id, by);

    protected override IEnumerable<MouldLine> Ordered(IEnumerable<MouldLine> lines) => Order switch
    {
        "name-down" => lines.OrderByDescending(m => m.Name, StringComparer.OrdinalIgnoreCase),
        "large" => lines.OrderByDescending(m => m.CapacityMl),
        "shape" => lines.OrderBy(m => MouldWords.Shape(m.Spec), StringComparer.Ordinal).ThenBy(m => m.CapacityMl),
        _ => lines.OrderBy(m => m.Name, StringComparer.OrdinalIgnoreCase),
    };
}
