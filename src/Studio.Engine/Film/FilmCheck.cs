using System.Globalization;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Engine.Film;

/// <summary>What can be wrong with a sheet, and what is doubtful about it.</summary>
internal static class FilmCheck
{
    /// <summary>A gap that a sheet still leans across [mm].</summary>
    public const double CarriesWithinMm = 1;

    private const double MostMarginMm = 50;
    private const double MostTabMm = 100;
    private const double MostLeanDegrees = 89;
    private const string Geometry = "geometry of the mould";
    private const string Practice = "common practice, no source";

    public static IReadOnlyList<InputError> Errors(MouldBody mould, FilmSpec spec, string path)
    {
        var errors = new InputErrors();
        if (FilmPlacement.All.All(p => p.Key != spec.Placement))
        {
            errors.Add(path + ".placement", $"There is no placement '{spec.Placement}'. Use one of: {string.Join(", ", FilmPlacement.All.Select(p => p.Key))}.");
        }

        if (FilmInks.Find(spec.Ink) is null)
        {
            errors.Add(path + ".ink", $"There is no ink '{spec.Ink}'. Use one of: {string.Join(", ", FilmInks.All.Select(i => i.Key))}.");
        }

        errors.Within(path + ".turnDegrees", spec.TurnDegrees, -360, 360, "°");
        errors.Within(path + ".leanDegrees", spec.LeanDegrees, -MostLeanDegrees, MostLeanDegrees, "°");
        errors.Within(path + ".depthMm", spec.DepthMm, -Dimension.LongestMm, Dimension.LongestMm, "mm");
        errors.Within(path + ".offsetMm", spec.OffsetMm, -Dimension.LongestMm, Dimension.LongestMm, "mm");
        errors.Within(path + ".marginMm", spec.MarginMm, 0, MostMarginMm, "mm");
        errors.Within(path + ".tabMm", spec.TabMm, 0, MostTabMm, "mm");
        if (spec.Placement == FilmPlacement.Flat)
        {
            errors.Within(path + ".heightMm", spec.HeightMm, -Dimension.LongestMm, Dimension.LongestMm, "mm");
        }
        else if (errors.Within(path + ".fromMm", spec.FromMm, 0, mould.HeightMm, "mm") & errors.Within(path + ".toMm", spec.ToMm, 0, mould.HeightMm, "mm")
            && spec.FromMm >= (spec.ToMm ?? mould.HeightMm))
        {
            errors.Add(path + ".toMm", $"The sheet must end above where it begins, at {Mm(spec.FromMm)}.");
        }

        return errors.All;
    }

    public static Finding Outside(TriangleMesh wall, FilmPlane plane, FilmSpec spec, string path)
    {
        var reach = Enumerable.Range(0, wall.VertexCount).Select(i => plane.InFrontMm(wall.Vertex(i))).DefaultIfEmpty(0).ToList();
        var (front, back) = (reach.Max(), reach.Min());
        var past = front < 0 ? -front : back;
        var side = spec.Placement == FilmPlacement.Flat ? (front < 0) != spec.Over ? "above" : "below" : front < 0 ? "in front of" : "behind";
        var words = past > 0 ? $"The sheet would stand {Mm(past)} {side} the mould" : "The sheet only grazes the mould";
        var field = spec.Placement switch { FilmPlacement.Flat => ".heightMm", FilmPlacement.Parallel => ".depthMm", FilmPlacement.Free => ".offsetMm", _ => ".turnDegrees" };
        return new("plane-outside", Severity.Stop, path + field, $"{words}. Bring it nearer to the middle; what you typed is kept.", Geometry);
    }

    public static Finding NothingLeft(FilmFit fit, FilmSpec spec, string path) => fit.Cut.Count == 0
        ? new("plane-outside", Severity.Stop, path + ".fromMm", $"Between {Mm(spec.FromMm)} and {(spec.ToMm is { } to ? Mm(to) : "the rim")} the sheet's plane meets nothing of the mould. Choose other heights.", Geometry)
        : new("sheet-too-narrow", Severity.Stop, path + ".marginMm", $"A margin of {Mm(spec.MarginMm)} leaves nothing of the sheet, which would be {Mm(FilmBox.Around(fit.Cut).WidthMm)} wide. Make the margin smaller.", Geometry);

