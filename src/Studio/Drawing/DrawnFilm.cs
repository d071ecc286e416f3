using Studio.Engine.Meshes;

namespace Studio.Drawing;

/// <summary>A photograph on film, or another flat thing, as it stands in the piece.</summary>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Rings">Outlines and holes in one plane, as the piece stands for casting [mm]: x to the right, y away, z upwards.</param>
public sealed record DrawnFilm(string Name, IReadOnlyList<IReadOnlyList<Point3>> Rings)
{
    /// <summary>As triangles; empty where the outline has no area.</summary>
    public TriangleMesh Face()
    {
        var all = Rings.SelectMany(r => r).ToList();
        if (all.Count < 3 || all.MaxBy(p => (p - all[0]).Length) - all[0] is not { Length: > 0 } along)
        {
            return new TriangleMesh([], []);
        }

        var u = along * (1 / along.Length);
        var across = all.Select(p => p - all[0]).Select(p => p - (u * p.Dot(u))).MaxBy(p => p.Length);
        var v = across.Length > 0 ? across * (1 / across.Length) : across;
        var corners = FlatArea.Of(Rings.Select(r => (IReadOnlyList<(double, double)>)[.. r.Select(p => ((p - all[0]).Dot(u), (p - all[0]).Dot(v)))])).Triangles().SelectMany(t => new[] { t.A, t.B, t.C }).ToList();
        return new TriangleMesh([.. corners.Select(c => all[0] + (u * c.U) + (v * c.V)).SelectMany(p => new[] { p.X, p.Y, p.Z })], [.. Enumerable.Range(0, corners.Count)]);
    }
}

/// <summary>A sheet as the section sees it.</summary>
/// <param name="Rings">Outlines and holes in section coordinates, or the two ends of its edge.</param>
/// <param name="Filled">True where its face is seen, false where it is seen on edge, as a line.</param>
public sealed record SectionFilm(string Name, IReadOnlyList<IReadOnlyList<SectionPoint>> Rings, bool Filled)
{
    /// <summary>A sheet whose picture is thinner than this is seen on edge [mm].</summary>
    private const double EdgeMm = 0.5;

    /// <summary>Every corner.</summary>
    public IEnumerable<SectionPoint> Points => Rings.SelectMany(r => r);

    /// <summary>What of it lies between two heights of the drawing (Sutherland and Hodgman 1974, against two level lines).</summary>
    public SectionFilm Between(double lowMm, double highMm) => this with
    {
        Rings = [.. Rings.Select(r => Cut(Cut(r, p => p.ZMm - lowMm), p => highMm - p.ZMm)).Where(r => r.Count > 0)],
    };

    // a face closes upon itself, an edge has two ends
    private List<SectionPoint> Cut(IReadOnlyList<SectionPoint> ring, Func<SectionPoint, double> inside)
    {
        var kept = new List<SectionPoint>();
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, within) = (ring[i], inside(ring[i]) >= 0);
            if (within)
            {
                kept.Add(a);
            }

            var b = ring[(i + 1) % ring.Count];
            if ((Filled || i + 1 < ring.Count) && within != inside(b) >= 0)
            {
                var t = inside(a) / (inside(a) - inside(b));
                kept.Add(new(a.XMm + (t * (b.XMm - a.XMm)), a.ZMm + (t * (b.ZMm - a.ZMm))));
            }
        }

        return kept;
    }

    /// <summary>Looks at a sheet from the front.</summary>
    public static SectionFilm Of(DrawnFilm sheet)
    {
        var (rings, filled) = FlatLine.Of(sheet.Rings.Select(r => r.Select(p => (p.X, p.Z))), EdgeMm);
        return new SectionFilm(sheet.Name, [.. rings.Select(r => (IReadOnlyList<SectionPoint>)[.. r.Select(p => new SectionPoint(p.X, p.Y))])], filled);
    }
}
