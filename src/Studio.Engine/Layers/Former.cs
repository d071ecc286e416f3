using Studio.Engine.Moulds;

namespace Studio.Engine.Layers;

/// <summary>The checked box that leaves room for lights: what it displaces and how near it stands to the wall.</summary>
internal sealed class Former
{
    // rounding in the mould's own arithmetic must not turn 'touches' into 'pokes through'
    private const double TouchMm = 1e-9;

    private readonly FormerSpec spec;
    private readonly MouldBody mould;
    private readonly double floorMm;

    private Former(FormerSpec spec, MouldBody mould) => (this.spec, this.mould, floorMm) = (spec, mould, spec.Solid ? spec.FromMm : spec.FloorMm ?? spec.FromMm);

    private double BoxMm2 => spec.OuterWidthMm * spec.OuterDepthMm;

    private double WallsMm2 => spec.Solid ? BoxMm2 : BoxMm2 - ((spec.OuterWidthMm - (2 * spec.WallMm!.Value)) * (spec.OuterDepthMm - (2 * spec.WallMm.Value)));

    /// <summary>Checks the box against the mould where there is one; null, with errors added, when it cannot be used.</summary>
    public static Former? Make(FormerSpec spec, MouldBody? mould, InputErrors errors)
    {
        var sized = errors.Positive("former.outerWidthMm", spec.OuterWidthMm, Dimension.LongestMm, "mm")
            & errors.Positive("former.outerDepthMm", spec.OuterDepthMm, Dimension.LongestMm, "mm")
            & errors.Within("former.fromMm", spec.FromMm, 0, Dimension.LongestMm, "mm");
        var good = sized & CheckWall(spec, errors) & CheckHeights(spec, mould, errors);
        return good && mould is not null && Fits(spec, mould, errors) ? new Former(spec, mould) : null;
    }

    /// <summary>Volume displaced between two heights [ml].</summary>
    public double VolumeMl(double fromMm, double toMm) => Sum(fromMm, toMm, (a, b) => b - a);

    /// <summary>What it takes of the surface just below a height [mm²].</summary>
    public double AreaMm2(double zMm) => zMm <= spec.FromMm ? 0 : zMm <= floorMm ? WallsMm2 : BoxMm2;

    /// <summary>First moment of that volume about z = 0 [ml·mm].</summary>
    public double MomentMlMm(double fromMm, double toMm) => Sum(fromMm, toMm, (a, b) => ((b * b) - (a * a)) / 2);

    /// <summary>Smallest room between box and wall between two heights [mm]; null where the box is not there.</summary>
    public double? ClearanceMm(double fromMm, double toMm)
    {
        var start = Math.Max(fromMm, spec.FromMm);
        return start < toMm ? Clearance(spec, mould, start, toMm) : null;
    }

    private static double Clearance(FormerSpec spec, MouldBody mould, double fromMm, double toMm) =>
        mould.ClearanceMm(spec.OuterWidthMm, spec.OuterDepthMm, fromMm, toMm);

    private static bool CheckWall(FormerSpec spec, InputErrors errors)
    {
        if (spec.WallMm is not { } wall)
        {
            if (!spec.Solid)
            {
                errors.Add("former.wallMm", "A hollow former needs the thickness of its wall. Give 'wallMm', or set 'solid' to true.", "former-wall-missing");
            }

            return spec.Solid;
        }

        if (!errors.Positive("former.wallMm", wall, Dimension.LongestMm, "mm"))
        {
            return false;
        }

        if (!spec.Solid && Math.Min(spec.OuterWidthMm, spec.OuterDepthMm) is > 0 and var narrow && 2 * wall >= narrow)
        {
            errors.Add("former.wallMm", FormattableString.Invariant($"Two walls of {wall} mm leave no room inside a box of {spec.OuterWidthMm} by {spec.OuterDepthMm} mm."));
            return false;
        }

        return true;
    }

    private static bool CheckHeights(FormerSpec spec, MouldBody? mould, InputErrors errors)
    {
        var top = mould?.HeightMm ?? Dimension.LongestMm;
        var good = true;
        if (spec.FromMm >= top)
        {
            errors.Add("former.fromMm", FormattableString.Invariant($"The former would start at {spec.FromMm} mm, at or above the rim at {top} mm."));
            good = false;
        }

        if (!errors.Within("former.floorMm", spec.FloorMm, 0, Dimension.LongestMm, "mm"))
        {
            good = false;
        }
        else if (spec.FloorMm is { } floor && (floor < spec.FromMm || floor > top))
        {
            errors.Add("former.floorMm", FormattableString.Invariant($"The floor must lie between the former's start at {spec.FromMm} mm and the rim at {top} mm; {floor} was given."));
            good = false;
        }

        return good;
    }

    private static bool Fits(FormerSpec spec, MouldBody mould, InputErrors errors)
    {
        if (Clearance(spec, mould, spec.FromMm, mould.HeightMm) >= -TouchMm)
        {
            return true;
        }

        var narrowest = new[] { spec.FromMm, mould.HeightMm }.MinBy(z => mould.ClearanceMm(spec.OuterWidthMm, spec.OuterDepthMm, z));
        var depthAlone = Clearance(spec with { OuterWidthMm = TouchMm }, mould, spec.FromMm, mould.HeightMm) < -TouchMm;
        var widthAlone = Clearance(spec with { OuterDepthMm = TouchMm }, mould, spec.FromMm, mould.HeightMm) < -TouchMm;
        errors.Add(
            depthAlone && !widthAlone ? "former.outerDepthMm" : "former.outerWidthMm",
            FormattableString.Invariant($"The former, {spec.OuterWidthMm} by {spec.OuterDepthMm} mm, pokes through the mould's wall at a height of {narrowest} mm. Make it narrower or start it where the mould is wider."));
        return false;
    }

    // walls alone below the floor, the whole box above it
    private double Sum(double fromMm, double toMm, Func<double, double, double> weigh) =>
        ((WallsMm2 * Shared(fromMm, toMm, spec.FromMm, floorMm, weigh)) + (BoxMm2 * Shared(fromMm, toMm, floorMm, mould.HeightMm, weigh))) / 1000;

    private static double Shared(double fromMm, double toMm, double lowMm, double highMm, Func<double, double, double> weigh)
    {
        var (a, b) = (Math.Max(fromMm, lowMm), Math.Min(toMm, highMm));
        return a < b ? weigh(a, b) : 0;
    }
}
