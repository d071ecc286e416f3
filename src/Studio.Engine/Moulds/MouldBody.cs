using System.Runtime.InteropServices;
using Studio.Engine.Meshes;

namespace Studio.Engine.Moulds;

/// <summary>
/// The inside of a mould as it stands for casting: z [mm] counts from its lowest inner point upwards, 1 ml is 1000 mm³.
/// Plan axes: x to the right, y away from the viewer; polygons turn one face towards the viewer (its normal along −y), as boxes do.
/// </summary>
public abstract class MouldBody
{
    private const double Rounding = 1e-12;

    /// <summary>Takes the shape and the inner height [mm].</summary>
    protected MouldBody(MouldShape shape, double heightMm) => (Shape, HeightMm) = (shape, Require.Positive(heightMm, "mm"));

    /// <summary>What kind of mould it is.</summary>
    public MouldShape Shape { get; }

    /// <summary>In plain words, such as 'Pyramid'; where the measures change what a shape is called, as they do.</summary>
    public virtual string DisplayName => Shape.DisplayName;

    /// <summary>From the lowest inner point to the rim [mm].</summary>
    public double HeightMm { get; }

    /// <summary>Volume to the rim [ml].</summary>
    public double CapacityMl => VolumeMl(HeightMm);

    /// <summary>For drawings.</summary>
    public abstract Outline Outline { get; }

    /// <summary>Inner cross-section [mm²] at a height between 0 and <see cref="HeightMm"/>.</summary>
    public abstract double AreaMm2(double zMm);

    /// <summary>Volume below a height [ml].</summary>
    public abstract double VolumeMl(double zMm);

    /// <summary>First moment of the volume below a height about z = 0 [ml·mm]; divided by the volume it is the centroid's height.</summary>
    public abstract double MomentMlMm(double zMm);

    /// <summary>Length from z = 0 to a height along the middle of a face or the wall's generator [mm], where a ruler lies.</summary>
    public abstract double FaceMarkMm(double zMm);

    /// <summary>
    /// Room between a centred upright box's outline at a height and the wall, square to the wall's slope [mm]; negative where it pokes through.
    /// </summary>
    /// <param name="widthMm">Box along x [mm].</param>
    /// <param name="depthMm">Box along y [mm].</param>
    /// <param name="zMm">Height [mm].</param>
    public abstract double ClearanceMm(double widthMm, double depthMm, double zMm);

    /// <summary>The smallest room between a centred upright box and the wall anywhere between two heights [mm].</summary>
    /// <remarks>Straight and outward bulging walls are nearest at one of the ends; shapes that are neither look in between as well.</remarks>
    public virtual double ClearanceMm(double widthMm, double depthMm, double fromMm, double toMm) =>
        Math.Min(ClearanceMm(widthMm, depthMm, fromMm), ClearanceMm(widthMm, depthMm, toMm));

    /// <summary>Height up to which a volume [ml] fills the mould [mm]; the rim where it holds no more.</summary>
    public virtual double HeightAtMl(double volumeMl)
    {
        var (low, high) = (0.0, HeightMm);
        if (volumeMl >= CapacityMl)
        {
            return high;
        }

        for (var middle = high / 2; middle > low && middle < high; middle = low + ((high - low) / 2))
        {
            (low, high) = VolumeMl(middle) < volumeMl ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>How long the wall around a level section is, over a circle's of the same area [ratio, 1 for a circle]; null where nobody measures it.</summary>
    public virtual double? OutlineShare(double zMm) => null;

    /// <summary>Heights [mm] whose outlines, joined by straight lines, are the wall; more of them where it is curved.</summary>
    public virtual IReadOnlyList<double> SurfaceHeightsMm => [0, HeightMm];

    /// <summary>The wall with bottom and open top as a closed mesh, for cuts by a plane and for turning views; round walls come as fine facets.</summary>
    public virtual TriangleMesh Surface() =>
        Loft.Through([.. SurfaceHeightsMm.Select(z => (IReadOnlyList<Point3>)[.. Outline.PlanAt(z).Select(p => new Point3(p.XMm, p.YMm, z))])]);

    /// <summary>A circle as a fine polygon, anticlockwise.</summary>
    protected static IReadOnlyList<PlanPoint> Circle(double radiusMm, int points) =>
        [.. Enumerable.Range(0, points).Select(k => 2 * Math.PI * k / points).Select(a => new PlanPoint(radiusMm * Math.Cos(a), radiusMm * Math.Sin(a)))];

    /// <summary>Refuses heights outside the mould; a sum that misses the rim by rounding is the rim.</summary>
    protected double Height(double zMm) => Math.Min(Require.Within(zMm, 0, HeightMm * (1 + Rounding), "mm"), HeightMm);
}

/// <summary>A mould's lines for drawing, all lengths in mm.</summary>
/// <param name="HalfWidthMm">
/// Half width at a height of the vertical section through the middles of two opposite faces; for an odd number of sides, half the width
/// seen from the front.
/// </param>
/// <param name="PlanAt">The cross-section's corners at a height, anticlockwise seen from above; a circle comes as a fine polygon.</param>
public sealed record Outline(Func<double, double> HalfWidthMm, Func<double, IReadOnlyList<PlanPoint>> PlanAt)
{
    /// <summary>
    /// The upright section through the middle as polygons (x to the right, y upwards), outer ones anticlockwise and hollows clockwise, for a mould
    /// that is not alike on both sides; null where half widths say it all.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<PlanPoint>>? SectionMm { get; init; }
}

/// <summary>A point in plan, from the middle of the mould [mm].</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PlanPoint(double XMm, double YMm);
