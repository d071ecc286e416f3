using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Drawing;
using Studio.Engine.Custody;
using Studio.Engine.Price;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>Shapes a quote for the family's paper: prices only, and what will be made in plain words.</summary>
public sealed class QuotePaperBook(QuoteBook quotes, IDbContextFactory<StudioDb> factory, SettingsBook settingsBook)
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The paper and its file name; null when there is no such quote or it has no total yet.</summary>
    public async Task<(byte[] Content, string FileName)?> PaperAsync(int id)
    {
        if (await quotes.ViewAsync(id) is not { Quote.Result: { } result } view)
        {
            return null;
        }

        var settings = await settingsBook.ReadAsync();
        var model = Model(view, result, settings, await KeepsakesAsync(view));
        return (QuotePaper.Create(model, PaperHouse.Sheet(settings.Paper)), $"quote-{view.Commission.Number}-{view.Quote.VersionNo}.pdf");
    }

    private static QuotePaperModel Model(QuoteView view, PriceResult result, StudioSettings settings, List<QuotePaperKeepsake> keepsakes)
    {
        var (quote, piece, commission) = (view.Quote, view.Piece, view.Commission);
        var customer = commission.Customer!;
        var house = PaperHouse.Of(settings, quote.Currency);
        var figures = PieceBook.Figures(piece);
        var section = PieceBook.Section(piece, figures.Result, _ => LayerState.Poured, asStands: false);
        return new()
        {
            Studio = house.Letterhead,
            Format = house.Format,
            Number = string.Create(English, $"{commission.Number}, version {quote.VersionNo}"),
            WrittenUtc = quote.SentAt ?? view.Now,
            For = new(customer.Name, PaperHouse.Lines(customer.Address), customer.Phone, customer.Email),
            Remembers = commission.Remembers.Length > 0 ? commission.Remembers : null,
            Message = quote.FamilyWords.Length > 0 ? quote.FamilyWords : null,
            Pieces = [new(piece.Name, commission.Title, section is null ? null : Size(section, settings), [.. Contents(piece)], section is null ? null : SectionPaper.Of(section, detail: false))],
            Included = [.. Included(piece, result)],
            Net = result.NetPrice,
            TaxName = settings.TaxName,
            TaxPercent = quote.Input.TaxPercent,
            Tax = result.Tax,
            Total = result.Total,
            Deposit = result.Deposit,
            Balance = result.Balance,
            ValidUntil = quote.ValidUntil,
            NeededBy = commission.NeededBy,
            Delivery = Handovers.OnPaper(commission.Handover),
            Keepsakes = keepsakes,
            HasLights = piece.Former is not null || piece.Fittings.Count > 0,
            HasButtonCells = piece.Fittings.Exists(f => f.Name.Contains("coin", StringComparison.OrdinalIgnoreCase) || f.Name.Contains("button cell", StringComparison.OrdinalIgnoreCase)),
        };
    }

    private static string Size(SectionView section, StudioSettings settings) =>
        $"{section.MouldName}, {Say.Length(section.WidestMm, settings.Units)} at its widest, {Say.Length(section.HeightMm, settings.Units)} high";

    // from the bottom as it will stand: the mould is turned over
    private static IEnumerable<string> Contents(Piece piece) =>
        from layer in piece.Layers.OrderByDescending(l => l.Order)
        let things = layer.Placed.Select(p => p.Name).Concat(layer.Scatter.Select(s => s.Name)).ToList()
        select things.Count == 0 ? layer.Name : $"{layer.Name}, with {string.Join(", ", things)}";

    private static IEnumerable<string> Included(Piece piece, PriceResult result)
    {
        yield return "The casting by hand, sanded and polished";
        foreach (var fitting in piece.Fittings)
        {
            yield return string.Create(English, $"{fitting.Name} ({fitting.Count:0.##})");
        }

        if (result.Packaging > 0)
        {
            yield return "Its box and packing";
        }

        if (result.Delivery > 0)
        {
            yield return "Delivery";
        }
    }

    private async Task<List<QuotePaperKeepsake>> KeepsakesAsync(QuoteView view)
    {
        await using var db = await factory.CreateDbContextAsync();
        var kept = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == view.Commission.Id && k.Custody != CustodyWhereabouts.Returned && k.Custody != CustodyWhereabouts.Withdrawn).OrderBy(k => k.Id).ToListAsync();
        return [.. kept.Select(k => new QuotePaperKeepsake(k.Description, Permissions.For(k.Permits).OnQuote, k.EntryNumber))];
    }
}
