using Studio.Engine.Film;
using Studio.Pieces;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>Film for the photographs, by whole sheets as they lie on them; a film that fits no sheet is bought at a print shop and has no price of its own.</summary>
public sealed class FilmCost : ICostLine
{
    public const string Key = "film";

    public string Kind => Key;

    public string Label => "Photographs on film";

    public IEnumerable<BoughtLine> Bought(QuoteSource source)
    {
        var prints = FilmRules.Of(source.Piece, source.Grams).SelectMany(s => Enumerable.Repeat(s, Math.Max(1, s.Sheet.Prints))).ToList();
        if (prints.Count == 0)
        {
            yield break;
        }

        // what is not worked out yet takes a sheet of its own
        var (page, standing) = (FilmPage.All[0], prints.Where(p => p.Fit is { Stands: true }).ToList());
        var plan = Nest.Lay([.. standing.Select(p => p.Fit!.Film)], page.WidthMm, page.HeightMm, FilmPage.GapMm);
        var sheets = plan.Pages + prints.Count - standing.Count;
        if (sheets > 0)
        {
            yield return Line(source.Materials.Where(m => m is { Kind: "film", Unit: "sheet", Retired: false }).OrderBy(m => m.Id).FirstOrDefault(), sheets);
        }

        if (plan.TooLarge.Count > 0)
        {
            yield return new("Film larger than a sheet", "piece", plan.TooLarge.Count, null, null, "This film fits no sheet. Enter what the print shop asks for it.");
        }
    }

    private static BoughtLine Line(Material? film, int sheets) => film is { PackSize: > 0, PackPrice: > 0 }
        ? new(film.Name, "sheet", sheets, (decimal)film.PackSize, film.PackPrice) { MaterialId = film.Id }
        : new(film?.Name ?? "Film for printing", "sheet", sheets, null, null, "The film has no price. Enter its pack under Stores, or its price here.") { MaterialId = film?.Id };
}
