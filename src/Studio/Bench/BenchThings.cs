using System.Globalization;
using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>What to lay ready for a layer: powders with their grams, loose filling, and keepsakes with what they need first.</summary>
internal static class BenchThings
{
    internal static IReadOnlyList<BenchThing> Of(PieceLayer layer, LayerResult? plan, IReadOnlyDictionary<int, Keepsake> keepsakes) =>
    [
        .. layer.Additions.Select((a, i) => new BenchThing("addition", a.Name, plan?.Additions.ElementAtOrDefault(i) is { } r ? Say.Grams(r.Grams) : Percent(a.PercentOfResin))),
        .. layer.Scatter.Select(s => new BenchThing("scatter", s.Name, s.MassG is { } g ? Say.Grams(g) : s.BulkMl is { } ml ? Say.Millilitres(ml) : "", Grams: s.MassG)),
        .. layer.Placed.Select(p => Placed(p, p.KeepsakeId is { } id ? keepsakes.GetValueOrDefault(id) : null)),
    ];

    private static BenchThing Placed(LayerPlaced placed, Keepsake? keepsake) => keepsake is null
        ? new("place", placed.Name, placed.MassG is { } g ? Say.Grams(g) : "set by hand", Grams: placed.MassG)
        : new("place", placed.Name, placed.MassG is { } own ? Say.Grams(own) : "set by hand", keepsake.Place, keepsake.EntryNumber, keepsake.Id, Need(keepsake), placed.MassG);

    // what the family permits comes before what the material needs
    private static Finding Need(Keepsake k)
    {
        var path = "keepsake " + k.EntryNumber;
        return k.Permits switch
        {
            Permission.ReturnUntouched => new("keepsake-not-permitted", Severity.Stop, path, $"The family wants {k.EntryNumber} back untouched. It must not go into the casting.", "what the family permits"),
            Permission.CopyReturn => new("keepsake-copy-only", Severity.Warn, path, $"Cast the copy of {k.EntryNumber} only; the original goes back. {MaterialRules.For(k.Kind).NeedsBeforeResin}", "what the family permits; " + MaterialRules.For(k.Kind).Source),
            _ => MaterialRules.For(k.Kind).At(path),
        };
    }

    private static string Percent(double percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} % of the resin");
}
