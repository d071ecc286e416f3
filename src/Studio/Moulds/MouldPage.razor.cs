using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One mould, to read and to write; its fields are the engine's own list for the shape.</summary>
public sealed partial class MouldPage
{
    private int uses;

    [Inject]
    private MouldBook Book { get; set; } = default!;

    protected override string Thing => "mould";

    protected override string Ledger => "/stores/moulds";

    private MouldGlance Glance => MouldBook.Glance(Sheet.Spec);

    protected override Task<MouldForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(MouldForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => retired ? Book.RetireAsync(id, by) : Book.RestoreAsync(id, by);

    protected override async Task BesidesAsync(int id) => uses = await Book.UsesAsync(id);

    private static string? Hint(Dimension d) => d switch
    {
        { Whole: true } => FormattableString.Invariant($"{d.Min} to {d.Max}"),
        { Default: 0 } => "0 if there is none",
        _ => null,
    };
}
