using PdfSharp.Drawing;

namespace Studio.Papers;

/// <summary>One way of setting words: face, colour and the step from line to line [pt].</summary>
internal sealed record PaperStyle(string Family, XFont Font, XColor Colour, double Leading)
{
    /// <summary>Baseline below the top of the line [pt]: the letters stand optically centred in the leading.</summary>
    public double Ascent => ((Leading - Font.Size) / 2) + (Font.Size * 0.80);

    public PaperStyle In(XColor colour) => this with { Colour = colour };

    public PaperStyle Bold() => this with { Font = new XFont(Family, Font.Size, XFontStyleEx.Bold) };
}

/// <summary>The papers' colours: the screen's, a little darker where ink is thin.</summary>
internal static class PaperInks
{
    public static readonly XColor Ink = XColor.FromArgb(0x1F, 0x2B, 0x33);
    public static readonly XColor Amber = XColor.FromArgb(0x9A, 0x5B, 0x13);
    public static readonly XColor Slate = XColor.FromArgb(0x4A, 0x62, 0x72);
    public static readonly XColor Line = XColor.FromArgb(0xC9, 0xBE, 0xAE);
    public static readonly XColor Wash = XColor.FromArgb(0xF6, 0xF1, 0xE8);

    /// <summary>What can be seen on a fill: ink on light grounds, paper on dark ones (relative luminance as in WCAG 2.2).</summary>
    public static XColor On(XColor? fill)
    {
        if (fill is not { } f)
        {
            return Ink;
        }

        var luminance = (0.2126 * Linear(f.R)) + (0.7152 * Linear(f.G)) + (0.0722 * Linear(f.B));
        return luminance < 0.18 ? XColors.White : Ink;

        static double Linear(byte channel) => channel <= 10 ? channel / 255.0 / 12.92 : Math.Pow(((channel / 255.0) + 0.055) / 1.055, 2.4);
    }

    /// <summary>Reads <c>#RRGGBB</c>; null for null.</summary>
    public static XColor? Hex(string? hex) => hex is null ? null : XColor.FromArgb(
        Convert.ToInt32(hex[1..3], 16), Convert.ToInt32(hex[3..5], 16), Convert.ToInt32(hex[5..7], 16));
}

/// <summary>A paper's set of styles. Two sizes of heading, one text, one small; figures for the bench.</summary>
internal sealed class PaperType
{
    private readonly string _text;

    private PaperType(string text, double size)
    {
        PaperFonts.Install();
        _text = text;
        Title = Style(PaperFonts.Serif, 21, 26, bold: true);
        LongTitle = Style(PaperFonts.Serif, 15, 20, bold: true);
        Heading = Style(PaperFonts.Serif, 12.5, 17, bold: true);
        Text = Style(text, size, size * 1.42);
        Strong = Style(text, size, size * 1.42, bold: true);
        Soft = (string.Equals(text, PaperFonts.Serif, StringComparison.Ordinal) ? Style(text, size, size * 1.42, italic: true) : Text).In(PaperInks.Slate);
        var small = Math.Max(8.5, size * 0.83);
        Small = Style(text, small, small * 1.35);
        SmallStrong = Style(text, small, small * 1.35, bold: true);
        Label = Style(PaperFonts.Sans, small - 0.5, small * 1.3).In(PaperInks.Slate);
        Glance = Style(text, 14, 19, bold: true);
        Figure = Style(PaperFonts.Sans, 27, 32, bold: true);
    }

    public PaperStyle Title { get; }

    /// <summary>For a title that would run over two lines.</summary>
    public PaperStyle LongTitle { get; }

    public PaperStyle Heading { get; }

    public PaperStyle Text { get; }

    public PaperStyle Strong { get; }

    public PaperStyle Soft { get; }

    public PaperStyle Small { get; }

    public PaperStyle SmallStrong { get; }

    public PaperStyle Label { get; }

    public PaperStyle Glance { get; }

    public PaperStyle Figure { get; }

    /// <summary>For what the family reads.</summary>
    public static PaperType Family() => new(PaperFonts.Serif, 10.5);

    /// <summary>For records.</summary>
    public static PaperType Work() => new(PaperFonts.Sans, 9.5);

    /// <summary>For the bench, read at arm's length.</summary>
    public static PaperType Bench() => new(PaperFonts.Sans, 11.5);

    /// <summary>A size outside the set, for a label's cell.</summary>
    public PaperStyle Sized(double size, bool bold = false) => Style(_text, size, size * 1.22, bold);

    private static PaperStyle Style(string family, double size, double leading, bool bold = false, bool italic = false) =>
        new(family, new XFont(family, size, bold ? XFontStyleEx.Bold : italic ? XFontStyleEx.Italic : XFontStyleEx.Regular), PaperInks.Ink, leading);
}
