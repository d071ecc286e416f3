using System.Globalization;
using System.Xml.Linq;
using Studio.Engine.Film;

namespace Studio.Film;

/// <summary>An outline as SVG, one unit a millimetre: to cut by machine or to print elsewhere.</summary>
public static class FilmSvg
{
    private const double EdgeMm = 1; // so that no half of a line is lost
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Writes the outline of the film and the line to cut away along.</summary>
    /// <param name="mirrored">Left and right change places.</param>
    public static string Write(string name, FilmFit fit, bool mirrored)
    {
        var box = fit.FilmBox;
        var (width, height) = (box.WidthMm + (2 * EdgeMm), box.HeightMm + (2 * EdgeMm));
        string At(FilmPoint p) => Number(EdgeMm + (mirrored ? box.RightMm - p.UMm : p.UMm - box.LeftMm)) + " " + Number(EdgeMm + box.TopMm - p.VMm);
        var outline = string.Join(" ", fit.Film.SelectMany(a => a.Rings).Select(r => "M" + string.Join(" L", r.Select(At)) + " Z"));
        var away = string.Join(" ", fit.CutAway.Select(c => $"M{At(c.From)} L{At(c.To)}"));
        var drawing = new XElement(
            Svg + "svg", new XAttribute("width", Number(width) + "mm"), new XAttribute("height", Number(height) + "mm"), new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
            new XElement(Svg + "title", Clean(name)),
            new XElement(Svg + "desc", string.Create(CultureInfo.InvariantCulture, $"True size: one unit is one millimetre. The film is {box.WidthMm:0.##} mm wide and {box.HeightMm:0.##} mm high.")),
            Path("outline", outline));
        if (away.Length > 0)
        {
            drawing.Add(Path("cut-away-later", away, new XAttribute("stroke-dasharray", "2 1")));
        }

        return drawing.ToString(SaveOptions.DisableFormatting);
    }

    private static XElement Path(string id, string d, params object[] more) => new(
        Svg + "path", new XAttribute("id", id), new XAttribute("d", d), new XAttribute("fill", "none"), new XAttribute("stroke", "#000"), new XAttribute("stroke-width", "0.1"), more);

    private static string Number(double mm) => Math.Round(mm, 4).ToString(CultureInfo.InvariantCulture);

    private static string Clean(string text) => new([.. text.Where(System.Xml.XmlConvert.IsXmlChar)]);
}
