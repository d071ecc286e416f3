using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Engine;

namespace Studio.Stores;

/// <summary>One material, to read and to write.</summary>
public sealed partial class MaterialPage
{
    private bool invented;

    [Inject]
    private MaterialBook Book { get; set; } = default!;

    protected override string Thing => "material";

    protected override string Ledger => "/stores/materials";

    private MaterialGlance Glance => MaterialBook.Glance(Typed);

    protected override Task<MaterialForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(MaterialForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => retired ? Book.RetireAsync(id, by) : Book.RestoreAsync(id, by);

    protected override async Task BesidesAsync(int id) => invented = await Book.PriceInventedAsync(id);

    private static string UnitWords(string? unit) => MaterialKinds.Units.FirstOrDefault(u => u.Key == unit).Words ?? "";

    private IEnumerable<Finding> Doubts(string path) => Glance.Doubts.Where(f => f.Path == path);
}
