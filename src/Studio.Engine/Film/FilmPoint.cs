using System.Runtime.InteropServices;

namespace Studio.Engine.Film;

/// <summary>A point on the sheet's own plane [mm]: u to the right as seen from the front of the sheet, v up the sheet.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FilmPoint(double UMm, double VMm);

/// <summary>One area of a sheet: its outer ring and the holes in it, none of them closed by repeating the first point.</summary>
/// <param name="Ring">Outer ring, anticlockwise.</param>
/// <param name="Holes">Rings left out of it.</param>
public sealed record FilmArea(IReadOnlyList<FilmPoint> Ring, IReadOnlyList<IReadOnlyList<FilmPoint>> Holes)
{
    /// <summary>Outer ring and holes.</summary>
    public IEnumerable<IReadOnlyList<FilmPoint>> Rings => Holes.Prepend(Ring);

    /// <summary>Area [mm²], holes left out.</summary>
    public double AreaMm2 => Math.Abs(Signed(Ring)) - Holes.Sum(h => Math.Abs(Signed(h)));

    private static double Signed(IReadOnlyList<FilmPoint> ring) =>
        ring.Select((p, i) => (A: p, B: ring[(i + 1) % ring.Count])).Sum(e => (e.A.UMm * e.B.VMm) - (e.B.UMm * e.A.VMm)) / 2;
}

/// <summary>An upright rectangle around a sheet on its own plane [mm].</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FilmBox(double LeftMm, double BottomMm, double RightMm, double TopMm)
{
    /// <summary>Width [mm].</summary>
    public double WidthMm => RightMm - LeftMm;

    /// <summary>Height [mm].</summary>
    public double HeightMm => TopMm - BottomMm;

    /// <summary>The box around areas; all zero around none.</summary>
    public static FilmBox Around(IReadOnlyList<FilmArea> areas)
    {
        var points = areas.SelectMany(a => a.Ring).ToList();
        return points.Count == 0 ? default : new(points.Min(p => p.UMm), points.Min(p => p.VMm), points.Max(p => p.UMm), points.Max(p => p.VMm));
    }
}
