using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Stores;

/// <summary>The ledger of materials.</summary>
public sealed partial class MaterialsPage
{
    private static readonly (string Key, string Words)[] Orders = [("name", "Name, A to Z"), ("name-down", "Name, Z to A"), ("kind", "Kind"), ("density", "Lightest first")];

    [Inject]
    private MaterialBook Book { get; set; } = default!;

    private string Count => Shown.Count == 1 ? "1 material" : $"{Shown.Count} materials";

    protected override Task<IReadOnlyList<MaterialRow>> FetchAsync() => Book.ListAsync(retired: true);

    protected override string Words(MaterialRow line) => $"{line.Name} {MaterialKinds.Words(line.Kind)} {line.Kind}";

    protected override string NameOf(MaterialRow line) => line.Name;

    protected override bool IsRetired(MaterialRow line) => line.Retired;

    protected override Task<Saved> TurnAsync(MaterialRow line, bool retired, string by) => retired ? Book.RetireAsync(line.Id, by) : Book.RestoreAsync(line.Id, by);

    protected override IEnumerable<MaterialRow> Ordered(IEnumerable<MaterialRow> lines) => Order switch
    {
        "name-down" => lines.OrderByDescending(m => m.Name, StringComparer.OrdinalIgnoreCase),
        "kind" => lines.OrderBy(m => MaterialKinds.Words(m.Kind), StringComparer.OrdinalIgnoreCase).ThenBy(m => m.Name, StringComparer.OrdinalIgnoreCase),
        "density" => lines.OrderBy(m => m.DensityGPerMl ?? double.MaxValue),
        _ => lines.OrderBy(m => m.Name, StringComparer.OrdinalIgnoreCase),
    };
}
