namespace Studio.Engine.Moulds;

/// <summary>
/// What a mould that does not stand level does to a layer's line: the resin levels itself, so its line rises from one side of the mould to
/// the other by the width across times the tangent of the tilt. The volume under the line stays that of a level line through the middle
/// wherever the wall stands upright (Machinery's Handbook 31, p. 89, cylinder cut at an angle).
/// </summary>
public static class Levelness
{
    /// <summary>How far a line may run off before people see it [mm], unless another is chosen; our rule.</summary>
    public const double VisibleMm = 0.5;

    /// <summary>Steepest tilt worked with [°].</summary>
    public const double SteepestDegrees = 45;

    /// <summary>The greatest width across the mould at a height, in whichever direction it lies [mm]: where a tilt shows most.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="zMm">Height, from 0 to the rim [mm].</param>
    public static double AcrossMm(MouldBody mould, double zMm)
    {
        var hull = PlanShape.Hull(mould.Outline.PlanAt(zMm));
        return Math.Sqrt(hull.SelectMany(a => hull.Select(b => Square(a.XMm - b.XMm) + Square(a.YMm - b.YMm))).DefaultIfEmpty(0).Max());
    }

    /// <summary>How far a line runs off from one side to the other [mm].</summary>
    /// <param name="acrossMm">Width across [mm], 0 or more.</param>
    /// <param name="tiltDegrees">Tilt, from 0 to <see cref="SteepestDegrees"/> [°].</param>
    public static double RunOffMm(double acrossMm, double tiltDegrees) =>
        Require.Within(acrossMm, 0, double.MaxValue, "mm") * Math.Tan(Radians(Require.Within(tiltDegrees, 0, SteepestDegrees, "°")));

    /// <summary>A tilt as a rise over 100 mm [mm].</summary>
    public static double MmPer100Mm(double tiltDegrees) => RunOffMm(100, tiltDegrees);

    /// <summary>A rise over 100 mm [mm] as a tilt [°].</summary>
    public static double TiltDegrees(double mmPer100Mm) => Degrees(Math.Atan(Require.Within(mmPer100Mm, 0, 100, "mm per 100 mm") / 100));

    /// <summary>The most tilt that keeps a line within a visible error [°]; <see cref="SteepestDegrees"/> where the mould is a point there.</summary>
    public static double MostTiltDegrees(double acrossMm, double visibleMm = VisibleMm) =>
        Math.Min(SteepestDegrees, Degrees(Math.Atan2(Require.Positive(visibleMm, "mm"), Require.Within(acrossMm, 0, double.MaxValue, "mm"))));

    private static double Square(double value) => value * value;

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
