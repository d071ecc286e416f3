using Studio.Engine.Cure;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>A moment of a layer: hours after its pour, its hottest place, the middle of its surface, and its middle line at the input's probe (else not a number) [°C].</summary>
public sealed record HeatMoment(double AfterHours, double HottestC, double SurfaceC, double ProbeC = double.NaN);

/// <summary>What one layer did between its pour and the next.</summary>
public sealed record LayerHeat
{
    public required double PeakCelsius { get; init; }

    public required double PeakAfterHours { get; init; }

    public required double PeakHeightMm { get; init; }

    public double? FirstGelAfterHours { get; init; }

    public double? LastGelAfterHours { get; init; }

    public required double LeastConversion { get; init; }

    public required double MeanConversion { get; init; }

    public required double MouldFacePeakCelsius { get; init; }

    /// <summary>Fastest fall of its hottest place after the peak [K/h].</summary>
    public required double SteepestFallKPerH { get; init; }

    public required IReadOnlyList<HeatMoment> Curve { get; init; }
}

/// <summary>The whole run.</summary>
/// <param name="Layers">In pouring order.</param>
/// <param name="EnergyMiss">(stored + lost − released) / released.</param>
/// <param name="Nodes">Size of the grid.</param>
/// <param name="Steps">Time steps taken.</param>
public sealed record HeatOutcome(IReadOnlyList<LayerHeat> Layers, double EnergyMiss, int Nodes, int Steps)
{
    /// <summary>The half section through the piece; null where the input asks for no picture.</summary>
    public HeatSection? Section { get; init; }

    /// <summary>Temperatures of the section at the hours the input asks for, in their order; hours outside the run are left out.</summary>
    public IReadOnlyList<HeatPicture> Pictures { get; init; } = [];
}

/// <summary>
/// Solves ρ c ∂T/∂t = ∇·(k∇T) + ρ H ∂α/∂t from pour to pour: half a step of reaction at each node (midpoint rule), a whole step of conduction (SDIRK2, L-stable,
/// one factored matrix for each step size), half a step of reaction (Strang 1968).
/// </summary>
public sealed class HeatRun
{
    private const double Gamma = 1 - 0.70710678118654752440;
    private const double BaseS = 2;
    private const int TopLevel = 11;
    private const int OddStep = int.MinValue;
    private const double MostHeatK = 1.2;
    private const double MostConversion = 0.015;
    private const double MostChangeK = 3;

    private readonly HeatInput input;
    private readonly HeatGrid grid;
    private readonly RoomCurve room;
    private readonly double mostS;
    private readonly double[] temperature;
    private readonly double[][] conversion;
    private readonly double share;
    private readonly HeatAlbum? album;
    private readonly CancellationToken stop;
    private double released;
    private double lost;
    private double begun;
    private int steps;

    private HeatRun(HeatInput input, HeatGrid grid, double share, CancellationToken stop)
    {
        (this.input, this.grid, this.share, this.stop) = (input, grid, share, stop);
        album = input.PictureHours.Count > 0 ? new HeatAlbum(input, grid) : null;
        room = new RoomCurve(input.Room);
        mostS = input.Room.Select(r => r.Celsius).Distinct().Count() > 1 ? 900 : 3600;
        temperature = new double[grid.NodeCount];
        Array.Fill(temperature, input.Wall.StartCelsius);
        conversion = [.. input.Layers.Select(_ => new double[grid.NodeCount])];
    }

    /// <summary>Runs a mould that was made from the input's description.</summary>
    /// <param name="preview">A body of revolution in place of a mould with sides.</param>
    /// <param name="stop">Looked at before each step, so that a run whose answer nobody waits for any more ends.</param>
    /// <exception cref="InvalidOperationException">The grid or the time step cannot be solved.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static HeatOutcome Run(HeatInput input, Mould mould, HeatFineness? fineness = null, bool preview = false, CancellationToken stop = default) =>
        Run(input, HeatModel.Grid(input, mould, fineness ?? new HeatFineness(), preview), (fineness ?? new HeatFineness()).Time, stop);

    /// <summary>Runs on a grid of its own.</summary>
    /// <param name="share">Changes allowed in one step, as a share of the usual ones.</param>
    internal static HeatOutcome Run(HeatInput input, HeatGrid grid, double share, CancellationToken stop) => new HeatRun(input, grid, share, stop).Run();

