using System.Runtime.InteropServices;

namespace Studio.Papers;

/// <summary>A point of a drawing [mm]: x to the right, z upwards; the origin is the drawer's own.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PaperPoint(double XMm, double ZMm);

/// <summary>How an area is told from its neighbours without colour.</summary>
public enum PaperPattern
{
    None,

    /// <summary>Slanted lines: the layer that the paper is about.</summary>
    Hatch,

    /// <summary>Crossed lines.</summary>
    CrossHatch,

    /// <summary>Rows of dots: loose filling.</summary>
    Dots,
}

/// <summary>One mark of a drawing, in the order it is drawn.</summary>
public abstract record PaperShape;

/// <summary>A closed area. Colours are <c>#RRGGBB</c>; null leaves that part out.</summary>
/// <param name="StrokePt">Width of the outline [pt].</param>
public sealed record PaperPolygon(IReadOnlyList<PaperPoint> Points, string? Fill, PaperPattern Pattern = PaperPattern.None, string? Stroke = null, double StrokePt = 0.5) : PaperShape;

/// <summary>A straight line.</summary>
public sealed record PaperLine(PaperPoint From, PaperPoint To, double WidthPt = 0.75, bool Dashed = false, string? Stroke = null) : PaperShape;

/// <summary>Words at a point, centred on it, drawn as they are (short ones: a dimension).</summary>
public sealed record PaperNote(PaperPoint At, string Text) : PaperShape;

/// <summary>A name set beside the drawing with a thin line to its anchor; the paper keeps the names apart.</summary>
/// <param name="Strong">The one name that the paper is about.</param>
public sealed record PaperLabel(PaperPoint Anchor, string Text, bool Strong = false) : PaperShape;

/// <summary>A section drawing to scale, such as a mould cut through the middle with its layers.</summary>
/// <param name="Alt">What it shows, for whoever hears the paper rather than sees it.</param>
public sealed record PaperDrawing(IReadOnlyList<PaperShape> Shapes, string Alt);
