using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One mould, to read and to write; its fields are the engine's own list for the shape.</summary>
public sealed partial class MouldPage
{
    private int uses;
    private ((string, bool, double, double?) Key, MouldGlance? Value) glance;

    [Inject]
    private MouldBook Book { get; set; } = default!;

    protected override string Thing => "mould";

    protected override string Ledger => "/stores/moulds";

    private bool Scaled => !Typed.Remeasured && Typed.VolumeFactor != 1;

    // reading a mesh's section takes a while, and a page asks for it several times a drawing
    private MouldGlance Glance
    {
        get
        {
            var key = (Typed.Measures + JsonColumn.Write(Typed.Fill), Typed.Remeasured, Typed.VolumeFactor, Typed.VolumeSpreadPercent);
            glance = glance.Key == key && glance.Value is not null ? glance : (key, Book.Look(Typed));
            return glance.Value!;
        }
    }

    protected override Task<MouldForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(MouldForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => retired ? Book.RetireAsync(id, by) : Book.RestoreAsync(id, by);

    protected override async Task BesidesAsync(int id) => uses = await Book.UsesAsync(id);

    private void TakeMesh(MouldMesh mesh) => Typed.Mesh = mesh;

    private static string? Hint(Dimension d) => d switch
    {
        { Whole: true } => FormattableString.Invariant($"{d.Min} to {d.Max}"),
        { Default: 0 } => "0 if there is none",
        _ => null,
    };
}
