namespace Studio.Data.Files;

/// <summary>
/// How a picture is made ready for print: a list of wishes, carried out anew each time on the untouched original, in this order:
/// set upright, turned, mirrored, straightened, cropped, brightened, contrast, one colour.
/// </summary>
public sealed record PictureRecipe
{
    /// <summary>Most a picture is straightened either way [degrees].</summary>
    public const double MostStraighten = 20;

    /// <summary>Least of the width and of the height that a crop leaves [share].</summary>
    public const double LeastLeft = 0.05;

    /// <summary>Quarter turns clockwise, 0 to 3.</summary>
    public int QuarterTurns { get; init; }

    /// <summary>Left and right change places.</summary>
    public bool Mirror { get; init; }

    /// <summary>Turned clockwise by a little, then cropped so that no corner is empty [degrees].</summary>
    public double StraightenDegrees { get; init; }

    /// <summary>Cut off at the left, of the width [share].</summary>
    public double CropLeft { get; init; }

    /// <summary>Cut off at the top, of the height [share].</summary>
    public double CropTop { get; init; }

    /// <summary>Cut off at the right, of the width [share].</summary>
    public double CropRight { get; init; }

    /// <summary>Cut off at the bottom, of the height [share].</summary>
    public double CropBottom { get; init; }

    /// <summary>−100 is black, 100 is white [%].</summary>
    public double BrightnessPercent { get; init; }

    /// <summary>−100 is one grey, 100 doubles every difference from the middle grey [%].</summary>
    public double ContrastPercent { get; init; }

    /// <summary>Greys only, for a printer with one colour.</summary>
    public bool OneColour { get; init; }

    /// <summary>Nothing changed.</summary>
    public static PictureRecipe AsItIs { get; } = new();

    /// <summary>Every wish within its range, so that a recipe from an address or an old design can always be carried out.</summary>
    public PictureRecipe Sound()
    {
        var (left, right) = Crop(CropLeft, CropRight);
        var (top, bottom) = Crop(CropTop, CropBottom);
        return this with
        {
            QuarterTurns = ((QuarterTurns % 4) + 4) % 4,
            StraightenDegrees = Within(StraightenDegrees, -MostStraighten, MostStraighten),
            CropLeft = left,
            CropRight = right,
            CropTop = top,
            CropBottom = bottom,
            BrightnessPercent = Within(BrightnessPercent, -100, 100),
            ContrastPercent = Within(ContrastPercent, -100, 100),
        };
    }

    /// <summary>Size of the outcome for a picture of a size, both upright [px].</summary>
    public (double Width, double Height) Size(double widthPx, double heightPx)
    {
        var sound = Sound();
        var (w, h) = sound.QuarterTurns % 2 == 1 ? (heightPx, widthPx) : (widthPx, heightPx);
        var kept = sound.Straightened(w, h);
        return (w * kept * (1 - sound.CropLeft - sound.CropRight), h * kept * (1 - sound.CropTop - sound.CropBottom));
    }

    /// <summary>Share of width and height that stays when a picture is turned by a little and no corner may be empty.</summary>
    internal double Straightened(double width, double height)
    {
        var angle = Math.Abs(StraightenDegrees) * Math.PI / 180;
        return 1 / (Math.Cos(angle) + (Math.Sin(angle) * Math.Max(width / height, height / width)));
    }

    private static (double, double) Crop(double one, double other)
    {
        var (a, b) = (Within(one, 0, 1 - LeastLeft), Within(other, 0, 1 - LeastLeft));
        var over = Math.Max(1, (a + b) / (1 - LeastLeft));
        return (a / over, b / over);
    }

    private static double Within(double value, double low, double high) => double.IsNaN(value) ? 0 : Math.Clamp(value, low, high);
}
