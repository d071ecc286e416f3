using System.Runtime.InteropServices;
using Studio.Engine.Cure;

namespace Studio.Engine.Heat;

/// <summary>What one step did.</summary>
/// <param name="Released">By the reaction [J, less the symmetry's factor].</param>
/// <param name="Lost">To the room [J, likewise].</param>
/// <param name="Measure">Its largest change as a share of what is allowed; above 1 it was long, above 2 too long; not a number where it failed.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct HeatStep(double Released, double Lost, double Measure);

/// <summary>
/// One step of one stage: half a step of reaction at each node (midpoint rule), a whole step of conduction (SDIRK2, L-stable, one factored matrix for each step
/// size), half a step of reaction (Strang 1968). Beyond a factor for a size of step that is new it allocates nothing.
/// </summary>
/// <param name="share">Changes allowed in one step, as a share of the usual ones.</param>
internal sealed class HeatStepper(HeatStage stage, StageState state, RoomCurve room, double share)
{
    private const double Gamma = 1 - 0.70710678118654752440;
    private const double MostHeatK = 1.2;
    private const double MostConversion = 0.015;
    private const double MostChangeK = 3;

    /// <summary>Takes a step; the state it started from is kept and can be gone back to.</summary>
    /// <param name="atH">Its start [h] on the room's scale.</param>
    /// <param name="dt">Its length [s].</param>
    /// <param name="key">Names the length among those whose factors are kept.</param>
    public HeatStep Take(double atH, double dt, int key)
    {
        state.Keep();
        var (released1, heat1, turn1) = state.React(dt / 2);
        var lost = Conduct(atH, dt, key);
        var (released2, heat2, turn2) = state.React(dt / 2);
        var measure = Math.Max(Math.Max((heat1 + heat2) / MostHeatK, (turn1 + turn2) / MostConversion), state.Change() / MostChangeK) / share;
        return new HeatStep(released1 + released2, lost, measure);
    }

    private double Conduct(double atH, double dt, int key)
    {
        var part = Gamma * dt;
        var factor = stage.Factor(key, part);
        var (room1, room2) = (room.CelsiusAt(atH + (part / 3600)), room.CelsiusAt(atH + (dt / 3600)));
        var (t, first, x) = (state.Temperature, state.First, state.Work);
        for (var n = 0; n < t.Length; n++)
        {
            first[n] = (stage.Capacity[n] * t[n]) + (part * stage.Film[n] * room1);
        }

        factor.Solve(first);
        double out1 = 0;
        for (var n = 0; n < t.Length; n++)
        {
            out1 += stage.Film[n] * (first[n] - room1);
            x[n] = (stage.Capacity[n] * (t[n] + ((1 - Gamma) / Gamma * (first[n] - t[n])))) + (part * stage.Film[n] * room2);
        }

        factor.Solve(x);
        double out2 = 0;
        for (var n = 0; n < t.Length; n++)
        {
            out2 += stage.Film[n] * (x[n] - room2);
            t[n] = x[n];
        }

        return dt * (((1 - Gamma) * out1) + (Gamma * out2));
    }
}
