using System.Globalization;
using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>What a layer's sheet is asked about: the design, the layer, and what is known of the keepsakes in it.</summary>
/// <param name="Piece">With mould, layers and resins.</param>
/// <param name="Layer">The layer.</param>
/// <param name="Plan">Worked out; null when the design has errors.</param>
/// <param name="Films">The photographs, worked out.</param>
/// <param name="Keepsakes">By id, with what their logs say.</param>
/// <param name="Units"><c>metric</c> or <c>inch</c>.</param>
internal sealed record LayerAsk(Piece Piece, PieceLayer Layer, LayersResult? Plan, IReadOnlyList<FilmFigures> Films, IReadOnlyDictionary<int, (Keepsake Keepsake, CustodyState Now)> Keepsakes, string Units)
{
    /// <summary>The layer's own figures.</summary>
    public LayerResult? Level { get; } = Plan?.Layers.ElementAtOrDefault(Layer.Order);

    /// <summary>True where something between two heights is in this layer, its floor counted to it and its top not.</summary>
    public bool Holds(double fromMm, double toMm) => Level is { } l && (fromMm < l.ToMm - Tie && (toMm > l.FromMm + Tie || (Flat(fromMm, toMm) && fromMm >= l.FromMm - Tie)));

    /// <summary>True where it begins here.</summary>
    public bool Begins(double fromMm) => Level is { } l && fromMm >= l.FromMm - Tie && fromMm < l.ToMm - Tie;

    private const double Tie = 1e-6;

    private static bool Flat(double fromMm, double toMm) => toMm - fromMm < Tie;
}

/// <summary>
/// Names everything that is in a layer's height or begins in it. Each kind of part has its namer by the type that the design keeps it in:
/// a test walks the design's own types, so that a new kind of part is red until it is named here.
/// </summary>
internal static class BenchThings
{
    /// <summary>By the type of the part.</summary>
    public static IReadOnlyDictionary<Type, Func<LayerAsk, IEnumerable<BenchThing>>> Namers { get; } = new Dictionary<Type, Func<LayerAsk, IEnumerable<BenchThing>>>
    {
        [typeof(FormerSpec)] = BenchFormer.Of,
        [typeof(PieceFilm)] = BenchFilm.Of,
        [typeof(LayerAddition)] = Additions,
        [typeof(LayerScatter)] = Scatter,
        [typeof(LayerPlaced)] = Placed,
    };

    /// <summary>All of a layer, in the order in which hands need it.</summary>
    internal static IReadOnlyList<BenchThing> Of(LayerAsk ask) => [.. Namers.Values.SelectMany(name => name(ask))];

    private static IEnumerable<BenchThing> Additions(LayerAsk ask) => ask.Layer.Additions.Select((a, i) =>
        new BenchThing("addition", a.Name, ask.Level?.Additions.ElementAtOrDefault(i) is { } r ? Stirred(r.Grams, a.PercentOfResin) : Percent(a.PercentOfResin), Grams: ask.Level?.Additions.ElementAtOrDefault(i)?.Grams));

    private static IEnumerable<BenchThing> Scatter(LayerAsk ask) => ask.Layer.Scatter.Select(s =>
        new BenchThing("scatter", s.Name, s.MassG is { } g ? Say.Grams(g) : s.BulkMl is { } ml ? Say.Millilitres(ml) + ", heaped" : "", Grams: s.MassG));

    private static IEnumerable<BenchThing> Placed(LayerAsk ask) => ask.Layer.Placed.Select(p =>
    {
        var amount = p.MassG is { } g ? Say.Grams(g) : "set by hand";
        return (p.KeepsakeId ?? p.CopyOf) is { } id && ask.Keepsakes.TryGetValue(id, out var known)
            ? new BenchThing("place", p.Name, amount, known.Now.Place, known.Keepsake.EntryNumber, id, Need(known.Keepsake, known.Now, p.CopyOf is not null), p.MassG) { Copy = p.CopyOf is not null }
            : new BenchThing("place", p.Name, amount, Grams: p.MassG);
    });

    // what the family permits comes before what the material needs
    internal static Finding Need(Keepsake k, CustodyState now, bool copy)
    {
        var path = "keepsake " + k.EntryNumber;
        return CustodyRules.Refusal(copy ? CustodyKind.CopySetIn : CustodyKind.SetIn, k.Subject, now) is { } refusal
            ? new("keepsake-" + refusal.Code, Severity.Stop, path, $"{k.EntryNumber}: {refusal.Message}", "what the family permits, and where it is")
            : copy ? new("keepsake-copy-only", Severity.Note, path, $"The copy of {k.EntryNumber} goes in; the original stays out and goes back.", "what the family permits")
            : MaterialRules.For(k.Kind).At(path);
    }

    // what the scale does not show is said as a share too, so that a hand knows how little is meant
    private static string Stirred(double grams, double percent) => Say.Grams(grams) is var said && said.StartsWith("less", StringComparison.Ordinal) ? $"{said}, {Percent(percent)}" : said;

    private static string Percent(double percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.####} % of the resin");
}
