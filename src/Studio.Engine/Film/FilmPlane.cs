using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Engine.Film;

/// <summary>The plane of a sheet: a point on it, and its own directions to the right and upwards, of length 1 and square to each other.</summary>
public sealed record FilmPlane(Point3 Origin, Point3 U, Point3 V)
{
    // more corners than a polygon mould can have: the wall is round, and any diameter is as good as another
    private const int MostCorners = 12;

    /// <summary>Towards whoever looks at the sheet's front.</summary>
    public Point3 Normal => U.Cross(V);

    /// <summary>A point of the sheet in the mould.</summary>
    public Point3 At(FilmPoint p) => Origin + (U * p.UMm) + (V * p.VMm);

    /// <summary>Where a point of the mould falls on the sheet.</summary>
    public FilmPoint On(Point3 p) => new((p - Origin).Dot(U), (p - Origin).Dot(V));

    /// <summary>How far a point stands in front of the plane [mm]; negative behind it.</summary>
    public double InFrontMm(Point3 p) => (p - Origin).Dot(Normal);

    /// <summary>The plane that a placement means in a mould.</summary>
    public static FilmPlane Of(FilmSpec spec, MouldBody mould) => spec.Placement switch
    {
        FilmPlacement.Flat => Flat(spec.HeightMm, spec.Over),
        FilmPlacement.Parallel => Upright(spec.TurnDegrees ?? 0, Forward(spec, mould), 0, 0, spec.Over),
        FilmPlacement.Free => Upright(spec.TurnDegrees ?? 0, spec.OffsetMm, spec.LeanDegrees, mould.HeightMm / 2, spec.Over),
        _ => Upright(DiagonalDegrees(mould, spec.TurnDegrees), 0, 0, 0, spec.Over),
    };

    /// <summary>The turn in plan [degrees] of the plane through two opposite corners nearest to a wish; for round and odd moulds the wish itself.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="wishDegrees">Null for the first diagonal, or a corner of an odd mould.</param>
    public static double DiagonalDegrees(MouldBody mould, double? wishDegrees)
    {
        var corners = Corners(mould);
        if (corners.Count is < 3 or > MostCorners || (corners.Count % 2 == 1 && wishDegrees is not null))
        {
            return wishDegrees ?? 0;
        }

        return Turns(corners).MinBy(t => Math.Abs(Half(t - (wishDegrees ?? 45))));
    }

    /// <summary>Turns in plan [degrees] of the planes through opposite corners, largest first; empty where any or no corner has one opposite.</summary>
    public static IReadOnlyList<double> DiagonalTurns(MouldBody mould) =>
        Corners(mould) is { Count: >= 3 and <= MostCorners } corners && corners.Count % 2 == 0 ? [.. Turns(corners).Select(t => Math.Round(t, 6)).Distinct().OrderDescending()] : [];

    /// <summary>True when the mould has faces, and so turns in plan that lie along them.</summary>
    public static bool HasFaces(MouldBody mould) => Corners(mould).Count is >= 3 and <= MostCorners;

    /// <summary>Turn in plan [degrees] of each face, the front one first, anticlockwise seen from above; empty for a round mould.</summary>
    public static IReadOnlyList<double> FaceTurns(MouldBody mould)
    {
        var corners = Corners(mould);
        return !HasFaces(mould) ? []
            : [.. corners.Select((c, i) => (A: c, B: corners[(i + 1) % corners.Count])).Select(e => Whole(Math.Atan2(e.B.YMm - e.A.YMm, e.B.XMm - e.A.XMm) * 180 / Math.PI)).Order()];
    }

    private static IEnumerable<double> Turns(IReadOnlyList<PlanPoint> corners) => corners.Select(c => Half(Math.Atan2(c.YMm, c.XMm) * 180 / Math.PI));

    // a mesh has no plan at the very rim
    private static IReadOnlyList<PlanPoint> Corners(MouldBody mould) =>
        mould.Outline.PlanAt(mould.HeightMm) is { Count: >= 3 } rim ? rim : mould.Outline.PlanAt(mould.HeightMm * 0.999);

    private static FilmPlane Upright(double turnDegrees, double forwardMm, double leanDegrees, double atMm, bool over)
    {
        var (turn, lean) = (turnDegrees * Math.PI / 180, leanDegrees * Math.PI / 180);
        var right = new Point3(Math.Cos(turn), Math.Sin(turn), 0);
        var front = new Point3(Math.Sin(turn), -Math.Cos(turn), 0);
        var up = new Point3(0, 0, Math.Cos(lean)) - (front * Math.Sin(lean));
        var origin = (front * forwardMm) + new Point3(0, 0, atMm);
        return over ? new(origin, right * -1, up * -1) : new(origin, right, up);
    }

    // seen from above as it is cast; from below, once it stands turned over
    private static FilmPlane Flat(double heightMm, bool over) => new(new(0, 0, heightMm), new(1, 0, 0), new(0, over ? -1 : 1, 0));

    private static double Forward(FilmSpec spec, MouldBody mould)
    {
        if (spec.DepthFrom != "front")
        {
            return spec.DepthMm;
        }

        var turn = (spec.TurnDegrees ?? 0) * Math.PI / 180;
        var mesh = mould.Surface();
        return Enumerable.Range(0, mesh.VertexCount).Select(mesh.Vertex).Max(p => (p.X * Math.Sin(turn)) - (p.Y * Math.Cos(turn))) - spec.DepthMm;
    }

    // a plane seen from behind is the same plane
    private static double Half(double degrees) => degrees - (180 * Math.Ceiling((degrees / 180) - 0.5));

    private static double Whole(double degrees) => Math.Round(degrees - (360 * Math.Floor((degrees + 1e-9) / 360)), 6);
}
