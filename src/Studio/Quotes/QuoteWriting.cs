using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Drawing;
using Studio.Engine.Custody;
using Studio.Engine.Moulds;
using Studio.Engine.Price;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Pieces;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>What a paper is written from: the quote, its piece with mould, layers, resins, commission and customer, and how the studio writes.</summary>
/// <param name="Replaces">The version before it that had been sent; null for none.</param>
/// <param name="Now">[UTC].</param>
internal sealed record QuoteOnPaper(Quote Quote, Piece Piece, StudioSettings Settings, int? Replaces, DateTime Now);

/// <summary>Writes a quote for the family: prices only, and what will be made in plain words.</summary>
internal static class QuoteWriting
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The paper as the records are now.</summary>
    /// <param name="state">For the head; empty for the one that is sent.</param>
    /// <param name="drawnAgain">A sentence for one that is not the paper that was sent.</param>
    /// <exception cref="InvalidOperationException">The quote has no total yet.</exception>
    public static async Task<PaperFile> WriteAsync(StudioDb db, QuoteOnPaper sheet, string state, string? drawnAgain = null)
    {
        var result = sheet.Quote.Result ?? throw new InvalidOperationException("A quote without a total has no paper.");
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == sheet.Piece.CommissionId).OrderBy(k => k.Id).ToListAsync();
        var model = Model(sheet, result, keepsakes, CellCaution.Of(sheet.Piece, await db.Set<Material>().AsNoTracking().ToListAsync())) with { State = state, DrawnAgain = drawnAgain };
        return new(QuotePaper.Create(model, PaperHouse.Of(sheet.Settings).Size), FileName(sheet));
    }

    /// <summary>Such as "26-001, version 2".</summary>
    public static string Number(QuoteOnPaper sheet) => string.Create(English, $"{sheet.Piece.Commission!.Number}, version {sheet.Quote.VersionNo}");

    /// <summary>The section as the piece will stand, without the part of the mould that stays empty; null where it cannot be worked out.</summary>
    public static PaperDrawing? Drawn(Piece piece, QuoteForm form)
    {
        var figures = PieceBook.Figures(piece);
        if (figures.Result is null || PieceBook.Section(piece, figures.Result, _ => LayerState.Poured, asStands: false, figures.Sheets) is not { } section)
        {
            return null;
        }

        var words = piece.Layers.OrderBy(l => l.Order).Select(l => QuoteWords.Layer(l, form)).ToList();
        var cast = section.CastOnly();
        cast = cast with { Bands = [.. cast.Bands.Select((b, i) => b with { Layer = b.Layer with { Name = words[i] } })] };
        return SectionPaper.Of(cast, detail: false) with { Alt = $"The piece cut through the middle as it will stand. From the top: {string.Join(", ", words)}." };
    }

    private static QuotePaperModel Model(QuoteOnPaper sheet, PriceResult result, List<Keepsake> keepsakes, CellCaution cells)
    {
        var (quote, piece, form, commission) = (sheet.Quote, sheet.Piece, sheet.Quote.Form, sheet.Piece.Commission!);
        var house = PaperHouse.Of(sheet.Settings, quote.Currency);
        var customer = commission.Customer!;
        var priced = commission.Handover == Handovers.Delivery && DeliveryTerms.Of(form) == DeliveryTerms.Priced;
        return new()
        {
            Studio = house.Letterhead,
            Format = house.Format,
            Number = Number(sheet),
            Commission = commission.Number,
            Replaces = sheet.Replaces,
            WrittenUtc = quote.SentAt ?? sheet.Now,
            For = new(customer.Name, PaperHouse.Lines(customer.Address), customer.Phone, customer.Email),
            Remembers = commission.Remembers.Length > 0 ? commission.Remembers : null,
            Message = quote.FamilyWords.Length > 0 ? quote.FamilyWords : null,
            Pieces = [new(piece.Name, commission.Title, Size(piece, house.Format), [.. QuoteWords.Contents(piece, form, keepsakes)], Drawn(piece, form))],
            Included = [.. QuoteWords.Included(form, result)],
            Net = result.NetPrice,
            TaxName = sheet.Settings.TaxName,
            TaxPercent = quote.Input.TaxPercent,
            Tax = result.Tax,
            Total = result.Total,
            Deposit = result.Deposit,
            Balance = result.Balance,
            ValidUntil = quote.ValidUntil,
            NeededBy = commission.NeededBy,
            PromiseOn = form.PromiseOn,
            Delivery = QuoteWords.Way(commission.Handover, form),
            DeliveryPrice = priced ? result.Delivery : 0,
            Keepsakes = [.. keepsakes.Where(k => k.Custody is not (CustodyWhereabouts.Returned or CustodyWhereabouts.Withdrawn)).Select(k => new QuotePaperKeepsake(k.Description, Permissions.For(k.Permits).OnQuote, k.EntryNumber))],
            HasLights = cells.Lit,
            HasButtonCells = cells.Holds,
            CellsNotSettled = [.. cells.Unknown.Select(u => u.Name)],
        };
    }

    private static string? Size(Piece piece, PaperFormat format) =>
        PieceBook.Figures(piece).Result is { Layers.Count: > 0 } figures && MouldShapes.Make(piece.Mould!.Spec) is { Ok: true } mould
            ? CastingWords.Of(CastingSize.Of(mould.Value, figures.Layers[^1].ToMm), format)
            : null;

    private static string FileName(QuoteOnPaper sheet) => string.Create(English, $"quote-{sheet.Piece.Commission!.Number}-{sheet.Quote.VersionNo}.pdf");
}
