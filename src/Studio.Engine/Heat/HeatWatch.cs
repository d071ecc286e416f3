namespace Studio.Engine.Heat;

/// <summary>Watches one layer from its pour to the end, whatever is poured on it.</summary>
/// <remarks>Its hottest place, its face to the mould and its gel are over all time; what its conversion was is kept when it is covered.</remarks>
internal sealed class HeatWatch
{
    private const int MostMoments = 160;

    private readonly HeatLayer layer;
    private readonly int number;
    private readonly HeatGrid grid;
    private readonly double? probeMm;
    private readonly double everyH;
    private readonly List<(double AfterHours, double HottestC, double SurfaceC, double ProbeC)> curve = new(MostMoments + 3);
    private HeatStage stage;
    private int[] points = [];
    private int[] nodes = [];
    private int[] face = [];
    private int surface;
    private (int Below, int Above, double Share)? probe;
    private double peak = double.NegativeInfinity;
    private double peakH;
    private double peakMm;
    private double faceC = double.NegativeInfinity;
    private double fall;
    private double? firstGel;
    private double? lastGel;
    private double lastH;
    private double lastHot;
    private (double PeakC, double PeakH, double Least, double Mean)? covered;

    /// <summary>Begins at the pour.</summary>
    /// <param name="hours">How long it is watched [h].</param>
    public HeatWatch(HeatLayer layer, HeatStage stage, int number, HeatGrid grid, StageState state, double hours, double? probeMm = null)
    {
        (this.layer, this.stage, this.number, this.grid, this.probeMm, everyH) = (layer, stage, number, grid, probeMm, hours / MostMoments);
        Turn(stage, state);
        See(0, state);
    }

    /// <summary>Something was poured on it: from now on it is watched in another stage. Its own points keep their order.</summary>
    public void Turn(HeatStage next, StageState state)
    {
        stage = next;
        points = [.. Enumerable.Range(0, stage.PointNode.Length).Where(p => stage.PointLayer[p] == number)];
        nodes = [.. points.Select(p => stage.PointNode[p])];
        var own = nodes.ToHashSet();
        face = [.. stage.MouldFace.Where(own.Contains)];
        var top = points.Max(p => grid.Z[stage.Nodes[stage.PointNode[p]]]);
        surface = points.Where(p => grid.Z[stage.Nodes[stage.PointNode[p]]] > top - 1e-9)
            .MinBy(p => Math.Abs(grid.X[stage.Nodes[stage.PointNode[p]]]) + Math.Abs(grid.Y[stage.Nodes[stage.PointNode[p]]]));
        probe = probeMm is { } mm ? Probe(mm / 1000) : null;

        // what is poured on it cools it at once, which is no fall that strains it
        lastHot = points.Max(p => state.Temperature[stage.PointNode[p]]);
    }

    /// <summary>A step has ended.</summary>
    public void See(double afterH, StageState state)
    {
        var (hot, hotNode) = Hottest(state, 1);
        Peak(afterH, hot, hotNode);
        Between(afterH, state);
        foreach (var n in face)
        {
            faceC = Math.Max(faceC, state.Temperature[n]);
        }

        if (afterH > peakH && afterH > lastH)
        {
            fall = Math.Max(fall, (lastHot - hot) / (afterH - lastH));
        }

        Gel(afterH, state);
        Draw(afterH, hot, state);
        (lastH, lastHot) = (afterH, hot);
    }

    /// <summary>The next layer is poured, or the run is over: what it had become by then is kept.</summary>
    public void Cover(StageState state)
    {
        double volume = 0, sum = 0, least = 1;
        foreach (var p in points)
        {
            volume += stage.PointVolume[p];
            sum += stage.PointVolume[p] * state.Conversion[p];
            least = Math.Min(least, state.Conversion[p]);
        }

        // within the error of a step it may pass either end
        covered = (peak, peakH, Math.Max(0, least), Math.Clamp(sum / volume, 0, 1));
    }

    public LayerHeat Tell(StageState state)
    {
        if (curve[^1].AfterHours < lastH)
        {
            curve.Add(Moment(lastH, state, 1));
        }

        var then = covered ?? throw new InvalidOperationException("A layer is told of once it was covered, or its run was over.");
        return new LayerHeat
        {
            PeakCelsius = peak,
            PeakAfterHours = peakH,
            PeakHeightMm = peakMm,
            PeakBeforeNextPourCelsius = then.PeakC,
            PeakBeforeNextPourAfterHours = then.PeakH,
            FirstGelAfterHours = firstGel,
            LastGelAfterHours = lastGel,
            LeastConversion = then.Least,
            MeanConversion = then.Mean,
            MouldFacePeakCelsius = faceC,
            AdiabaticCelsius = layer.PouredCelsius + (layer.Kinetics.HeatJPerKg / layer.HeatCapacityJPerKgK),
            SteepestFallKPerH = fall,
            Curve = [.. curve.Select(m => new HeatMoment(m.AfterHours, m.HottestC, m.SurfaceC, m.ProbeC))],
        };
    }