    public static IReadOnlyList<Finding> Findings(FilmFit fit, FilmSpec spec, FilmSurroundings around, string path) =>
        [.. Unsupported(fit, spec, path), .. MeetsFormer(fit, around.Former, path), .. InPieces(fit, path), .. Sealed(fit, spec, path), .. NotFlat(fit, path)];

    private static IEnumerable<Finding> Unsupported(FilmFit fit, FilmSpec spec, string path)
    {
        if (spec.Placement == FilmPlacement.Flat)
        {
            if (fit.Edges.All(e => e.Meets != EdgeMeets.Layer))
            {
                yield return new("sheet-unsupported", Severity.Warn, path + ".heightMm", $"No layer ends at {Mm(spec.HeightMm)}, so the sheet lies on liquid and sags or floats. Lay it on a gelled layer.", Practice);
            }
        }
        else if (!fit.Edges.Any(e => e.Carries))
        {
            var held = fit.CutAway.Count > 0;
            yield return new(
                "sheet-unsupported", held ? Severity.Note : Severity.Warn, path + ".marginMm",
                held ? "The sheet touches neither wall nor layer: only its holding strip keeps it upright. Clamp the strip until the resin has gelled."
                    : $"The sheet touches nothing and sags. Make the margin {Mm(CarriesWithinMm)} or less, stand it on the top of a layer, or give it a holding strip.",
                Practice);
        }
    }

    private static IEnumerable<Finding> MeetsFormer(FilmFit fit, FilmFormer? former, string path)
    {
        if (former is null)
        {
            yield break;
        }

        var both = FilmThroughBox.Area(fit.Plane, fit.Body, former);
        if (both.Area >= Areas.SliverMm2)
        {
            var at = both.Coordinates.Select(c => fit.Plane.At(new(c.X, c.Y)).Z).ToList();
            yield return new(
                "sheet-meets-former", Severity.Stop, path + ".toMm",
                $"The sheet runs through the box for the lights between {Mm(at.Min())} and {Mm(at.Max())} of height, over {Mm(both.EnvelopeInternal.Width)} of its width. End it lower, or move it past the box.", Geometry);
        }
        else if (FilmThroughBox.Area(fit.Plane, fit.Film, former).Area >= Areas.SliverMm2)
        {
            yield return new(
                "strip-meets-former", Severity.Warn, path + ".tabMm",
                "The holding strip stands where the box for the lights goes. Cut it away before the box is set in, or go without: tack the sheet down and pour a little first.", Practice);
        }
    }

    private static IEnumerable<Finding> InPieces(FilmFit fit, string path)
    {
        if (fit.Body.Count > 1)
        {
            yield return new("sheet-in-pieces", Severity.Note, path, string.Create(CultureInfo.InvariantCulture, $"The plane meets the mould in {fit.Body.Count} places, so the sheet is {fit.Body.Count} pieces of film. Each is printed with its part of the picture."), Geometry);
        }
    }

    private static IEnumerable<Finding> Sealed(FilmFit fit, FilmSpec spec, string path)
    {
        var ink = FilmInks.Find(spec.Ink)!;
        if (fit.Picture.Count == 0)
        {
            yield return new("no-room-for-picture", Severity.Stop, path + ".ink", $"A sealed margin of {Mm(ink.SealMm)} all round leaves no room for the picture. Print it with toner, or give the sheet more room.", ink.Source);
        }
        else if (ink.SealMm > 0)
        {
            yield return new("sheet-sealed", Severity.Note, path + ".ink", $"{Mm(ink.SealMm)} of clear film is left round the picture, for the seal.", ink.Source);
        }
    }

    private static IEnumerable<Finding> NotFlat(FilmFit fit, string path)
    {
        if (fit.Look is { Flat: false, ResinMm: > 0 })
        {
            yield return new("face-not-flat", Severity.Note, path, "The face in front of the sheet is curved or leans towards it: it bends the view as a lens or a wedge does, and the figures for flat resin are only a first idea.", "Snell's law");
        }
    }

    private static string Mm(double mm) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(mm, 1)} mm");
}
