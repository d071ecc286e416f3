using System.Globalization;
using Studio.Commissions;
using Studio.Engine.Custody;
using Studio.Engine.Layers;
using Studio.Engine.Time;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>What is looked at before a quote leaves.</summary>
/// <param name="Quote">The draft as it was kept.</param>
/// <param name="Piece">Its design with mould, layers, resins and commission.</param>
/// <param name="Materials">The stores.</param>
/// <param name="Invented">Prices that are still the catalogue's.</param>
/// <param name="Time">When the piece can be with them; null where it is not reckoned any more.</param>
/// <param name="Differs">What the design asks for now and the price does not hold.</param>
/// <param name="Today">In the studio's zone.</param>
public sealed record SendSource(Quote Quote, Piece Piece, IReadOnlyList<Material> Materials, InventedPrices Invented, TimeResult? Time, IReadOnlyList<string> Differs, DateOnly Today)
{
    /// <summary>The commission's keepsakes, as they are now.</summary>
    public IReadOnlyList<Keepsake> Keepsakes { get; init; } = [];

    /// <summary>Keepsakes that another piece of the commission has in its drawing.</summary>
    public IReadOnlyCollection<int> Drawn { get; init; } = [];
}

/// <summary>What is still open in a draft: promises without a price, prices that are no prices, days that cannot be kept.</summary>
public static class SendPoints
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>All of them at once, those that refuse first.</summary>
    public static IReadOnlyList<SendPoint> Of(SendSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return [.. Untrue(source).Concat(Undrawn(source)).Concat(Unpriced(source)).Concat(Way(source)).Concat(CellPoints(source)).Concat(Invented(source)).Concat(Early(source)).OrderByDescending(p => p.Refuses)];
    }

    private static IEnumerable<SendPoint> Untrue(SendSource s)
    {
        var (form, today) = (s.Quote.Form, s.Today);
        if (s.Piece.Layers.Count == 0 || !LayersCalculation.Run(PieceBook.Design(s.Piece)).Ok)
        {
            yield return new("no-design", "The drawing has figures that need another look, so the paper cannot say what will be made. Mend the drawing.", Drawing(s), "To the drawing") { Refuses = true };
        }

        foreach (var why in s.Piece.Layers.SelectMany(l => l.Placed).Select(p => s.Keepsakes.FirstOrDefault(k => k.Id == p.KeepsakeId)).OfType<Keepsake>().DistinctBy(k => k.Id).Select(PlacedRules.Refusal).OfType<string>())
        {
            yield return new("keepsake-not-castable", $"The paper would promise to set in what cannot be. {why}", Drawing(s), "To the drawing") { Refuses = true };
        }

        if (s.Quote.ValidUntil < today)
        {
            yield return new("offer-over", $"The paper would say that the offer stands until {Day(s.Quote.ValidUntil)}, and that day is past. Choose a later one.") { Refuses = true };
        }

        if (form.PromiseOn is { } promised && promised < today)
        {
            yield return new("promise-past", $"The paper would promise it for {Day(promised)}, and that day is past. Promise a later one, or none.") { Refuses = true };
        }
    }

    // to be cast, and drawn in nothing: the paper would promise it all the same
    private static IEnumerable<SendPoint> Undrawn(SendSource s)
    {
        var drawn = s.Drawn.Concat(s.Piece.Layers.SelectMany(l => l.Placed).Select(p => p.KeepsakeId).OfType<int>()).ToHashSet();
        return s.Keepsakes.Where(k => k.Custody == CustodyWhereabouts.Here && k.Permission.ThingMayBeCast && !drawn.Contains(k.Id))
            .Select(k => new SendPoint("keepsake-not-drawn", $"{k.Description} ({k.EntryNumber}) is to be cast, so the paper says that it is in the piece, and no drawing of this commission has it. Draw it in, or correct what they permit.", Drawing(s), "To the drawing"));
    }

    private static IEnumerable<SendPoint> Unpriced(SendSource s)
    {
        var bought = s.Quote.Form.Bought;
        if (s.Piece.Sheets.Count > 0 && !bought.Exists(b => b.Kind == FilmCost.Key))
        {
            yield return new("film-not-priced", "A photograph stands in the design, and no film is in the price. Take the drawing's amounts, or add what it costs.", Drawing(s), "To the drawing");
        }

        if (BoxCost.Parts(s.Piece).Count > 0 && !bought.Exists(b => b.Kind == BoxCost.Key))
        {
            yield return new("box-not-priced", "A box for lights stands in the design, and no sheet for it is in the price. Take the drawing's amounts, or add what it costs.", Drawing(s), "To the drawing");
        }

        if (s.Differs.Count > 0)
        {
            yield return new("design-differs", $"The paper shows the drawing of today, and the price is of another. {string.Join("; ", s.Differs)}. Take the drawing's amounts.", Drawing(s), "To the drawing");
        }
    }

    private static IEnumerable<SendPoint> Way(SendSource s)
    {
        var (form, handover, link) = (s.Quote.Form, s.Piece.Commission!.Handover, $"/commissions/{s.Piece.CommissionId}");
        if (handover == Handovers.Delivery && DeliveryTerms.Of(form) == DeliveryTerms.Open)
        {
            yield return new("delivery-open", "It is to be delivered, and nobody decided what that costs them. Enter a price under Delivery, or choose that it is included, free.");
        }

        if (handover == Handovers.Collection && form.Delivery > 0)
        {
            yield return new("delivery-unwanted", "They collect it, and the price holds delivery. Take it out, or say in the commission that it is delivered.", link, "To the commission");
        }

        if (handover is not (Handovers.Delivery or Handovers.Collection))
        {
            yield return new("handover-unknown", $"How it comes to them is not known (“{handover}” is noted), so the paper says nothing of it. Say it in the commission.", link, "To the commission");
        }
    }

    private static IEnumerable<SendPoint> CellPoints(SendSource s) => CellCaution.Of(s.Piece, s.Materials).Unknown.Select(f => f.MaterialId is { } id
        ? new SendPoint("cell-unknown", $"Nobody has said whether “{f.Name}” is or takes a button cell, of which the paper has to warn. Look, and say it in the stores.", $"/stores/materials/{id}", $"To {f.Name}")
        : new SendPoint("cell-unknown", $"“{f.Name}” is not in the stores, so nobody knows whether it takes a button cell, of which the paper has to warn. Add it there and choose it in the drawing.", Drawing(s), "To the drawing"));

    // a figure that the maker typed over the stores' is the maker's own
    private static IEnumerable<SendPoint> Invented(SendSource s)
    {
        foreach (var row in s.Quote.Form.Bought.Where(b => b.Priced))
        {
            if (Material(s, row) is { } material && s.Invented.Materials.Contains(material.Id) && row.PackPrice == material.PackPrice && row.PackSize == (decimal)material.PackSize)
            {
                yield return new("price-invented", $"The price of {material.Name} is the catalogue's invented one. Enter what you pay, then take the drawing's amounts.", $"/stores/materials/{material.Id}", $"To {material.Name}");
            }

            if (Resin(s, row) is { } resin && s.Invented.Resins.Contains(resin.Id) && resin.Packs.Exists(p => (decimal)p.SizeG == row.PackSize && p.Price == row.PackPrice))
            {
                yield return new("price-invented", $"The price of {resin.Name} is the catalogue's invented one. Enter what you pay, then take the drawing's amounts.", $"/stores/resins/{resin.Id}", $"To {resin.Name}");
            }
        }
    }

    // a quote of before 0.4 knows only names
    private static Material? Material(SendSource s, BoughtRow row) =>
        row.Kind == CostLines.Extra || row.Kind == ResinCost.Key ? null : s.Materials.FirstOrDefault(m => row.MaterialId is { } id ? m.Id == id : m.Name == row.Name);

    private static Resins.Resin? Resin(SendSource s, BoughtRow row) =>
        row.Kind != ResinCost.Key ? null : s.Piece.Layers.Select(l => l.Resin).OfType<Resins.Resin>().FirstOrDefault(r => row.ResinId is { } id ? r.Id == id : r.Name == row.Name);

    private static IEnumerable<SendPoint> Early(SendSource s)
    {
        if (s.Quote.Form.PromiseOn is { } promised && promised >= s.Today && s.Time?.EarliestOn is { } earliest && promised < earliest)
        {
            yield return new("promise-early", $"You promise it for {Day(promised)}, and reckoned from the drawing it can be with them on {Day(earliest)} at the earliest. Promise a later day, or say how you keep this one.");
        }
    }

    private static string Drawing(SendSource s) => $"/pieces/{s.Piece.Id}";

    private static string Day(DateOnly day) => day.ToString("d MMMM yyyy", English);
}
