using System.Globalization;
using Studio.Engine.Layers;
using Studio.Engine.Parts;
using Studio.Papers;
using Studio.Parts;
using Studio.Pieces;
using Studio.Tests.Pieces;

namespace Studio.Tests.Parts;

/// <summary>The whistle pyramid with a box of 80 by 60 mm for its lights, covered, on feet.</summary>
internal static class PartsSamples
{
    public static Piece Piece(CutSpec? cut = null)
    {
        var piece = PieceSamples.Piece();
        piece.Former = new FormerSpec { OuterWidthMm = 80, OuterDepthMm = 60, FromMm = 110, WallMm = 3 };
        piece.Parts = new PieceParts { Cut = cut ?? new CutSpec(), Cover = new CoverSpec(), Feet = new FeetSpec() };
        return piece;
    }

    public static PartsPaperModel Paper(Piece piece) => new()
    {
        Studio = new PaperLetterhead("Heather & Brass", []),
        Format = new PaperFormat(CultureInfo.GetCultureInfo("en-GB"), "GBP", 2, TimeZoneInfo.Utc),
        MadeUtc = new DateTime(2026, 11, 25, 9, 0, 0, DateTimeKind.Utc),
        Piece = piece.Name,
        Commission = "26-014",
        Mould = piece.Mould!.Name,
        Plan = PieceBook.Parts(piece),
        Cut = piece.Parts!.Cut,
    };
}
