using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Studio.Engine.Parts;

namespace Studio.Parts;

/// <summary>One whole sheet for a cutter that reads SVG: its user units are millimetres, every part one closed path, every hole a circle.</summary>
public static class PartsSvg
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The sheet as an SVG file.</summary>
    /// <param name="use">Sheets of one thickness.</param>
    /// <param name="index">Which of them, from 0.</param>
    /// <param name="title">What it is cut for.</param>
    /// <param name="kerfMm">Told in words: the lines are the finished size [mm].</param>
    public static byte[] Sheet(SheetUse use, int index, string title, double kerfMm)
    {
        var root = new XElement(
            Svg + "svg",
            new XAttribute("width", N(use.WidthMm) + "mm"),
            new XAttribute("height", N(use.HeightMm) + "mm"),
            new XAttribute("viewBox", $"0 0 {N(use.WidthMm)} {N(use.HeightMm)}"),
            new XElement(Svg + "title", Plain(title)),
            new XElement(Svg + "desc", $"Millimetres. The lines are the finished size: cut outside them, and inside the holes, by half the kerf of {N(kerfMm)} mm. The sheet is {N(use.SheetMm)} mm thick."),
            use.Sheets[index].Select(p => Part(p, use.HeightMm)));
        using var file = new MemoryStream();
        using (var writer = XmlWriter.Create(file, new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true }))
        {
            root.Save(writer);
        }

        return file.ToArray();
    }

    private static XElement Part(PlacedPart placed, double sheetHeight)
    {
        var part = placed.Part;
        var id = $"{part.Key}-{placed.Number.ToString(CultureInfo.InvariantCulture)}";
        var corners = new[] { (0, 0), (part.WidthMm, 0), (part.WidthMm, part.HeightMm), (0.0, part.HeightMm) }.Select(c => At(placed, c.Item1, c.Item2, sheetHeight)).ToList();
        return new XElement(
            Svg + "g",
            new XAttribute("fill", "none"),
            new XAttribute("stroke", "#000000"),
            new XAttribute("stroke-width", "0.1"),
            new XElement(Svg + "title", part.Name),
            new XElement(Svg + "path", new XAttribute("id", id), new XAttribute("d", "M" + string.Join(" L", corners.Select(c => $"{N(c.X)} {N(c.Y)}")) + " Z")),
            part.Holes.Select(h => (Hole: h, Place: At(placed, h.XMm, h.YMm, sheetHeight))).Select(h => new XElement(
                Svg + "circle",
                new XAttribute("id", $"{id}-{h.Hole.Key}"),
                new XAttribute("cx", N(h.Place.X)),
                new XAttribute("cy", N(h.Place.Y)),
                new XAttribute("r", N(h.Hole.DiameterMm / 2)))));
    }

    // SVG counts downwards; turned anticlockwise, never mirrored
    private static (double X, double Y) At(PlacedPart placed, double x, double y, double sheetHeight)
    {
        var (u, v) = placed.Turned ? (placed.Part.HeightMm - y, x) : (x, y);
        return (placed.XMm + u, sheetHeight - placed.YMm - v);
    }

    private static string Plain(string text) => string.Concat(text.Where(XmlConvert.IsXmlChar));

    private static string N(double value) => Math.Round(value, 4).ToString(CultureInfo.InvariantCulture);
}
