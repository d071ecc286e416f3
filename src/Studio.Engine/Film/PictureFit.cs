using System.Globalization;

namespace Studio.Engine.Film;

/// <summary>A picture laid over a sheet so that it fills it: how large its pixels become and what falls outside.</summary>
/// <param name="WidthMm">Width of the whole picture on the sheet [mm].</param>
/// <param name="HeightMm">Height of the whole picture on the sheet [mm].</param>
/// <param name="PixelsPerInch">Pixels in 25.4 mm.</param>
/// <param name="HiddenPercent">Share of the picture that falls outside the outline [%].</param>
/// <param name="Words">Which sides fall outside, in words; empty where none does.</param>
public sealed record PictureFit(double WidthMm, double HeightMm, double PixelsPerInch, double HiddenPercent, string Words)
{
    /// <summary>Below this a print looks soft; common practice, no source.</summary>
    public const double SoftPerInch = 200;

    /// <summary>From this on nobody sees the pixels at reading distance; common practice, no source.</summary>
    public const double SharpPerInch = 300;

    private const double MmPerInch = 25.4;
    private const double Slightly = 0.01;

    /// <summary>Lays a picture over the room for it, covering its whole box.</summary>
    /// <param name="picture">Where it may be printed.</param>
    /// <param name="widthPx">Width as it is printed, cropped and turned [px].</param>
    /// <param name="heightPx">Height likewise [px].</param>
    public static PictureFit Cover(IReadOnlyList<FilmArea> picture, double widthPx, double heightPx)
    {
        Require.Positive(widthPx, "px");
        Require.Positive(heightPx, "px");
        var box = FilmBox.Around(picture);
        var perPx = Math.Max(box.WidthMm / widthPx, box.HeightMm / heightPx);
        var (w, h) = (widthPx * perPx, heightPx * perPx);
        var hidden = w * h > 0 ? 100 * (1 - Math.Min(1, picture.Sum(a => a.AreaMm2) / (w * h))) : 0;
        return new(w, h, perPx > 0 ? MmPerInch / perPx : 0, hidden, Beyond(w, h, box));
    }

    /// <summary>Doubts about the picture's size and shape.</summary>
    /// <param name="path">Field they are reported at.</param>
    public IEnumerable<Finding> Findings(string path)
    {
        if (PixelsPerInch < SharpPerInch)
        {
            var soft = PixelsPerInch < SoftPerInch;
            yield return new(
                "few-pixels", soft ? Severity.Warn : Severity.Note, path,
                string.Create(CultureInfo.InvariantCulture, $"The picture has {PixelsPerInch:0} pixels an inch at this size; {(soft ? "below 200 it looks soft. Scan it again finer, or crop less of it." : "300 would be safe.")}"),
                "common practice, no source");
        }
    }

    private static string Beyond(double w, double h, FilmBox box)
    {
        var (wide, high) = (w - box.WidthMm, h - box.HeightMm);
        return wide > Slightly ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(wide / 2, 1)} mm of the picture fall away at the left and as much at the right")
            : high > Slightly ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(high / 2, 1)} mm of the picture fall away at the top and as much at the bottom")
            : "";
    }
}
