using Studio.Engine.Cure;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>A moment of a layer: hours after its pour, its hottest place, the middle of its surface, and its middle line at the input's probe (else not a number) [°C].</summary>
public sealed record HeatMoment(double AfterHours, double HottestC, double SurfaceC, double ProbeC = double.NaN);

/// <summary>What one layer did from its pour to the end of the run, whatever was poured on it.</summary>
public sealed record LayerHeat
{
    /// <summary>Hottest place at any time, its faces included [°C].</summary>
    public required double PeakCelsius { get; init; }

    /// <summary>[h after its pour].</summary>
    public required double PeakAfterHours { get; init; }

    /// <summary>[mm from the mould's lowest point].</summary>
    public required double PeakHeightMm { get; init; }

    /// <summary>Hottest place until the next pour, or the end [°C].</summary>
    public required double PeakBeforeNextPourCelsius { get; init; }

    /// <summary>[h after its pour].</summary>
    public required double PeakBeforeNextPourAfterHours { get; init; }

    /// <summary>When its first place gelled [h after its pour]; null where none did before the end.</summary>
    public double? FirstGelAfterHours { get; init; }

    /// <summary>When its last place gelled [h after its pour]; null where it had not gelled everywhere at the end.</summary>
    public double? LastGelAfterHours { get; init; }

    /// <summary>At the next pour, or at the end [0 to 1].</summary>
    public required double LeastConversion { get; init; }

    /// <summary>At the next pour, or at the end [0 to 1].</summary>
    public required double MeanConversion { get; init; }

    /// <summary>Hottest place where its own resin touches the mould, at any time [°C]; minus infinity where it touches none.</summary>
    public required double MouldFacePeakCelsius { get; init; }

    /// <summary>What the mix would reach if nothing cooled it: its temperature when poured, and the whole heat of its reaction [°C].</summary>
    public required double AdiabaticCelsius { get; init; }

    /// <summary>Fastest fall of its hottest place after the peak [K/h].</summary>
    public required double SteepestFallKPerH { get; init; }

    public required IReadOnlyList<HeatMoment> Curve { get; init; }
}

/// <summary>The whole run.</summary>
/// <param name="Layers">In pouring order.</param>
/// <param name="EnergyMiss">(stored + lost − released) / released; refused above 1e-4.</param>
/// <param name="Nodes">Size of the grid.</param>
/// <param name="Steps">Time steps taken.</param>
public sealed record HeatOutcome(IReadOnlyList<LayerHeat> Layers, double EnergyMiss, int Nodes, int Steps)
{
    /// <summary>The half section through the piece; null where the input asks for no picture.</summary>
    public HeatSection? Section { get; init; }

    /// <summary>Temperatures of the section at the hours the input asks for, in their order; hours outside the run are left out.</summary>
    public IReadOnlyList<HeatPicture> Pictures { get; init; } = [];
}

/// <summary>Solves ρ c ∂T/∂t = ∇·(k∇T) + ρ H ∂α/∂t from pour to pour, in steps whose size follows what changes.</summary>
public sealed class HeatRun
{
    // the first step after a pour, one that is short enough if its error is not ten times what is allowed, and where it is given up [s]
    private const double FirstS = 8;
    private const double ShortestS = 0.05;
    private const double MostError = 10;
    private const double LeastS = 1e-6;
    private const double LongestS = 4 * 3600;

    // where the room changes, so that nothing of it is stepped over
    private const double LongestChangingS = 1800;

    // a step is not made longer for less than this: its matrix can be used again
    private const double Worth = 2;

    // of one stage; a real one takes some hundreds
    private const int MostSteps = 20_000;

    // a fine grid is refused sooner: nobody waits minutes for a refusal [nodes × steps]
    private const double MostWork = 1e7;
    private const double FewestSteps = 1200;
    private const double MostMissing = 1e-4;

    private readonly HeatInput input;
    private readonly HeatGrid grid;
    private readonly RoomCurve room;
    private readonly double mostS;
    private readonly double[] temperature;
    private readonly double[][] conversion;
    private readonly double share;
    private readonly HeatAlbum? album;
    private readonly CancellationToken stop;
    private readonly double[][] buffer = new double[1][];
    private double released;
    private double lost;
    private double begun;
    private int steps;

    private HeatRun(HeatInput input, HeatGrid grid, double share, CancellationToken stop)
    {
        (this.input, this.grid, this.share, this.stop) = (input, grid, share, stop);
        album = input.PictureHours.Count > 0 ? new HeatAlbum(input, grid) : null;
        room = new RoomCurve(input.Room);
        mostS = input.Room.Select(r => r.Celsius).Distinct().Count() > 1 ? LongestChangingS : LongestS;
        temperature = new double[grid.NodeCount];
        Array.Fill(temperature, input.Wall.StartCelsius);
        conversion = [.. input.Layers.Select(_ => new double[grid.NodeCount])];
    }

