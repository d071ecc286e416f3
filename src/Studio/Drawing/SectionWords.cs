using System.Globalization;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>A section in words, for whoever hears it rather than sees it.</summary>
internal static class SectionWords
{
    private static readonly (LayerState State, string Words)[] Order =
    [
        (LayerState.Poured, "poured"), (LayerState.Curing, "curing"), (LayerState.Now, "now"), (LayerState.Planned, "not yet poured"),
    ];

    /// <summary>"Pyramid 150 mm; layer 1 of 4 poured, layer 2 curing, layers 3 and 4 not yet poured".</summary>
    public static string Of(SectionView view)
    {
        var mould = string.Create(CultureInfo.InvariantCulture, $"{view.MouldName} {view.HeightMm:0.#} mm{(view.Mould.Shape.Needs is MouldNeeds.Readings ? ", drawn round because its outline is not known" : "")}{(view.AsStands ? "" : ", turned over as it will stand")}");
        var said = view.Bands.Count == 0 ? "no layers yet" : States(view.Bands);
        return $"{mould}; {said}{(view.Former.Count > 0 ? "; a box keeps room for lights" : "")}{string.Concat(view.Sheets.Select(s => $"; {s.Name} {(s.Filled ? "seen from its face" : "seen on edge")}"))}";
    }

    /// <summary>What the outline is not.</summary>
    public static string Caveat(SectionView view) => view.Mould.Shape.Needs switch
    {
        MouldNeeds.Readings => "Known by a water fill alone: its outline is not known. It is drawn round, with the area that the fill gives at each height.",
        MouldNeeds.Mesh => "",
        _ => view.Mould.Outline.PlanAt(view.HeightMm) is { Count: > 2 and < 13 and var sides } && sides % 2 == 1 ? "An odd number of sides: drawn as wide as it looks from the front." : "",
    };

    /// <summary>The same with every layer's name and height, from the bottom as it stands for casting.</summary>
    public static string Whole(SectionView view) =>
        (view.Bands.Count == 0 ? Of(view) : Of(view) + ". In pouring order: " + string.Join("; ", view.Bands.Select(Band)) + ".") + (view.Caveat.Length > 0 ? " " + view.Caveat : "");

    /// <summary>A state in a word or two.</summary>
    public static string Of(LayerState state) => Array.Find(Order, o => o.State == state).Words;

    private static string Band(SectionBand b) =>
        string.Create(CultureInfo.InvariantCulture, $"{b.Number} {b.Layer.Name}, {b.Layer.FromMm:0.#} to {b.Layer.ToMm:0.#} mm");

    private static string States(IReadOnlyList<SectionBand> bands)
    {
        if (bands.All(b => b.Layer.State == LayerState.Planned))
        {
            return bands.Count == 1 ? "1 layer, not yet poured" : $"{bands.Count} layers, none poured yet";
        }

        var of = $" of {bands.Count}";
        var parts = new List<string>();
        foreach (var (state, words) in Order)
        {
            var numbers = bands.Where(b => b.Layer.State == state).Select(b => b.Number.ToString(CultureInfo.InvariantCulture)).ToList();
            if (numbers.Count > 0)
            {
                parts.Add($"{(numbers.Count == 1 ? "layer" : "layers")} {List(numbers)}{of} {words}");
                of = "";
            }
        }

        return string.Join(", ", parts);
    }

    private static string List(List<string> words) => words.Count < 2 ? string.Concat(words) : string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1];
}
