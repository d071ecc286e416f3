using System.Globalization;
using Studio.Data.Files;
using Studio.Pieces;

namespace Studio.Film;

/// <summary>A recipe as a part of an address: ten numbers with underscores between them.</summary>
public static class RecipeText
{
    private const int Numbers = 10;

    /// <summary>Such as <c>1_0_2.5_0_0_0.1_0_0_10_0</c>.</summary>
    public static string Write(PictureRecipe r) => string.Join('_', new[]
    {
        r.QuarterTurns, r.Mirror ? 1 : 0, r.StraightenDegrees, r.CropLeft, r.CropTop, r.CropRight, r.CropBottom, r.BrightnessPercent, r.ContrastPercent, r.OneColour ? 1 : 0,
    }.Select(n => n.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Null for anything else.</summary>
    public static PictureRecipe? Read(string text)
    {
        var n = text.Split('_').Select(t => double.TryParse(t, NumberStyles.Float, CultureInfo.InvariantCulture, out var v) && double.IsFinite(v) && Math.Abs(v) < 1e6 ? v : (double?)null).ToList();
        return n.Count != Numbers || n.Contains(null) ? null : new PictureRecipe
        {
            QuarterTurns = (int)n[0]!.Value,
            Mirror = n[1] == 1,
            StraightenDegrees = n[2]!.Value,
            CropLeft = n[3]!.Value,
            CropTop = n[4]!.Value,
            CropRight = n[5]!.Value,
            CropBottom = n[6]!.Value,
            BrightnessPercent = n[7]!.Value,
            ContrastPercent = n[8]!.Value,
            OneColour = n[9] == 1,
        }.Sound();
    }

    /// <summary>Where a picture made ready can be seen, no larger than so many pixels.</summary>
    public static string Address(FilmPicture picture, PictureRecipe recipe, int px) =>
        string.Create(CultureInfo.InvariantCulture, $"/sheets/{picture.Hash}/{Write(recipe)}.jpg?px={px}");
}