    private HeatOutcome Run()
    {
        var results = new List<LayerHeat>();
        double stored = 0;
        HeatStage? before = null;
        for (var l = 0; l < input.Layers.Count; l++)
        {
            var stage = new HeatStage(grid, input, l + 1);
            Pour(l, stage, before);
            var (from, to) = (input.Layers[l].PouredAtHours, l + 1 < input.Layers.Count ? input.Layers[l + 1].PouredAtHours : input.UntilHours);
            results.Add(Stage(l, stage, from, Math.Max(from, to)));
            stored = Heat(stage) - begun;
            before = stage;
        }

        return new HeatOutcome(results, released == 0 ? 0 : (stored + lost - released) / released, grid.NodeCount, steps)
        {
            Section = album?.Section(before!),
            Pictures = album?.Pictures ?? [],
        };
    }

    // what is poured brings its own heat; a node that both share mixes by capacity
    private void Pour(int l, HeatStage stage, HeatStage? before)
    {
        var layer = input.Layers[l];
        var fresh = new double[stage.Nodes.Length];
        for (var p = 0; p < stage.PointNode.Length; p++)
        {
            if (stage.PointLayer[p] == l)
            {
                fresh[stage.PointNode[p]] += stage.PointVolume[p] * layer.DensityKgPerM3 * layer.HeatCapacityJPerKgK;
            }
        }

        var was = before is null ? 0 : Heat(before);
        for (var n = 0; n < stage.Nodes.Length; n++)
        {
            if (fresh[n] > 0)
            {
                var there = stage.Capacity[n] - fresh[n];
                temperature[stage.Nodes[n]] = ((there * temperature[stage.Nodes[n]]) + (fresh[n] * layer.PouredCelsius)) / stage.Capacity[n];
            }
        }

        begun += Heat(stage) - was;
    }

    private double Heat(HeatStage stage)
    {
        double sum = 0;
        for (var n = 0; n < stage.Nodes.Length; n++)
        {
            sum += stage.Capacity[n] * temperature[stage.Nodes[n]];
        }

        return sum;
    }

    private LayerHeat Stage(int l, HeatStage stage, double fromH, double toH)
    {
        var state = new StageState(input, stage, temperature, conversion);
        var watch = new HeatWatch(input.Layers[l], stage, l, grid, state, toH - fromH, input.ProbeMm);
        watch.See(0, state);
        album?.Turn(stage, fromH);
        var (endS, atS, level) = ((toH - fromH) * 3600, 0.0, share < 1 ? -6 : 2);
        while (atS < endS - 1e-6)
        {
            stop.ThrowIfCancellationRequested();
            while (level > 0 && BaseS * Math.Pow(2, level) > mostS)
            {
                level--;
            }

            // the last step ends where the stage ends, whatever its size
            var whole = BaseS * Math.Pow(2, level);
            var dt = Math.Min(whole, endS - atS);
            var key = dt < whole ? OddStep : level;
            state.Keep();
            var (released1, heat1, turn1) = state.React(dt / 2);
            var lostNow = Conduct(stage, state, fromH + (atS / 3600), dt, key);
            var (released2, heat2, turn2) = state.React(dt / 2);
            steps++;
            var measure = Math.Max(Math.Max((heat1 + heat2) / MostHeatK, (turn1 + turn2) / MostConversion), state.Change() / MostChangeK) / share;
            if (!double.IsFinite(measure))
            {
                throw new InvalidOperationException("The heat equation could not be solved: a step gave no number.");
            }

            if (measure > 2 && level > -8)
            {
                state.Undo();
                level--;
                continue;
            }

            (released, lost, atS) = (released + released1 + released2, lost + lostNow, atS + dt);
            watch.See(atS / 3600, state);
            album?.See(fromH + (atS / 3600), state);
            level += measure > 1 && level > -8 ? -1 : measure < 0.45 && level < TopLevel && BaseS * Math.Pow(2, level + 1) <= mostS ? 1 : 0;
        }

        if (l == input.Layers.Count - 1)
        {
            album?.Close(state);
        }

        state.WriteBack();
        return watch.Tell(state);
    }

    private double Conduct(HeatStage stage, StageState state, double atH, double dt, int key)
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
