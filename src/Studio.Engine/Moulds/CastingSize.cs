namespace Studio.Engine.Moulds;

/// <summary>What the foot of a casting looks like from below.</summary>
public enum FootForm
{
    /// <summary>Comes to a point, so that there is nothing to measure.</summary>
    Point,

    Square,

    /// <summary>Four corners at right angles, longer one way.</summary>
    Oblong,

    Round,

    /// <summary>A regular polygon of more or fewer than four sides.</summary>
    Sided,

    /// <summary>Any other outline: its greatest width and depth.</summary>
    Free,

    /// <summary>Nobody knows the outline: the mould is known by a water fill alone.</summary>
    Unknown,
}

/// <summary>The outer size of what is cast up to a height, as it will stand: turned over, its foot the top of the pour. A box set into it changes nothing.</summary>
/// <param name="Foot">How the foot is to be said.</param>
/// <param name="Sides">Corners of the foot; 0 where they are not counted.</param>
/// <param name="WidthMm">Of the foot [mm].</param>
/// <param name="DepthMm">Of the foot [mm].</param>
/// <param name="WidestMm">The greatest width or depth at any height [mm].</param>
/// <param name="HeightMm">From the foot up [mm].</param>
public sealed record CastingSize(FootForm Foot, int Sides, double WidthMm, double DepthMm, double WidestMm, double HeightMm)
{
    // below this a foot is a point, and two lengths are the same [mm]
    private const double SameMm = 0.5;

    // regular moulds have twelve sides at most; a circle comes as a far finer polygon
    private const int MostSides = 12;

    /// <summary>Measures a casting.</summary>
    /// <param name="mould">As it stands for casting.</param>
    /// <param name="topMm">Top of the highest layer [mm], above 0; beyond the rim is the rim.</param>
    public static CastingSize Of(MouldBody mould, double topMm)
    {
        ArgumentNullException.ThrowIfNull(mould);
        var top = Math.Min(Require.Positive(topMm, "mm"), mould.HeightMm);
        if (mould.Shape.Needs is MouldNeeds.Readings)
        {
            return new(FootForm.Unknown, 0, 0, 0, 0, top);
        }

        var foot = mould.Outline.PlanAt(top);
        var (width, depth) = Across(foot);
        var widest = mould.SurfaceHeightsMm.Where(z => z < top).Append(top).Select(z => Across(mould.Outline.PlanAt(z))).Max(a => Math.Max(a.Width, a.Depth));
        return new(Form(foot, width, depth), foot.Count <= MostSides ? foot.Count : 0, width, depth, widest, top);
    }

    private static (double Width, double Depth) Across(IReadOnlyList<PlanPoint> corners) =>
        corners.Count == 0 ? (0, 0) : (corners.Max(c => c.XMm) - corners.Min(c => c.XMm), corners.Max(c => c.YMm) - corners.Min(c => c.YMm));

    private static FootForm Form(IReadOnlyList<PlanPoint> corners, double width, double depth)
    {
        if (width < SameMm && depth < SameMm)
        {
            return FootForm.Point;
        }

        if (corners.Count == 4 && Math.Abs((width * depth) - Math.Abs(PlanShape.AreaMm2(corners))) < 1e-6 * width * depth)
        {
            return Math.Abs(width - depth) < SameMm ? FootForm.Square : FootForm.Oblong;
        }

        var reaches = corners.Select(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm))).ToList();
        return reaches.Max() - reaches.Min() > SameMm ? FootForm.Free : corners.Count > MostSides ? FootForm.Round : FootForm.Sided;
    }
}
