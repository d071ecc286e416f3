using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Engine;

namespace Studio.Resins;

/// <summary>One resin's data sheet, to read and to write.</summary>
public sealed partial class ResinPage
{
    private int uses;

    [Inject]
    private ResinBook Book { get; set; } = default!;

    protected override string Thing => "resin";

    protected override string Ledger => "/stores/resins";

    private ResinGlance Glance => ResinBook.Glance(Typed);

    /// <summary>What is doubtful about a field.</summary>
    internal IEnumerable<Finding> Doubts(string path) => ResinDoubts.Of(Typed).Where(f => f.Path == path);

    /// <summary>What is doubtful about the fields of one row.</summary>
    internal IEnumerable<Finding> DoubtsIn(string row) => ResinDoubts.Of(Typed).Where(f => f.Path.StartsWith(row, StringComparison.Ordinal));

    protected override Task<ResinForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(ResinForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => retired ? Book.RetireAsync(id, by) : Book.RestoreAsync(id, by);

    protected override async Task BesidesAsync(int id) => uses = await Book.UsesAsync(id);
}
