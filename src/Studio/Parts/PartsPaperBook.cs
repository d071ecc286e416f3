using System.Globalization;
using Studio.Papers;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Parts;

/// <summary>A file of parts ready to be opened, printed or sent to a cutter.</summary>
public sealed record PartsFile(byte[] Content, string FileName);

/// <summary>Shapes the parts of a kept design for paper and cutter.</summary>
public sealed class PartsPaperBook(PieceBook pieces, SettingsBook settingsBook, TimeProvider clock)
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Cut list and parts at true size; null when there is no such piece, or nothing is cut for it.</summary>
    public async Task<PartsFile?> PaperAsync(int pieceId)
    {
        if (await pieces.DeskAsync(pieceId) is not { } desk || PieceBook.Parts(desk.Piece) is not { Parts.Count: > 0 } plan)
        {
            return null;
        }

        var settings = await settingsBook.ReadAsync();
        var house = PaperHouse.Of(settings);
        var model = new PartsPaperModel
        {
            Studio = house.Letterhead,
            Format = house.Format,
            MadeUtc = clock.GetUtcNow().UtcDateTime,
            Piece = desk.Piece.Name,
            Commission = desk.CommissionNumber,
            Mould = desk.Piece.Mould?.Name ?? "",
            Plan = plan,
            Cut = (desk.Piece.Parts ?? new PieceParts()).Cut,
        };
        return new(PartsPaper.Create(model, house.Size), $"parts-{desk.CommissionNumber}.pdf");
    }

    /// <summary>One sheet for a cutter; null when there is none of that number.</summary>
    /// <param name="thickness">Which thickness, from 1.</param>
    /// <param name="sheet">Which sheet of it, from 1.</param>
    public async Task<PartsFile?> SvgAsync(int pieceId, int thickness, int sheet)
    {
        if (await pieces.DeskAsync(pieceId) is not { } desk || PieceBook.Parts(desk.Piece).Sheets.ElementAtOrDefault(thickness - 1) is not { } use || sheet < 1 || sheet > use.Sheets.Count)
        {
            return null;
        }

        var kerf = (desk.Piece.Parts ?? new PieceParts()).Cut.KerfMm;
        return new(PartsSvg.Sheet(use, sheet - 1, $"{desk.Piece.Name}, {desk.CommissionNumber}", kerf), string.Create(CultureInfo.InvariantCulture, $"parts-{desk.CommissionNumber}-{thickness}-{sheet}.svg"));
    }
}
