namespace Studio.Tips;

/// <summary>The choices that tips stand beside: a key for the row and words for the page that edits it.</summary>
public static class TipPlaces
{
    public const string Layer = "layer";
    public const string DeepLayer = "layer-deep";
    public const string Scatter = "scatter";
    public const string Placed = "placed";
    public const string Former = "former";
    public const string Photograph = "photograph";
    public const string Parts = "parts";
    public const string Mould = "mould";

    public static IReadOnlyList<(string Key, string Words)> All { get; } =
    [
        (Layer, "A layer and its colour"),
        (DeepLayer, "A deep layer"),
        (Scatter, "Loose filling"),
        (Placed, "Things set in by hand"),
        (Former, "Room for lights"),
        (Photograph, "The photograph"),
        (Parts, "Parts to cut"),
        (Mould, "The mould"),
    ];

    public static string Words(string key) => All.FirstOrDefault(p => p.Key == key).Words ?? key;
}