    /// <summary>Runs a mould that was made from the input's description.</summary>
    /// <param name="preview">A body of revolution in place of a mould with sides.</param>
    /// <param name="stop">Looked at before each step, so that a run whose answer nobody waits for any more ends.</param>
    /// <exception cref="InvalidOperationException">The grid or the time step cannot be solved.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static HeatOutcome Run(HeatInput input, MouldBody mould, HeatFineness? fineness = null, bool preview = false, CancellationToken stop = default) =>
        Run(input, HeatModel.Grid(input, mould, fineness ?? new HeatFineness(), preview), (fineness ?? new HeatFineness()).Time, stop);

    /// <summary>Runs on a grid of its own.</summary>
    /// <param name="share">Changes allowed in one step, as a share of the usual ones.</param>
    internal static HeatOutcome Run(HeatInput input, HeatGrid grid, double share, CancellationToken stop) => new HeatRun(input, grid, share, stop).Run();

    private HeatOutcome Run()
    {
        var watches = new List<HeatWatch>();
        double stored = 0;
        HeatStage? before = null;
        StageState? state = null;
        for (var l = 0; l < input.Layers.Count; l++)
        {
            var stage = new HeatStage(grid, input, l + 1, buffer);
            Pour(l, stage, before);
            var (from, to) = (input.Layers[l].PouredAtHours, l + 1 < input.Layers.Count ? input.Layers[l + 1].PouredAtHours : input.UntilHours);
            state = Stage(l, stage, watches, from, Math.Max(from, to));
            stored = Heat(stage) - begun;
            before = stage;
        }

        return new HeatOutcome([.. watches.Select(w => w.Tell(state!))], Missing(before!, stored), grid.NodeCount, steps)
        {
            Section = album?.Section(before!),
            Pictures = album?.Pictures ?? [],
        };
    }

    // as a share of what was released, or of what warms the whole by a kelvin where that is more
    private double Missing(HeatStage last, double stored)
    {
        var missing = (stored + lost - released) / Math.Max(released, last.Capacity.Sum());
        return Math.Abs(missing) < MostMissing ? missing
            : throw new InvalidOperationException(FormattableString.Invariant($"The heat equation could not be solved: {missing:0.0e+0} of the heat is missing."));
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

    private StageState Stage(int l, HeatStage stage, List<HeatWatch> watches, double fromH, double toH)
    {
        var state = new StageState(input, stage, temperature, conversion);
        state.Become(state.Temperature, state.Conversion, 0, room.CelsiusAt(fromH));
        watches.ForEach(w => w.Turn(stage, state));
        watches.Add(new HeatWatch(input.Layers[l], stage, l, grid, state, Math.Max(input.UntilHours, toH) - fromH, input.ProbeMm));
        album?.Turn(stage, fromH);
        Steps(stage, state, watches, fromH, (toH - fromH) * 3600);
        watches[^1].Cover(state);
        if (l == input.Layers.Count - 1)
        {
            album?.Close(state);
        }

        state.WriteBack();
        return state;
    }

    private void Steps(HeatStage stage, StageState state, List<HeatWatch> watches, double fromH, double endS)
    {
        var stepper = new HeatStepper(stage, state, room, share);
        var (atS, wanted, tried) = (0.0, FirstS * Math.Min(1, share), 0);
        var most = Math.Clamp(MostWork / grid.NodeCount, FewestSteps, MostSteps) / Math.Min(1, share);
        while (atS < endS - 1e-6)
        {
            stop.ThrowIfCancellationRequested();
            if (++tried > most)
            {
                throw new InvalidOperationException("The heat equation could not be solved: what happens is too fast for its steps.");
            }

            // the last step ends where the stage ends, and no crumb is left over for one more
            var left = endS - atS;
            var dt = wanted >= left ? left : Math.Min(wanted, left > 2 * wanted ? left : left / 2);
            var step = stepper.Try(fromH + (atS / 3600), dt);
            if (!(step.Error <= (dt <= ShortestS ? MostError : 1)))
            {
                wanted = dt * (double.IsFinite(step.Error) ? Math.Clamp(0.8 * Math.Pow(step.Error, -1.0 / 3), 0.1, 0.8) : 0.25);
                if (dt < LeastS)
                {
                    throw new InvalidOperationException("The heat equation could not be solved: a step gave no number.");
                }

                continue;
            }

            steps++;
            (released, lost, atS) = (released + step.Released, lost + step.Lost, atS + dt);
            stepper.Accept(dt, room.CelsiusAt(fromH + (atS / 3600)));
            for (var w = 0; w < watches.Count; w++)
            {
                watches[w].See(fromH - input.Layers[w].PouredAtHours + (atS / 3600), state);
            }

            album?.See(fromH + (atS / 3600), state);
            var longer = dt * Math.Clamp(0.85 * Math.Pow(step.Error + 1e-9, -1.0 / 3), 0.5, 4);
            wanted = Math.Min(mostS, longer > dt && longer < Worth * dt ? dt : longer);
        }
    }
}
