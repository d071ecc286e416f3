using Studio.Engine.Film;
using Studio.Papers;

namespace Studio.Pieces;

/// <summary>The room for prints on a page: what its words, its check bars and the printer's own margin leave [mm].</summary>
internal sealed record FilmPage(PaperSize Size)
{
    /// <summary>Kept free between two prints, for the scissors.</summary>
    public const double GapMm = 4;

    /// <summary>No printer reaches nearer to the edge.</summary>
    public const double EdgeMm = 6;

    public const double TopMm = 36;

    public static IReadOnlyList<FilmPage> All { get; } = [new(PaperSize.A4), new(PaperSize.Letter)];

    public double LeftMm => EdgeMm + PaperCheckBars.RoomMm + 1;

    public double WidthMm => Size.WidthMm() - LeftMm - EdgeMm;

    public double HeightMm => Size.HeightMm() - TopMm - PaperCheckBars.RoomMm - EdgeMm - 1;

    /// <summary>Whether a print fits, upright or turned by a quarter.</summary>
    public bool Takes(FilmBox film) =>
        (film.WidthMm <= WidthMm && film.HeightMm <= HeightMm) || (film.HeightMm <= WidthMm && film.WidthMm <= HeightMm);
}
