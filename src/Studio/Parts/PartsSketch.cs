using Studio.Engine.Moulds;

namespace Studio.Parts;

/// <summary>A dimensioned drawing in mm, x to the right and y upwards, for screen and paper alike.</summary>
/// <param name="Words">What it shows, for whoever hears it.</param>
public sealed record PartsSketch(IReadOnlyList<SketchMark> Marks, string Words)
{
    /// <summary>Smallest and largest x and y of all areas and circles [mm].</summary>
    public (double Left, double Right, double Low, double High) Bounds
    {
        get
        {
            var points = Marks.SelectMany(Ends).DefaultIfEmpty(new PlanPoint(0, 0)).ToList();
            return (points.Min(p => p.XMm), points.Max(p => p.XMm), points.Min(p => p.YMm), points.Max(p => p.YMm));
        }
    }

    private static IEnumerable<PlanPoint> Ends(SketchMark mark) => mark switch
    {
        SketchArea area => area.Points,
        SketchRound r => [new(r.At.XMm - (r.DiameterMm / 2), r.At.YMm - (r.DiameterMm / 2)), new(r.At.XMm + (r.DiameterMm / 2), r.At.YMm + (r.DiameterMm / 2))],
        SketchLine line => [line.From, line.To],
        _ => [],
    };
}

/// <summary>One mark, in the order it is drawn.</summary>
public abstract record SketchMark;

/// <summary>A closed area.</summary>
/// <param name="Kind">How it is drawn: base, part, wall, opening, recess, plate, fitting, sheet.</param>
public sealed record SketchArea(IReadOnlyList<PlanPoint> Points, string Kind, string Name = "") : SketchMark
{
    public static SketchArea Box(double x, double y, double width, double height, string kind, string name = "") =>
        new([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)], kind, name);
}

/// <summary>A hole or a foot.</summary>
/// <param name="Bad">It cannot stand there: crossed out.</param>
public sealed record SketchRound(PlanPoint At, double DiameterMm, string Kind, string Name = "", bool Bad = false) : SketchMark;

/// <summary>A thin line, such as a diagonal.</summary>
public sealed record SketchLine(PlanPoint From, PlanPoint To) : SketchMark;

/// <summary>A dimension along x, below <paramref name="AtMm"/>, or along y, to its left.</summary>
/// <param name="Row">0 for the nearest to the drawing.</param>
public sealed record SketchSpan(bool Along, double FromMm, double ToMm, double AtMm, int Row, string Words) : SketchMark;

/// <summary>Words in the drawing, centred.</summary>
public sealed record SketchWords(PlanPoint At, string Words, bool Strong = false) : SketchMark;
