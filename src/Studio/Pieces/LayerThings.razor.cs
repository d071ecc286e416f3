using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Engine.Custody;

namespace Studio.Pieces;

/// <summary>What goes into a layer beside resin.</summary>
public sealed partial class LayerThings
{
    private static readonly string[] Mixed = ["pigment", "glitter"];
    private static readonly string[] Loose = ["stone", "glass", "metal", "wood", "bone", "fibre", "glitter"];

    private string? next;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    [Parameter, EditorRequired]
    public int Index { get; set; }

    [Parameter]
    public bool Locked { get; set; }

    private PieceLayer Layer => Session.Piece.Layers[Index];

    private string Path => $"layers[{Index}]";

    private string? Wrong(string path) => Session.Figures.Wrong(path);

    // a zero stands for a field that was emptied; the engine asks for a number
    private static double? Blank(double value) => value == 0 ? null : value;

    private double? Grams(int i) => Session.Figures.Result?.Layers.ElementAtOrDefault(Index)?.Additions.ElementAtOrDefault(i)?.Grams;

    private void Add(int i, LayerAddition now, string path) => Session.Do(path, () => Layer.Additions[i] = now);

    private void Strew(int i, LayerScatter now, string path) => Session.Do(path, () => Layer.Scatter[i] = now);

    private void Place(int i, LayerPlaced now, string path) => Session.Do(path, () => Layer.Placed[i] = now);

    // what was added asks for its amount at once: the keys go on where the eyes are
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (next is { } there)
        {
            next = null;
            await Script.InvokeVoidAsync("studio.focusAdded", there);
        }
    }

    private void Mix(MaterialPick.Pick pick)
    {
        Session.Do("", () => Layer.Additions.Add(new(pick.Material?.Id, pick.Name, 1, pick.Material?.DensityGPerMl ?? 0)));
        next = $"#mixed-{Index}-{Layer.Additions.Count - 1} input";
    }

    private void Strew(MaterialPick.Pick pick)
    {
        Session.Do("", () => Layer.Scatter.Add(new(pick.Material?.Id, pick.Name, null, pick.Material?.DensityGPerMl, null, pick.Material?.PackingFraction)));
        next = $"#loose-{Index}-{Layer.Scatter.Count - 1} input";
    }

    private void Set(KeepsakePick.Pick pick)
    {
        var placed = pick.Keepsake is { } k ? pick.Copy ? PlacedStart.Copy(k) : PlacedStart.Of(k) : new LayerPlaced(null, pick.Name, null, null, 0);
        Session.Do("", () => Layer.Placed.Add(placed));
        next = placed is { MassG: not null, DensityGPerMl: not null } ? $"#place-{Index} input" : $"#placed-{Index}-{Layer.Placed.Count - 1} input";
    }

    private LayerScatter Other(LayerScatter s) => s.BulkMl is null
        ? s with { BulkMl = 0, MassG = null, DensityGPerMl = null }
        : s with { BulkMl = null, PackingFraction = null, DensityGPerMl = Session.Desk.Materials.FirstOrDefault(m => m.Id == s.MaterialId)?.DensityGPerMl };

    private LayerPlaced Other(LayerPlaced p) => p.DisplacedMl is null
        ? p with { DisplacedMl = 0, MassG = null, DensityGPerMl = null }
        : p with { DisplacedMl = null, MassG = Session.Desk.Keepsakes.All.FirstOrDefault(k => k.Id == p.KeepsakeId)?.MassG };

    private LayerPlaced? CopyOf(LayerPlaced p) =>
        Session.Desk.Keepsakes.All.FirstOrDefault(k => k.Id == p.KeepsakeId) is { } keepsake && keepsake.Permission.MayCast == CastShare.Copy ? PlacedStart.Copy(keepsake) : null;
}
