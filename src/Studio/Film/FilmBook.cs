using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine.Film;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Film;

/// <summary>A file ready to be opened or saved.</summary>
public sealed record FilmFile(byte[] Content, string FileName, string ContentType);

/// <summary>What may be asked of the paper.</summary>
/// <param name="Only">One photograph by its place in the piece's list; null for all.</param>
/// <param name="Paper"><c>A4</c> or <c>Letter</c>; anything else takes the studio's own.</param>
/// <param name="OutlineOnly">A template to cut around, without the picture.</param>
public sealed record FilmWish(int? Only, string? Paper, bool OutlineOnly);

/// <summary>A piece's photographs: which pictures there are to choose from, and their papers.</summary>
public sealed class FilmBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settingsBook, PhotoStore photos)
{
    private const double PrintPerInch = 400;
    private const int MostPx = 6000;
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Pictures of a commission: those of its keepsakes first, then those sent for it.</summary>
    public async Task<IReadOnlyList<FilmPicture>> PicturesAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == commissionId).ToDictionaryAsync(k => k.Id);
        var found = await db.Set<Photo>().AsNoTracking().Where(p => p.CommissionId == commissionId || (p.KeepsakeId != null && keepsakes.Keys.Contains(p.KeepsakeId.Value))).OrderBy(p => p.Id).ToListAsync();
        return [.. found.OrderBy(p => p.KeepsakeId is null).DistinctBy(p => p.Hash, StringComparer.Ordinal)
            .Select(p => new FilmPicture(p.Hash, p.WidthPx, p.HeightPx, p.KeepsakeId is { } id ? $"{keepsakes[id].Description} ({keepsakes[id].EntryNumber})" : p.FileName))];
    }

    /// <summary>Takes a picture in for a commission. What is wrong with it comes back as a sentence.</summary>
    public async Task<(FilmPicture? Picture, string? Refusal)> TakeInAsync(int commissionId, Stream content, string fileName, string by)
    {
        await factory.AskAsync();
        var outcome = await photos.AddAsync(content, fileName);
        if (outcome.Photo is not { } photo)
        {
            return (null, outcome.Refusal);
        }

        var saved = await Saved.TryAsync(async () =>
        {
            await using var db = await factory.CreateDbContextAsync();
            db.By = by;
            var row = Photo.Of(photo, db.Now, by);
            row.CommissionId = commissionId;
            db.Add(row);
            await db.SaveChangesAsync();
            return Saved.Done(commissionId);
        });
        return saved.Ok ? (new(photo.Hash, photo.WidthPx, photo.HeightPx, photo.FileName), null) : (null, saved.Words);
    }

    /// <summary>The true-size paper; null when there is no such piece or no photograph of it stands in its mould.</summary>
    public async Task<FilmFile?> PaperAsync(int pieceId, FilmWish wish)
    {
        if (await ReadAsync(pieceId) is not { } read)
        {
            return null;
        }

        var prints = new List<FilmPaperPrint>();
        foreach (var sheet in read.Sheets.Where(s => s.Fit is { Stands: true } && (wish.Only is null || s.Index == wish.Only)))
        {
            prints.Add(await PrintAsync(sheet, wish.OutlineOnly));
        }

        if (prints.Count == 0)
        {
            return null;
        }

        var settings = await settingsBook.ReadAsync();
        var house = PaperHouse.Of(settings);
        var size = PaperHouse.Sheet(wish.Paper ?? settings.Paper);
        var model = new FilmPaperModel
        {
            Studio = house.Letterhead,
            Format = house.Format,
            MadeUtc = clock.GetUtcNow().UtcDateTime,
            Piece = read.Piece.Name,
            Commission = read.Commission,
            Prints = prints,
        };
        return new(FilmPaper.Create(model, size), $"photographs-{read.Commission}.pdf", "application/pdf");
    }

    /// <summary>One outline as SVG; null when there is none.</summary>
    public async Task<FilmFile?> SvgAsync(int pieceId, int index) =>
        await ReadAsync(pieceId) is { } read && read.Sheets.ElementAtOrDefault(index) is { Fit: { Stands: true } fit } sheet
            ? new(System.Text.Encoding.UTF8.GetBytes(FilmSvg.Write($"{read.Piece.Name}: {sheet.Sheet.Name}", fit, sheet.Sheet.PrintMirrored)), $"photograph-{read.Commission}-{index + 1}.svg", "image/svg+xml")
            : null;

    private async Task<FilmPaperPrint> PrintAsync(FilmFigures sheet, bool outlineOnly)
    {
        var print = new FilmPaperPrint(sheet.Sheet.Name, sheet.Fit!, sheet.Sheet.Prints, sheet.Sheet.PrintMirrored)
        {
            Ink = FilmInks.Find(sheet.Sheet.Place.Ink) is { SealMm: > 0 } ink ? string.Create(English, $"Seal both sides before cutting: {ink.SealMm:0.#} mm of clear film stay round the picture.") : "",
        };
        if (outlineOnly || sheet is not { Shown: { } shown, Sheet.Picture: { } picture })
        {
            return print;
        }

        var px = Math.Min(MostPx, (int)Math.Ceiling(Math.Max(shown.WidthMm, shown.HeightMm) / 25.4 * PrintPerInch));
        return print with { Shown = shown, Picture = await photos.PrepareAsync(picture.Hash, sheet.Sheet.Recipe, px) };
    }

    private async Task<(Piece Piece, string Commission, IReadOnlyList<FilmFigures> Sheets)?> ReadAsync(int pieceId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var piece = await db.Set<Piece>().AsNoTracking().Include(p => p.Mould).Include(p => p.Layers.OrderBy(l => l.Order)).ThenInclude(l => l.Resin).SingleOrDefaultAsync(p => p.Id == pieceId);
        if (piece is null)
        {
            return null;
        }

        var number = await db.Set<Commission>().AsNoTracking().Where(c => c.Id == piece.CommissionId).Select(c => c.Number).SingleAsync();
        return (piece, number, PieceBook.Figures(piece).Sheets);
    }
}
