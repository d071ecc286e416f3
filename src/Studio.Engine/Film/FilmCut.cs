using NetTopologySuite.Geometries;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Engine.Film;

/// <summary>Cuts a sheet to fit a mould: the plane through the wall, between two heights, set in so that it goes in.</summary>
public static class FilmCut
{
    private const double FarMm = 1e5;
    private const double Flush = 1e-10;

    /// <summary>Works a sheet out.</summary>
    /// <param name="mould">The mould as it stands for casting.</param>
    /// <param name="spec">Where the sheet stands.</param>
    /// <param name="around">What else is in the mould.</param>
    /// <param name="path">Field that errors and findings are reported at, such as <c>sheets[0]</c>.</param>
    /// <returns>The fit with its findings, or every number that cannot be used.</returns>
    public static Outcome<FilmFit> Fit(MouldBody mould, FilmSpec spec, FilmSurroundings around, string path = "sheet")
    {
        var errors = FilmCheck.Errors(mould, spec, path);
        return errors.Count > 0 ? Outcome<FilmFit>.Refused(errors) : Outcome<FilmFit>.Of(Work(mould, mould.Surface(), spec, around, path));
    }

    private static FilmFit Work(MouldBody mould, TriangleMesh wall, FilmSpec spec, FilmSurroundings around, string path)
    {
        var plane = FilmPlane.Of(spec, mould);
        var whole = Section(wall, plane);
        if (whole.IsEmpty || Areas.WithoutSlivers(whole).Count == 0)
        {
            return new FilmFit { Plane = plane, Findings = [FilmCheck.Outside(wall, plane, spec, path)] };
        }

        var frame = new FilmFrame(plane, mould.HeightMm, spec);
        var room = Areas.Inset(frame.RaiseOpenSide(whole), spec.MarginMm);
        var body = frame.Clip(room);
        var fit = new FilmFit { Plane = plane, Cut = Areas.WithoutSlivers(frame.Clip(whole)), Body = Areas.WithoutSlivers(body) };
        if (fit.Body.Count == 0)
        {
            return fit with { Cut = [], Findings = [FilmCheck.NothingLeft(fit, spec, path)] };
        }

        body = Areas.Of(fit.Body);
        var edges = frame.Edges(fit.Body, whole, around.LayerTopsMm);
        var seal = FilmInks.Find(spec.Ink)!.SealMm;
        fit = fit with
        {
            Edges = edges,
            Film = Areas.WithoutSlivers(frame.WithTab(body, edges, room)),
            CutAway = spec.TabMm > 0 ? [.. edges.Where(e => e.Meets == EdgeMeets.Open).Select(e => (e.From, e.To))] : [],
            Picture = Areas.WithoutSlivers(Areas.Inset(body, seal)),
            Look = FilmLook.Through(InFront(wall, plane, body) is var (depth, flat) ? depth : 0, flat),
        };
        return fit with { Findings = FilmCheck.Findings(fit, spec, around, path) };
    }

    private static Geometry Section(TriangleMesh wall, FilmPlane plane)
    {
        var away = Distances(wall, plane);
        var cut = Area(inPlaneIsFront: true);
        return cut.IsEmpty ? Area(inPlaneIsFront: false) : cut;

        Geometry Area(bool inPlaneIsFront) => Areas.Of(MeshCut.Loops(wall, away, inPlaneIsFront).Select(l => (IReadOnlyList<FilmPoint>)[.. l.Select(plane.On)]));
    }

    // nearer to the plane than this share of the mesh's size, a vertex lies in it
    private static double[] Distances(TriangleMesh mesh, FilmPlane plane)
    {
        var (low, high) = mesh.Bounds();
        var flush = Flush * ((high - low).Length + low.Length + plane.Origin.Length);
        var away = MeshCut.Distances(mesh, plane.Normal, plane.Origin.Dot(plane.Normal));
        for (var i = 0; i < away.Length; i++)
        {
            away[i] = Math.Abs(away[i]) <= flush ? 0 : away[i];
        }

        return away;
    }

    // square to the sheet, from its middle to the wall before it
    private static (double Mm, bool Flat) InFront(TriangleMesh wall, FilmPlane plane, Geometry body)
    {
        var middle = (body.Centroid is { IsEmpty: false } centre && body.Contains(centre) ? centre : body.InteriorPoint).Coordinate;
        var (from, towards) = (plane.At(new(middle.X, middle.Y)), plane.Normal);
        var best = (Mm: FarMm, Flat: true);
        for (var t = 0; t < wall.TriangleCount; t++)
        {
            var (a, b, c) = wall.Triangle(t);
            if (Strikes(from, towards, a, b - a, c - a) is { } mm && mm < best.Mm)
            {
                var face = (b - a).Cross(c - a);
                best = (mm, face.Dot(towards) > SquareEnough * face.Length);
            }
        }

        return best.Mm == FarMm ? (0, true) : best;
    }

    // cos 3°: beyond, resin shifts the picture as well as lifting it
    private const double SquareEnough = 0.9986;

    // Möller and Trumbore, Fast, minimum storage ray-triangle intersection, 1997
    private static double? Strikes(Point3 from, Point3 towards, Point3 corner, Point3 one, Point3 two)
    {
        const double edge = 1e-9;
        var p = towards.Cross(two);
        var det = one.Dot(p);
        if (Math.Abs(det) < 1e-12)
        {
            return null;
        }

        var s = from - corner;
        var u = s.Dot(p) / det;
        var q = s.Cross(one);
        var v = towards.Dot(q) / det;
        var mm = two.Dot(q) / det;
        return u >= -edge && v >= -edge && u + v <= 1 + edge && mm >= 0 ? mm : null;
    }
}
