using NetTopologySuite.Geometries;

namespace Studio.Engine.Film;

/// <summary>The two heights between which a sheet stands, as lines on its plane; none where it lies flat.</summary>
internal sealed class FilmFrame
{
    private const double TouchMm = 1e-6;
    private const double OnLayerMm = 0.05;

    private readonly FilmPlane plane;
    private readonly FilmSpec spec;
    private readonly double rimMm;
    private readonly double toMm;

    public FilmFrame(FilmPlane plane, double rimMm, FilmSpec spec) => (this.plane, this.rimMm, this.spec, toMm) = (plane, rimMm, spec, spec.ToMm ?? rimMm);

    private bool Lies => spec.Placement == FilmPlacement.Flat;

    // upwards in the mould, along the sheet; a piece that is turned over later has its sheet upside down
    private double Up => Math.Sign(plane.V.Z);

    /// <summary>Only what lies between the two heights.</summary>
    public Geometry Clip(Geometry area)
    {
        if (Lies || area.IsEmpty)
        {
            return area;
        }

        var (a, b) = (Row(spec.FromMm), Row(toMm));
        var around = area.EnvelopeInternal;
        return area.Intersection(Areas.Box(around.MinX - 1, Math.Min(a, b), around.MaxX + 1, Math.Max(a, b)));
    }

    /// <summary>The open side drawn on upwards, so that the margin is kept to the wall and not to the air above the rim.</summary>
    public Geometry RaiseOpenSide(Geometry whole)
    {
        if (Lies || whole.IsEmpty || spec.MarginMm + spec.TabMm == 0)
        {
            return whole;
        }

        var rim = Areas.WithoutSlivers(whole).SelectMany(Sides).Where(s => At(s.A, rimMm) && At(s.B, rimMm));
        return rim.Aggregate(whole, (sum, s) => sum.Union(Above(s.A, s.B, (2 * spec.MarginMm) + spec.TabMm)));
    }

    /// <summary>With the strip to hold it by above every open edge, as far as the wall leaves room for it.</summary>
    public Geometry WithTab(Geometry body, IEnumerable<FilmEdge> edges, Geometry room) =>
        Lies || spec.TabMm == 0 ? body : edges.Where(e => e.Meets == EdgeMeets.Open).Aggregate(body, (sum, e) => sum.Union(Above(e.From, e.To, spec.TabMm).Intersection(room)));

    /// <summary>Every edge and what it meets.</summary>
    public IReadOnlyList<FilmEdge> Edges(IReadOnlyList<FilmArea> body, Geometry whole, IReadOnlyList<double> layerTopsMm)
    {
        var near = spec.MarginMm <= FilmCheck.CarriesWithinMm ? EdgeMeets.Wall : EdgeMeets.Gap;
        return [.. body.SelectMany(Sides).Select(s => new FilmEdge(s.A, s.B, Meets(s.A, s.B)))];

        EdgeMeets Meets(FilmPoint a, FilmPoint b) =>
            Lies ? layerTopsMm.Any(t => Math.Abs(t - spec.HeightMm) <= OnLayerMm) ? EdgeMeets.Layer : near
            : At(a, toMm) && At(b, toMm) ? EdgeMeets.Open
            : !At(a, spec.FromMm) || !At(b, spec.FromMm) || spec.FromMm <= 0 ? near
            : layerTopsMm.Any(t => Math.Abs(t - spec.FromMm) <= OnLayerMm) ? EdgeMeets.Layer
            : OnWall(whole, a, b) ? near : EdgeMeets.Nothing;
    }

    private static IEnumerable<(FilmPoint A, FilmPoint B)> Sides(FilmArea area) => area.Rings.SelectMany(r => r.Select((p, i) => (p, r[(i + 1) % r.Count])));

    private static bool OnWall(Geometry whole, FilmPoint a, FilmPoint b) =>
        whole.Boundary.IsWithinDistance(new Point((a.UMm + b.UMm) / 2, (a.VMm + b.VMm) / 2), TouchMm);

    private double Row(double heightMm) => (heightMm - plane.Origin.Z) / plane.V.Z;

    private bool At(FilmPoint p, double heightMm) => Math.Abs(plane.At(p).Z - heightMm) <= TouchMm;

    private Geometry Above(FilmPoint a, FilmPoint b, double mm) =>
        Areas.Box(Math.Min(a.UMm, b.UMm), Math.Min(a.VMm, a.VMm + (Up * mm)), Math.Max(a.UMm, b.UMm), Math.Max(a.VMm, a.VMm + (Up * mm)));
}
