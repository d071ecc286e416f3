using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Engine.Film;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Film;

/// <summary>A sheet's outline drawn to scale; lengths in the drawing are millimetres.</summary>
public sealed partial class FilmDrawing
{
    private const double LetterShare = 0.042;

    [Parameter, EditorRequired]
    public FilmFigures Figures { get; set; } = null!;

    [Parameter]
    public string Units { get; set; } = "metric";

    private FilmBox Box => Figures.Fit!.Box;

    private FilmBox Film => Figures.Fit!.FilmBox;

    private double Letter => LetterShare * Math.Max(Film.WidthMm, Film.HeightMm);

    private double Mark => Letter / 3;

    // dimension lines: below the film, and to its right
    private double Below => -Film.BottomMm + (0.9 * Letter);

    private double Beside => Film.RightMm + (0.9 * Letter);

    private string ClipId => "sheet-clip-" + Figures.Index.ToString(CultureInfo.InvariantCulture);

    private string ViewBox => string.Join(' ', N(Film.LeftMm - Letter), N(-Film.TopMm - (0.5 * Letter)), N(Film.WidthMm + (3.8 * Letter)), N(Film.HeightMm + (3.2 * Letter)));

    private string Words
    {
        get
        {
            var fit = Figures.Fit!;
            var corners = fit.Body.Sum(a => a.Ring.Count);
            var shape = corners switch { 3 => "a triangle", 4 => "four-sided", > 12 => "with a curved edge", var n => n.ToString(CultureInfo.InvariantCulture) + " corners" };
            return $"Outline of {Figures.Sheet.Name}: {shape}, {Say.Length(Box.WidthMm, Units)} wide and {Say.Length(Box.HeightMm, Units)} high"
                + (fit.CutAway.Count > 0 ? $", with a strip of {Say.Length(Figures.Sheet.Place.TabMm, Units)} to hold it by" : "")
                + (Figures.Shown is null ? ", no picture in it yet." : ", the picture in it.");
        }
    }

    private static string N(double mm) => Math.Round(mm, 3).ToString(CultureInfo.InvariantCulture);

    private static string Path(IReadOnlyList<FilmArea> areas) =>
        string.Join(" ", areas.SelectMany(a => a.Rings).Select(r => "M" + string.Join(" L", r.Select(p => $"{N(p.UMm)} {N(-p.VMm)}")) + " Z"));

    private double Left(PictureFit shown)
    {
        var room = Figures.PictureBox;
        return (room.LeftMm + room.RightMm - shown.WidthMm) / 2;
    }

    private double Top(PictureFit shown)
    {
        var room = Figures.PictureBox;
        return -(room.BottomMm + room.TopMm + shown.HeightMm) / 2;
    }
}
