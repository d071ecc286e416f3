using System.Globalization;
using Studio.Commissions;
using Studio.Engine.Price;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Quotes;

/// <summary>A design and its price in the family's words; what is not in the price is not promised.</summary>
internal static class QuoteWords
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>What a layer is called to the family.</summary>
    public static string Layer(PieceLayer layer, QuoteForm form) =>
        form.LayerWords.GetValueOrDefault(layer.Name) is { } words && !string.IsNullOrWhiteSpace(words) ? words.Trim() : layer.Name;

    /// <summary>What will be in it, layer by layer from the top of the drawing, where the piece stands as the family will see it; then the photographs.</summary>
    public static IEnumerable<string> Contents(Piece piece, QuoteForm form, IReadOnlyList<Keepsake> keepsakes)
    {
        foreach (var layer in piece.Layers.OrderBy(l => l.Order))
        {
            var things = layer.Placed.Select(p => Placed(p, keepsakes)).Concat(layer.Scatter.Select(s => s.Name)).ToList();
            yield return things.Count == 0 ? Layer(layer, form) : $"{Layer(layer, form)}, with {List(things)}";
        }

        foreach (var sheet in piece.Sheets)
        {
            yield return keepsakes.FirstOrDefault(k => k.EntryNumber == sheet.Picture?.From) is { } lent
                ? $"A photograph, printed on film: {lent.Description}"
                : $"{(sheet.Name.Length > 0 ? sheet.Name : "A photograph")}, printed on film";
        }
    }

    /// <summary>What the price covers: each thing because it is a line of it.</summary>
    public static IEnumerable<string> Included(QuoteForm form, PriceResult result)
    {
        yield return "The casting, poured by hand";
        var hands = form.Work.Where(w => w.Kind == HandCost.Key && w.Minutes > 0).Select(w => Lower(w.Name.Trim())).Where(n => n.Length > 0).ToList();
        if (hands.Count > 0)
        {
            yield return $"Work by hand: {string.Join("; ", hands)}";
        }

        if (form.Bought.Exists(b => b is { Kind: FilmCost.Key, Priced: true }))
        {
            yield return "Printing on film";
        }

        foreach (var fitting in form.Bought.Where(b => b is { Kind: FittingCost.Key, Priced: true }))
        {
            yield return string.Create(English, $"{fitting.Name} ({fitting.Used:0.##})");
        }

        if (result.Packaging > 0)
        {
            yield return "Its box and packing";
        }
    }

    /// <summary>How it comes to them and what that costs; null where nobody knows how.</summary>
    public static string? Way(string handover, QuoteForm form) => (handover, DeliveryTerms.Of(form)) switch
    {
        (Handovers.Collection, _) => "You collect it from the studio.",
        (Handovers.Delivery, DeliveryTerms.Priced) => "We deliver it to you, at the price that stands here.",
        (Handovers.Delivery, DeliveryTerms.Free) => "We deliver it to you, free of charge.",
        (Handovers.Delivery, _) => "It is to be delivered to you; what that costs is not settled yet and not in this price.",
        _ => null,
    };

    private static string Placed(LayerPlaced placed, IReadOnlyList<Keepsake> keepsakes) =>
        keepsakes.FirstOrDefault(k => k.Id == placed.KeepsakeId) is { } thing ? thing.Description
        : keepsakes.FirstOrDefault(k => k.Id == placed.CopyOf) is { } original ? $"a copy of {original.Description}"
        : placed.Name;

    private static string List(List<string> things) => things.Count == 1 ? things[0] : $"{string.Join(", ", things.SkipLast(1))} and {things[^1]}";

    // an abbreviation keeps its capitals
    private static string Lower(string words) => words.Length > 1 && char.IsLower(words[1]) ? char.ToLower(words[0], English) + words[1..] : words;
}
