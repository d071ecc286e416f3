using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One mould, to read and to write; its fields are the engine's own list for the shape.</summary>
public sealed partial class MouldPage
{
    /// <summary>Every shape with a small section: an example with sound proportions, drawn by the engine itself.</summary>
    private static readonly IReadOnlyList<(string Key, string Words, MouldSketch? Sketch)> Examples =
        [.. MouldShapes.All.Select(s => (s.Key, s.DisplayName, MouldBook.Glance(new MouldSpec(s.Key, s.Dimensions.ToDictionary(d => d.Name, Example, StringComparer.Ordinal))).Sketch))];

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

    private static double Example(Dimension d) => d switch
    {
        { Name: "heightMm" } => 90,
        { Name: "bottomDiameterMm" } => 70,
        { Name: "edgeMm" } => 52,
        { Whole: true } => d.Default ?? 6,
        { Default: { } otherwise } => otherwise,
        _ => Math.Clamp(100, d.Min, d.Max),
    };

    private static string? Hint(Dimension d) => d switch
    {
        { Whole: true } => FormattableString.Invariant($"{d.Min} to {d.Max}"),
        { Default: 0 } => "0 if there is none",
        _ => null,
    };
}
