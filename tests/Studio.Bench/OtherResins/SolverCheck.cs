using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>The rings beside Studio's own solver on one resin of the fit's form: what is left between them on other resins is kinetics, not geometry.</summary>
internal static class SolverCheck
{
    private const double DeepMm = 40;
    private const double RoomC = 28;

    /// <summary>What, by Studio, by the rings, and how far they may lie apart.</summary>
    public static IReadOnlyList<(string What, double Expected, double Got, double Allowed)> Run()
    {
        // vitrification far away, where both forms of slowing leave all of the rate
        var kinetics = new Kinetics { RateAt23CPerS = 3.5e-5, Kappa = 0.04, ActivationJPerMol = 55e3, HeatJPerKg = 360e3, VitrificationOffsetK = 1000 };
        var ours = HeatRun.Run(
            new HeatInput
            {
                Mould = ConeMould.Cylinder(DrawnTrial.MouldMm, DeepMm),
                Wall = new WallSpec { ThicknessMm = DrawnTrial.WallMm, FloorMm = DrawnTrial.WallMm, StartCelsius = RoomC },
                Boundary = new BoundarySpec(),
                Room = [new RoomReading(0, RoomC)],
                Layers = [new HeatLayer(kinetics, 1100, 1900, 0.19, 0, DeepMm, 0, RoomC)],
                UntilHours = 80,
            },
            MouldShapes.Make(ConeMould.Cylinder(DrawnTrial.MouldMm, DeepMm)).Value,
            new HeatFineness(12, 16, 4, 0.5)).Layers[0];
        var matter = new DrawnMatter(1100, 0.19, 360e3, 1900, 0, 0, new(true, -40, 55, 0.4));
        var theirs = new RoundHeat(
            RoundBody.Cylinder(DrawnTrial.MouldMm, DeepMm, DrawnTrial.WallMm, DrawnTrial.WallMm, 18), matter,
            new(new TwoEnergies(kinetics.Kappa, 55, 55, 1, 2), new CriticalConversion(2, 0, 60), kinetics.RateAt23CPerS), new(0.25, 1150, 1300), new(10, 8, 5), RoomC, RoomC)
            .Run(80, kinetics.GelConversion, RoomC, 0, 0.5);
        return
        [
            ("the rings beside Studio's solver, the fit's own form: peak [°C]", ours.PeakCelsius, theirs.PeakC, 0.3),
            ("likewise: first gel [h]", ours.FirstGelAfterHours!.Value, theirs.FirstGelHours, 0.01 * theirs.FirstGelHours),
            ("likewise: last gel [h]", ours.LastGelAfterHours!.Value, theirs.LastGelHours, 0.01 * theirs.LastGelHours),
        ];
    }
}
