using Studio.Engine.Film;
using Studio.Engine.Layers;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>Names a photograph on film in every layer that it stands in: which way round, from where to where, and when to stop pouring for it.</summary>
internal static class BenchFilm
{
    internal static IEnumerable<BenchThing> Of(LayerAsk ask)
    {
        foreach (var film in ask.Films)
        {
            if (film.Fit is not { Stands: true } fit)
            {
                continue;
            }

            var heights = fit.InMould.SelectMany(ring => ring).Select(p => p.Z).ToList();
            var (from, to) = (heights.Min(), heights.Max());
            if (ask.Level is { } level && ask.Holds(from, to))
            {
                yield return One(ask, level, film, from, to);
            }
        }
    }

    private static BenchThing One(LayerAsk ask, LayerResult level, FilmFigures film, double from, double to)
    {
        var sheet = film.Sheet;
        var name = sheet.Name.Length > 0 ? $"The photograph “{sheet.Name}”" : "The photograph";
        var (starts, ends) = (Say.Length(from, ask.Units), Say.Length(to, ask.Units));
        var range = to - from < 0.05 ? $"lies flat at {starts}" : $"from {starts} to {ends}";
        if (!ask.Begins(from))
        {
            return new("film", name, range)
            {
                PictureHash = sheet.Picture?.Hash,
                Notes = [to > level.ToMm + 1e-6 ? "It stands in this layer and goes on above it: keep it upright by its strip until this layer has gelled." : $"It ends in this layer, at {ends}: hold it by its strip until the layer has gelled, then cut the strip away."],
            };
        }

        List<string> notes = [$"{Way(sheet)}. {Strip(sheet)}"];
        if (from > level.FromMm + 0.05)
        {
            notes.Add(StopG(ask, from) is { } grams
                ? $"Pour to the foot of the picture first: stop at {Say.Grams(grams)} in the mould, at {starts}. Set it in, then pour the rest of the layer."
                : $"Pour to the foot of the picture first, at {starts}. Set it in, then pour the rest of the layer.");
        }
        else
        {
            notes.Add($"Set it in before this layer is poured: its foot stands on what is below, at {starts}.");
        }

        notes.Add(to > level.ToMm + 1e-6 ? $"It goes on above this layer, up to {ends}." : $"It ends in this layer, at {ends}.");
        return new("film", name, range) { PictureHash = sheet.Picture?.Hash, Begins = true, Notes = notes };
    }

    private static string Way(PieceFilm sheet)
    {
        var place = sheet.Place;
        var how = FilmPlacement.All.FirstOrDefault(p => p.Key == place.Placement).Label ?? place.Placement;
        var turn = place.TurnDegrees is { } t and not 0 ? FormattableString.Invariant($", turned {t:0.#}°") : "";
        return $"{how}{turn}; the picture’s top {(place.Over ? "down, for the piece will stand the other way up" : "up")}; the printed side {(sheet.PrintMirrored ? "to the back (it is mirrored on the paper)" : "to the front")}";
    }

    private static string Strip(PieceFilm sheet) => sheet.Place.TabMm > 0
        ? FormattableString.Invariant($"Hold it by its strip, {sheet.Place.TabMm:0.#} mm, which is cut away later.")
        : "It has no strip to hold it by: tweezers, and gloves without resin on them.";

    /// <summary>
    /// Mixed resin in the mould up to the foot [g]: the lesser of with and without what lies loose or is set in, for nobody knows how much
    /// of that lies below the foot; so the stop is never too late.
    /// </summary>
    private static double? StopG(LayerAsk ask, double footMm)
    {
        var design = PieceBook.Design(ask.Piece);
        var layer = design.Layers[ask.Layer.Order] with { ToMm = footMm, ThicknessMm = null, ResinMl = null };
        var below = design.Layers.Take(ask.Layer.Order).ToList();
        var grams = new[] { layer, layer with { Scatter = [], Placed = [] } }
            .Select(l => LayersCalculation.Run(design with { Layers = [.. below, l] }))
            .Where(r => r.Ok)
            .Select(r => r.Value.Layers[^1])
            .Select(r => r.ResinG + r.Additions.Sum(a => a.Grams))
            .ToList();
        return grams.Count == 2 ? grams.Min() : null;
    }
}
