using Studio.Engine.Bubbles;
using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Resins;

namespace Studio.Heat;

/// <summary>What becomes of a bubble in one layer.</summary>
/// <param name="Name">The layer.</param>
/// <param name="Words">Whole sentences.</param>
/// <param name="Leaves">Null where it cannot be said.</param>
/// <param name="GelHours">Until gel in this room [h]; null where it is not known.</param>
/// <param name="Model">How it was reckoned.</param>
public sealed record BubbleSight(string Name, string Words, bool? Leaves, double? GelHours, string Model);

/// <summary>Bubbles of a design, layer by layer.</summary>
public static class BubbleFigures
{
    private const double MPasPerPaS = 1000;

    /// <summary>Works one layer out.</summary>
    /// <param name="name">For the page.</param>
    /// <param name="resin">Its sheet.</param>
    /// <param name="level">Its depth.</param>
    /// <param name="kinetics">How it cures, where known.</param>
    /// <param name="likely">Resins that it may be; how long pressure is kept waits for the slow ones.</param>
    /// <param name="roomC">[°C].</param>
    /// <param name="bubbleMm">Diameter [mm].</param>
    public static BubbleSight Of(string name, Resin resin, LayerResult level, Kinetics? kinetics, LikelyCure? likely, double roomC, double bubbleMm)
    {
        if (resin.ViscosityMPas is not { } viscosity)
        {
            return new(name, $"The sheet of {resin.Name} in the stores gives no mixed viscosity, so nothing can be said. Type it there.", null, null, "");
        }

        var (thickening, model) = Thickens(resin, viscosity / MPasPerPaS, kinetics, roomC);
        if (thickening is null)
        {
            return new(name, $"How fast {resin.Name} thickens is not known: its sheet gives neither a pot life nor a gel time.", null, null, "");
        }

        var density = Engine.Resins.MixedResin.Make(resin.Spec, "resin", new Engine.InputErrors())?.DensityGPerMl * 1000 ?? 1100;
        var escape = Escape.Of(bubbleMm, level.DepthMm, density, thickening);
        return new(name, escape.Message, escape.Leaves, GelHours(name, resin, kinetics, likely, roomC), model);
    }

    // how long pressure is kept is the clock's to say: the later of sheet and fit, in this room
    private static double? GelHours(string name, Resin resin, Kinetics? kinetics, LikelyCure? likely, double roomC) =>
        CureClock.Run([new Engine.Cure.PouredLayer(name, resin.Sheet, 0) { Kinetics = kinetics, Likely = likely }], [new(0, roomC)], double.PositiveInfinity).Layers[0].Gel.AtHours;

    // the sheet's viscosity is for its own temperature; a colder mix is thicker, which the page says
    private static (Thickening? Thickening, string Model) Thickens(Resin resin, double startPaS, Kinetics? kinetics, double roomC)
    {
        if (kinetics is not null)
        {
            var clock = new KineticClock(kinetics, resin.Sheet, new RoomLog([new(0, roomC)]), 0);
            return (Thickening.Along(startPaS, clock), "thickening by the resin's fitted cure, as conversion nears the gel (Castro and Macosko)");
        }

        var gel = resin.Times.MinBy(t => Math.Abs(t.AtCelsius - roomC))?.GelHours;
        return resin.PotLifeMinutes is { } pot ? (Thickening.Doubling(startPaS, pot / 60, gel ?? 2 * pot / 60), "thickening twofold with every pot life, by the sheet alone") : (null, "");
    }
}
