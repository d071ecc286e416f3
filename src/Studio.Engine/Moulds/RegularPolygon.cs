namespace Studio.Engine.Moulds;

/// <summary>A regular polygon in plan, one face's normal along −y. Lengths in mm.</summary>
public sealed class RegularPolygon
{
    private readonly double[] normals;

    /// <summary>Takes the number of sides, at least 3.</summary>
    public RegularPolygon(int sides)
    {
        Sides = (int)Require.Within(sides, 3, 360, "sides");
        normals = [.. Enumerable.Range(0, Sides).Select(k => (-Math.PI / 2) + (2 * Math.PI * k / Sides))];
    }

    /// <summary>Number of sides.</summary>
    public int Sides { get; }

    /// <summary>How a cross-section of so many sides is called: 'Square', 'Hexagonal', '7-sided'.</summary>
    public static string Called(double sides) => sides switch
    {
        3 => "Three-sided",
        4 => "Square",
        5 => "Five-sided",
        6 => "Hexagonal",
        8 => "Octagonal",
        _ => FormattableString.Invariant($"{sides:0}-sided"),
    };

    /// <summary>Area for an edge of 1 (n/4 · cot π/n; Machinery's Handbook, regular polygons).</summary>
    public double AreaOfUnitEdge => Sides / (4 * Math.Tan(Math.PI / Sides));

    /// <summary>Distance from the middle to a face for an edge of 1.</summary>
    public double ApothemOfUnitEdge => 1 / (2 * Math.Tan(Math.PI / Sides));

    /// <summary>Corners for an edge, anticlockwise.</summary>
    public IReadOnlyList<PlanPoint> Corners(double edgeMm)
    {
        var radius = edgeMm / (2 * Math.Sin(Math.PI / Sides));
        return [.. normals.Select(a => a + (Math.PI / Sides)).Select(a => new PlanPoint(radius * Math.Cos(a), radius * Math.Sin(a)))];
    }

    /// <summary>Half width of the section drawn: across two opposite faces, or as seen from the front when no two faces are opposite.</summary>
    public double HalfWidthMm(double edgeMm) =>
        Sides % 2 == 0 ? edgeMm * ApothemOfUnitEdge : Corners(edgeMm).Max(p => p.XMm);

    /// <summary>Smallest distance from a centred rectangle to a face; negative where it pokes through.</summary>
    public double GapMm(double edgeMm, double halfWidthMm, double halfDepthMm) =>
        (edgeMm * ApothemOfUnitEdge) - normals.Max(a => (Math.Abs(Math.Cos(a)) * halfWidthMm) + (Math.Abs(Math.Sin(a)) * halfDepthMm));
}
