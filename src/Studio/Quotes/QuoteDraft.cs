using Studio.Commissions;
using Studio.Engine.Layers;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>A price drawn from a piece's design: what will be made is what is priced.</summary>
public static class QuoteDraft
{
    /// <summary>A quote with its lines worked out, for a piece whose layers, resins and mould are loaded.</summary>
    public static Quote From(Piece piece, Commission commission, StudioSettings settings, IReadOnlyList<Resin> resins, IReadOnlyList<Material> materials) =>
        ToQuote(FormOf(piece, commission, settings, resins, materials), new Quote { CommissionId = commission.Id, PieceId = piece.Id });

    /// <summary>The form that a design begins with.</summary>
    public static QuoteForm FormOf(Piece piece, Commission commission, StudioSettings settings, IReadOnlyList<Resin> resins, IReadOnlyList<Material> materials)
    {
        var form = new QuoteForm
        {
            Currency = settings.Currency,
            OverheadMonthly = settings.OverheadMonthly,
            BenchHoursPerMonth = settings.BenchHoursPerMonth,
            RemakePercent = settings.RemakePercent,
            Packaging = settings.PackagingCost,
            Delivery = commission.Handover == Handovers.Delivery ? settings.DeliveryCost : 0,
            DeliveryAs = commission.Handover == Handovers.Delivery && settings.DeliveryCost > 0 ? DeliveryTerms.Priced : DeliveryTerms.Open,
            FeePercent = settings.FeePercent,
            FeeFixed = settings.FeeFixed,
            MarginPercent = settings.MarginPercent,
            TaxPercent = settings.TaxPercent,
            RoundTo = settings.RoundTo,
            DepositPercent = settings.DepositPercent,
        };
        TakeDesign(form, piece, commission, settings, resins, materials);
        return form;
    }

    /// <summary>Lays the design's amounts over the form's, keeping what was added by hand.</summary>
    /// <returns>False when the design can't be worked out; then nothing is changed.</returns>
    public static bool TakeDesign(QuoteForm form, Piece piece, Commission commission, StudioSettings settings, IReadOnlyList<Resin> resins, IReadOnlyList<Material> materials)
    {
        var grams = piece.Layers.Count == 0 ? null : LayersCalculation.Run(PieceBook.Design(piece));
        if (grams is not { Ok: true })
        {
            return false;
        }

        var source = new QuoteSource(piece, grams.Value, commission, settings, resins, materials);
        form.Bought = [.. CostLines.All.SelectMany(c => c.Bought(source).Select(b => Row(c.Kind, b))), .. form.Bought.Where(b => b.Kind == CostLines.Extra)];
        form.Work = [.. CostLines.All.SelectMany(c => c.Labour(source).Select(l => new WorkRow { Kind = c.Kind, Name = l.Name, Minutes = l.Minutes, RatePerHour = l.RatePerHour })), .. form.Work.Where(w => w.Kind is CostLines.Extra or CostLines.Equipment)];
        return true;
    }

    /// <summary>Writes a form and its reckoning into a quote.</summary>
    public static Quote ToQuote(QuoteForm form, Quote quote)
    {
        var reckoning = Reckoning.Of(form);
        quote.Form = form;
        quote.Currency = form.Currency;
        quote.Input = form.Input();
        quote.Result = form.Missing.Any() ? null : reckoning.Result;
        quote.FamilyWords = form.FamilyWords.Trim();
        quote.Lines = [.. reckoning.Lines, .. form.Bought.Where(b => !b.Priced).Select((b, i) => new QuoteLine { Kind = b.Kind, Order = 1000 + i, Name = b.Name, HowComputed = $"{b.Used} {b.Unit}, no price" })];
        if (form.ValidUntil is { } day)
        {
            quote.ValidUntil = day;
        }

        return quote;
    }

    private static BoughtRow Row(string kind, BoughtLine line) => new() { Kind = kind, Name = line.Name, Unit = line.Unit, Used = line.Used, PackSize = line.PackSize, PackPrice = line.PackPrice, MaterialId = line.MaterialId, ResinId = line.ResinId };
}