    // between two places on the line that is nearest to the middle
    private (int Below, int Above, double Share) Probe(double height)
    {
        double Off(int node) => Math.Abs(grid.X[stage.Nodes[node]]) + Math.Abs(grid.Y[stage.Nodes[node]]);
        double Z(int node) => grid.Z[stage.Nodes[node]];
        var places = points.Select(p => stage.PointNode[p]).Distinct().ToList();
        var line = places.Where(n => Off(n) < places.Min(Off) + 1e-6).OrderBy(Z).ToList();
        var above = line.FindIndex(n => Z(n) >= height);
        var (a, b) = (line[above < 0 ? ^1 : Math.Max(0, above - 1)], line[above < 0 ? ^1 : above]);
        return (a, b, Z(b) > Z(a) ? Math.Clamp((height - Z(a)) / (Z(b) - Z(a)), 0, 1) : 0);
    }

    private double Probed(StageState state, double share) => probe is not { } p ? double.NaN
        : state.CelsiusAt(p.Below, share) + (p.Share * (state.CelsiusAt(p.Above, share) - state.CelsiusAt(p.Below, share)));

    private (double Celsius, int Node) Hottest(StageState state, double share)
    {
        var (hot, node) = (double.NegativeInfinity, 0);
        foreach (var n in nodes)
        {
            var c = share == 1 ? state.Temperature[n] : state.CelsiusAt(n, share);
            if (c > hot)
            {
                (hot, node) = (c, n);
            }
        }

        return (hot, node);
    }

    private void Peak(double afterH, double hot, int node)
    {
        if (hot > peak)
        {
            (peak, peakH, peakMm) = (hot, afterH, grid.Z[stage.Nodes[node]] * 1000);
        }
    }

    // a node that rose at the step's start and falls at its end was hottest between; the cubic says when and how hot
    private void Between(double afterH, StageState state)
    {
        foreach (var n in nodes)
        {
            var (rise, fallen) = (state.FromKelvinPerS[n], state.KelvinPerS[n]);
            if (state.StepS <= 0 || !(rise > 0 && fallen < 0) || Math.Max(state.FromTemperature[n], state.Temperature[n]) + (state.StepS * Math.Min(rise, -fallen) / 2) < peak)
            {
                continue;
            }

            var (low, high) = (0.0, 1.0);
            for (var k = 0; k < 30; k++)
            {
                var (a, b) = (low + ((high - low) / 3), high - ((high - low) / 3));
                (low, high) = state.CelsiusAt(n, a) < state.CelsiusAt(n, b) ? (a, high) : (low, b);
            }

            Peak(afterH - ((1 - low) * state.StepS / 3600), state.CelsiusAt(n, low), n);
        }
    }

    private void Draw(double afterH, double hot, StageState state)
    {
        if (curve.Count == 0)
        {
            curve.Add(Moment(afterH, state, 1));
            return;
        }

        for (var due = curve[^1].AfterHours + everyH; due <= afterH && state.StepS > 0 && curve.Count < MostMoments + 2; due = curve[^1].AfterHours + everyH)
        {
            curve.Add(Moment(due, state, Math.Clamp(1 - ((afterH - due) * 3600 / state.StepS), 0, 1)));
        }
    }

    private (double AfterHours, double HottestC, double SurfaceC, double ProbeC) Moment(double afterH, StageState state, double share) =>
        (afterH, Hottest(state, share).Celsius, state.CelsiusAt(stage.PointNode[surface], share), Probed(state, share));

    private void Gel(double afterH, StageState state)
    {
        if (lastGel is not null)
        {
            return;
        }

        var (gel, hours) = (layer.Kinetics.GelConversion, state.StepS / 3600);
        var latest = double.NegativeInfinity;
        foreach (var p in points)
        {
            var crossed = state.Conversion[p] < gel ? double.PositiveInfinity : state.FromConversion[p] >= gel ? double.NegativeInfinity : afterH - ((1 - Crossing(state, p, gel)) * hours);
            if (double.IsFinite(crossed))
            {
                firstGel = Math.Min(firstGel ?? double.PositiveInfinity, crossed);
            }

            latest = Math.Max(latest, crossed);
        }

        if (double.IsFinite(latest) || double.IsNegativeInfinity(latest))
        {
            lastGel = double.IsFinite(latest) ? latest : afterH;
        }
    }

    // share of the step at which the cubic reaches it, the later end of a narrow bracket
    private static double Crossing(StageState state, int point, double gel)
    {
        var (low, high) = (0.0, 1.0);
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            (low, high) = state.ConversionAt(point, middle) < gel ? (middle, high) : (low, middle);
        }

        return high;
    }
}
