using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Studio.Papers;

/// <summary>
/// The pen: draws on the current page and keeps the structure tree, or does nothing while a paper is only being measured.
/// PDFsharp wants every stroke inside a tagged element or an artifact.
/// </summary>
internal sealed class PaperInk(PdfDocument? document)
{
    private readonly XGraphics _ruler = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
    private readonly StructureBuilder? _tree = document is null ? null : UAManager.ForDocument(document).StructureBuilder;
    private readonly Dictionary<byte[], XImage> _images = [];
    private XGraphics? _page;
    private int _muted;

    private bool Dry => _page is null || _muted > 0;

    public void Mute() => _muted++;

    public void Unmute() => _muted--;

    public void NewPage(PaperSize size)
    {
        if (document is null || _muted > 0)
        {
            return;
        }

        var page = document.AddPage();
        page.Width = XUnit.FromMillimeter(size.WidthMm());
        page.Height = XUnit.FromMillimeter(size.HeightMm());
        page.Elements.SetName("/Tabs", "/S");
        _page?.Dispose();
        _page = XGraphics.FromPdfPage(page);
    }

    public void Close()
    {
        _page?.Dispose();
        _page = null;
        foreach (var image in _images.Values)
        {
            image.Dispose();
        }
    }

    /// <summary>Opens a structure element such as P, H1, Table; <paramref name="scope"/> is a header cell's Row or Column.</summary>
    public Scope Tag(string tag, string? scope = null)
    {
        if (Dry)
        {
            return default;
        }

        _tree!.BeginBlockLevelElement(tag);
        if (scope is not null)
        {
            var attributes = new PdfDictionary(document!);
            attributes.Elements.SetName("/O", "/Table");
            attributes.Elements.SetName("/Scope", "/" + scope);
            _tree.CurrentStructureElement.Elements["/A"] = attributes;
        }

        return new Scope(_tree);
    }

    /// <summary>Opens a picture that stands for <paramref name="alt"/>.</summary>
    public Scope Figure(string alt, XRect box)
    {
        if (Dry)
        {
            return default;
        }

        _tree!.BeginElement(PdfIllustrationElementTag.Figure, alt, box);
        return new Scope(_tree);
    }

    /// <summary>Opens what carries no meaning: rules, tints, page numbers.</summary>
    public Scope Artifact()
    {
        if (Dry)
        {
            return default;
        }

        _tree!.BeginArtifact();
        return new Scope(_tree);
    }

    public double Width(string text, PaperStyle style) => _ruler.MeasureString(text, style.Font).Width;

    public void Text(string text, PaperStyle style, double x, double baseline)
    {
        if (!Dry && text.Length > 0)
        {
            _page!.DrawString(text, style.Font, new XSolidBrush(style.Colour), x, baseline);
        }
    }

    public void Line(double x1, double y1, double x2, double y2, XColor colour, double width = 0.5, bool dashed = false)
    {
        if (!Dry)
        {
            _page!.DrawLine(new XPen(colour, width) { DashStyle = dashed ? XDashStyle.Dash : XDashStyle.Solid }, x1, y1, x2, y2);
        }
    }

    public void Rectangle(XRect box, XColor? fill, XColor? stroke, double width = 0.5)
    {
        if (Dry)
        {
            return;
        }

        var brush = fill is { } f ? new XSolidBrush(f) : null;
        var pen = stroke is { } s ? new XPen(s, width) : null;
        _page!.DrawRectangle(pen, brush, box);
    }

    public void Polygon(XPoint[] points, XColor? fill, XColor? stroke, double width = 0.5)
    {
        if (Dry || points.Length < 3 || (fill is null && stroke is null))
        {
            return;
        }

        var brush = fill is { } f ? new XSolidBrush(f) : null;
        var pen = stroke is { } s ? new XPen(s, width) { LineJoin = XLineJoin.Round } : null;
        _page!.DrawPolygon(pen, brush, points, XFillMode.Winding);
    }

    /// <summary>Black squares as one path, so that neighbours meet without a seam.</summary>
    public void Squares(IEnumerable<XRect> squares)
    {
        if (Dry)
        {
            return;
        }

        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var square in squares)
        {
            path.AddRectangle(square);
        }

        _page!.DrawPath(XBrushes.Black, path);
    }

    /// <summary>Width and height of a JPEG [px]; null when it cannot be read.</summary>
    public (double Width, double Height)? ImageSize(byte[] jpeg) => Image(jpeg) is { } image ? (image.PixelWidth, image.PixelHeight) : null;

    public void Image(byte[] jpeg, XRect box)
    {
        if (!Dry && Image(jpeg) is { } image)
        {
            _page!.DrawImage(image, box);
        }
    }

    /// <summary>A JPEG laid on the page by a matrix from its unit square (down from its upper left corner), seen only inside some rings.</summary>
    public void Image(byte[] jpeg, XMatrix place, IEnumerable<XPoint[]> within)
    {
        if (Dry || Image(jpeg) is not { } image)
        {
            return;
        }

        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        foreach (var ring in within)
        {
            path.AddPolygon(ring);
        }

        var state = _page!.Save();
        _page.IntersectClip(path);
        _page.MultiplyTransform(place);
        _page.DrawImage(image, 0, 0, 1, 1);
        _page.Restore(state);
    }

    private XImage? Image(byte[] jpeg)
    {
        if (_images.TryGetValue(jpeg, out var known))
        {
            return known;
        }

        try
        {
            return _images[jpeg] = XImage.FromStream(new MemoryStream(jpeg));
        }
        catch (Exception e) when (e is InvalidOperationException or NotSupportedException or NotImplementedException or ArgumentException or IOException or IndexOutOfRangeException)
        {
            // a paper without one photograph is better than no paper; the place stays empty and says so
            return null;
        }
    }

    internal readonly struct Scope(StructureBuilder? tree) : IDisposable
    {
        public void Dispose() => tree?.End();
    }
}
