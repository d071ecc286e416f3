using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Fit;

/// <summary>A trial that a sheet's maker ran, made again on the model: a body, its wall, and what is looked at.</summary>
internal sealed class SheetTrial
{
    // α at which the rate of an isothermal cure has long passed its greatest
    private const double PastPeak = 0.66;
    private const double DiffusivityM2PerS = 9e-8;

    // longer steps than a forecast's: a sheet's peaks are known to 10 K
    private const double Hasty = 2;

    private readonly MouldSpec spec;
    private readonly MouldBody mould;
    private readonly WallSpec wall;
    private readonly BoundarySpec boundary;
    private readonly HeatFineness fineness;
    private readonly double deepMm;
    private readonly double atC;

    private SheetTrial(double diameterMm, double deepMm, double atC, WallSpec wall, BoundarySpec boundary, HeatFineness fineness)
    {
        spec = ConeMould.Cylinder(diameterMm, deepMm);
        mould = MouldShapes.Make(spec).Value;
        (this.wall, this.boundary, this.fineness, this.deepMm, this.atC) = (wall, boundary, fineness, deepMm, atC);
    }

    /// <summary>A cup as wide as it is deep with a wall of 1 mm of plastic, filled with a mass [g].</summary>
    public static SheetTrial Cup(double massG, double densityKgPerM3, double atC)
    {
        var mm = 10 * Math.Cbrt(4 * massG * 1000 / densityKgPerM3 / Math.PI);
        var plastic = new WallSpec { ThicknessMm = 1, FloorMm = 1, ConductivityWPerMK = 0.2, DensityKgPerM3 = 1000, HeatCapacityJPerKgK = 1700, StartCelsius = atC };
        return new(mm, mm, atC, plastic, new BoundarySpec(), new HeatFineness(4, 6, 1, Hasty));
    }

    /// <summary>A slab without edges, open above, on 10 mm of silicone.</summary>
    public static SheetTrial Slab(double deepMm, double atC) =>
        new(500, deepMm, atC, new WallSpec { ThicknessMm = 0, FloorMm = 10, StartCelsius = atC }, new BoundarySpec(SideWPerM2K: 0), new HeatFineness(1, 8, 3, Hasty));

    /// <summary>Runs a resin past its peak.</summary>
    /// <param name="watched">Conversion whose first time is asked for.</param>
    public (double FirstHours, double PeakC) Run(FitResin resin, double watched)
    {
        var kinetics = resin.Kinetics with { GelConversion = watched };
        var lagH = 0.15 * deepMm * deepMm * 1e-6 / DiffusivityM2PerS / 3600;
        var input = new HeatInput
        {
            Mould = spec,
            Wall = wall,
            Boundary = Films(boundary, resin.FilmFactor),
            Room = [new RoomReading(0, atC)],
            Layers = [new HeatLayer(kinetics, resin.DensityKgPerM3, resin.HeatCapacityJPerKgK, resin.ConductivityWPerMK, 0, deepMm, 0, atC)],
            UntilHours = IsothermalClock.Hours(kinetics, atC, Math.Max(PastPeak, watched + 0.02)) + lagH,
        };
        var layer = HeatRun.Run(input, mould, fineness).Layers[0];
        return (layer.FirstGelAfterHours ?? input.UntilHours, layer.PeakCelsius);
    }

    /// <summary>Films times a factor.</summary>
    public static BoundarySpec Films(BoundarySpec boundary, double factor) => new(
        boundary.TopWPerM2K * factor, boundary.SideWPerM2K * factor, boundary.BottomWPerM2K * factor, boundary.VoidWPerM2K * factor);
}
