namespace Studio.Engine.Moulds;

/// <summary>
/// A mould known by a water fill alone: volume at each reading, between them a monotone cubic that never overshoots (Fritsch and Butland 1984,
/// as scipy's PchipInterpolator). Its outline is unknown; it is drawn round, with the area that the fill implies.
/// </summary>
public sealed class MeasuredMould : MouldBody
{
    private const int CirclePoints = 180;

    private readonly double[] z;
    private readonly double[] mm3;
    private readonly double[] slopes;
    private readonly double[] moments;

    private MeasuredMould(double[] z, double[] mm3)
        : base(Kind, z[^1])
    {
        (this.z, this.mm3) = (z, mm3);
        slopes = MonotoneCubic.Slopes(z, mm3);
        moments = new double[z.Length];
        for (var i = 1; i < z.Length; i++)
        {
            moments[i] = moments[i - 1] + MomentOfPiece(i - 1, z[i]);
        }

        Outline = new Outline(RadiusMm, h => Circle(RadiusMm(h), CirclePoints));
    }

    /// <summary>Key and words of this shape; it has readings in place of dimensions.</summary>
    public static MouldShape Kind { get; } = new("measured", "Measured with water", [], _ => throw new NotSupportedException("A measured mould is made from readings."))
    {
        Needs = MouldNeeds.Readings,
        FromSpec = Make,
        Grid = MouldGrid.Areas,
    };

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<double> SurfaceHeightsMm =>
        [.. z.SelectMany((h, i) => i == 0 ? [h] : Enumerable.Range(1, 8).Select(k => z[i - 1] + ((h - z[i - 1]) * k / 8)))];

    /// <inheritdoc/>
    public override double AreaMm2(double zMm)
    {
        var (i, h) = Piece(zMm);
        return Math.Max(0, MonotoneCubic.Derivative(z, mm3, slopes, i, h));
    }

    /// <inheritdoc/>
    public override double VolumeMl(double zMm)
    {
        var (i, h) = Piece(zMm);
        return MonotoneCubic.Value(z, mm3, slopes, i, h) / 1000;
    }

    /// <inheritdoc/>
    public override double MomentMlMm(double zMm)
    {
        var (i, h) = Piece(zMm);
        return (moments[i] + MomentOfPiece(i, h)) / 1000;
    }

    /// <summary>Straight up: a fill says nothing of the wall.</summary>
    public override double FaceMarkMm(double zMm) => Height(zMm);

    /// <summary>The mean room around the box, both taken as discs of their areas: a fill does not know the wall.</summary>
    public override double ClearanceMm(double widthMm, double depthMm, double zMm) =>
        RadiusMm(zMm) - Math.Sqrt(Require.Positive(widthMm, "mm") * Require.Positive(depthMm, "mm") / Math.PI);

    private static MouldBody? Make(MouldSpec spec, string path, InputErrors errors)
    {
        var readings = spec.Readings ?? [];
        var good = FillCheck.Usable(readings, path + ".readings", errors);
        if (!good)
        {
            return null;
        }

        var whole = readings[0].HeightMm > 0 ? readings.Prepend(new FillReading(0, 0)).ToList() : [.. readings];
        return new MeasuredMould([.. whole.Select(r => r.HeightMm)], [.. whole.Select(r => r.VolumeMl * 1000)]);
    }

    // ∫ z dV over the part of a piece below h = h·V(h) − z0·V0 − ∫ V dz
    private double MomentOfPiece(int piece, double h) =>
        (h * MonotoneCubic.Value(z, mm3, slopes, piece, h)) - (z[piece] * mm3[piece]) - MonotoneCubic.Integral(z, mm3, slopes, piece, h);

    private double RadiusMm(double zMm) => Math.Sqrt(AreaMm2(zMm) / Math.PI);

    private (int Piece, double Height) Piece(double zMm)
    {
        var h = Height(zMm);
        var found = Array.BinarySearch(z, h);
        return (Math.Clamp(found >= 0 ? found : ~found - 1, 0, z.Length - 2), h);
    }
}
