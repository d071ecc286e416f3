using Microsoft.AspNetCore.Components;
using Studio.Engine.Layers;
using Studio.Shell;

namespace Studio.Pieces;

/// <summary>One layer in the list beside the drawing.</summary>
public sealed partial class LayerRow
{
    private static readonly (LayerMeasure Key, string Words)[] Ways =
        [(LayerMeasure.To, "up to a height"), (LayerMeasure.Thickness, "so thick"), (LayerMeasure.Resin, "use up so much resin")];

    private UnreadNumbers unread = new();
    private LayerMeasure how;
    private int of;

    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    /// <summary>Place from the bottom of the mould.</summary>
    [Parameter, EditorRequired]
    public int Index { get; set; }

    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>Told when the layer was asked to go.</summary>
    [Parameter]
    public EventCallback<int> OnRemove { get; set; }

    private PieceLayer Layer => Session.Piece.Layers[Index];

    private string Path => $"layers[{Index}]";

    private bool IsOpen => Session.Open == Index;

    private bool Locked => Index < Session.Settled;

    // while another layer's number is half typed, this one shows what it came to before
    private LayerResult? Result => Session.Figures.AnyWrong(Path) || Session.Good?.Layers.Count != Session.Piece.Layers.Count ? null : Session.Good.Layers[Index];

    private double? Far => how switch { LayerMeasure.To => Layer.ToMm, LayerMeasure.Thickness => Layer.ThicknessMm, _ => Layer.ResinMl };

    private string FarLabel => how switch { LayerMeasure.To => "Height of its top", LayerMeasure.Thickness => "Thickness", _ => "Resin to use up" };

    protected override void OnInitialized() => unread = new(Session.Unread);

    // an emptied field says nothing about the way; then the way chosen before stays
    protected override void OnParametersSet()
    {
        if (Layer.Id != of || Layer.ToMm is not null || Layer.ThicknessMm is not null || Layer.ResinMl is not null)
        {
            (of, how) = (Layer.Id, Stacking.Of(Layer));
        }
    }

    // a row whose layer was just taken out waits for the page to take it away
    protected override bool ShouldRender() => Index < Session.Piece.Layers.Count;

    private void Toggle()
    {
        Session.Open = IsOpen ? -1 : Index;
        Session.Show();
    }

    private string? Wrong(string field) => Session.Figures.Wrong($"{Path}.{field}");

    private void Name(string? name) => Session.Do(Path + ".name", () => Layer.Name = name ?? "");

    private void Colour(ChangeEventArgs e) => Session.Do(Path + ".colour", () => Layer.Colour = e.Value as string ?? Layer.Colour);

    private void TakeResin(int? id) => Session.Do("", () => (Layer.ResinId, Layer.Resin) = (id ?? 0, Session.Desk.Resins.FirstOrDefault(r => r.Id == id)));

    private void TakeFar(double? value) => Session.Do(Path + ".far", () => Stacking.Set(Layer, how, value));

    private void Way(LayerMeasure way)
    {
        how = way;
        var value = Stacking.Value(Session.Good?.Layers.ElementAtOrDefault(Index), way);
        Session.Do("", () => Stacking.Set(Layer, way, value));
    }

    private Task Removed() => OnRemove.InvokeAsync(Index);
}
