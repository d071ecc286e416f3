using Studio.Engine;
using Studio.Engine.Film;
using Studio.Engine.Layers;

namespace Studio.Pieces;

/// <summary>One photograph of a piece, worked out.</summary>
/// <param name="Index">Its place in the piece's list.</param>
/// <param name="Sheet">What the maker wants.</param>
/// <param name="Fit">How it stands; null while a number cannot be used or there is no mould.</param>
/// <param name="Shown">How the picture lies on it; null without a picture or room for one.</param>
/// <param name="Errors">Every number that needs another look.</param>
/// <param name="Findings">Doubts of the trade.</param>
public sealed record FilmFigures(int Index, PieceFilm Sheet, FilmFit? Fit, PictureFit? Shown, IReadOnlyList<InputError> Errors, IReadOnlyList<Finding> Findings)
{
    /// <summary>The picture's surroundings; the fit must stand.</summary>
    public FilmBox PictureBox => FilmBox.Around(Fit!.Picture);

    /// <summary>What is wrong at a field, such as <c>toMm</c>; null for nothing.</summary>
    public string? Wrong(string field) =>
        Errors.FirstOrDefault(e => e.Path == At(field))?.Message ?? Findings.FirstOrDefault(f => f.Severity == Severity.Stop && f.Path == At(field))?.Message;

    private string At(string field) => FilmRules.Path(Index) + "." + field;
}

/// <summary>A piece's photographs by the engine.</summary>
public static class FilmRules
{
    private const int MostPrints = 50;

    /// <summary>Path of a photograph's fields.</summary>
    public static string Path(int index) => FormattableString.Invariant($"sheets[{index}]");

    /// <summary>Works every photograph of a piece out.</summary>
    /// <param name="piece">With its mould.</param>
    /// <param name="result">Its layers' levels; null while they cannot be worked out.</param>
    public static IReadOnlyList<FilmFigures> Of(Piece piece, LayersResult? result)
    {
        if (piece.Sheets.Count == 0 || piece.Mould is null || Engine.Moulds.MouldShapes.Make(piece.Mould.Spec) is not { Ok: true } made)
        {
            return [.. piece.Sheets.Select((s, i) => new FilmFigures(i, s, null, null, [], []))];
        }

        var around = new FilmSurroundings(
            piece.Former is { } f ? new FilmFormer(f.OuterWidthMm, f.OuterDepthMm, f.FromMm) : null, result is null ? [] : [.. result.Layers.Select(l => l.ToMm)]);
        return [.. piece.Sheets.Select((s, i) => One(made.Value, s, i, around))];
    }

    private static FilmFigures One(Engine.Moulds.MouldBody mould, PieceFilm sheet, int index, FilmSurroundings around)
    {
        var path = Path(index);
        var outcome = FilmCut.Fit(mould, sheet.Place, around, path);
        var fit = outcome.Ok ? outcome.Value : null;
        var shown = fit is { Picture.Count: > 0 } && sheet.Picture is { } p ? Cover(fit, sheet.Recipe.Size(p.WidthPx, p.HeightPx)) : null;
        return new(index, sheet, fit, shown, [.. outcome.Errors, .. OwnErrors(sheet, path)], [.. fit?.Findings ?? [], .. shown?.Findings(path + ".picture") ?? [], .. OnPaper(fit, path), .. InkAndPicture(sheet, path)]);
    }

    private static PictureFit Cover(FilmFit fit, (double Width, double Height) px) => PictureFit.Cover(fit.Picture, Math.Max(1, px.Width), Math.Max(1, px.Height));

    private static IEnumerable<InputError> OwnErrors(PieceFilm sheet, string path)
    {
        if (sheet.Prints is < 1 or > MostPrints)
        {
            yield return new(path + ".prints", FormattableString.Invariant($"Say how many are printed: from 1 to {MostPrints}."));
        }
    }

    private static IEnumerable<Finding> OnPaper(FilmFit? fit, string path)
    {
        if (fit is { Stands: true } && !FilmPage.All.Any(p => p.Takes(fit.FilmBox)))
        {
            var box = fit.FilmBox;
            yield return new(
                "larger-than-page", Severity.Note, path,
                FormattableString.Invariant($"The film is {box.WidthMm:0.#} × {box.HeightMm:0.#} mm and fits neither A4 nor Letter at true size. Take the outline as SVG to a print shop; it is never printed smaller."), "the size of the page");
        }
    }

    private static IEnumerable<Finding> InkAndPicture(PieceFilm sheet, string path)
    {
        if (FilmInks.Find(sheet.Place.Ink) is { OneColour: true } ink && sheet is { Picture: not null, Recipe.OneColour: false })
        {
            yield return new("not-one-colour", Severity.Note, path + ".recipe", "This printer has one colour: bring the picture to greys, so that what you see is what is printed.", ink.Source);
        }
    }
}
