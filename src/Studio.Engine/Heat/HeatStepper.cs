using System.Numerics;
using System.Runtime.InteropServices;
using Studio.Engine.Cure;
using Table = Studio.Engine.Heat.RosenbrockTable;

namespace Studio.Engine.Heat;

/// <summary>What one step would do.</summary>
/// <param name="Released">By the reaction [J, less the symmetry's factor].</param>
/// <param name="Lost">To the room [J, likewise].</param>
/// <param name="Error">Of temperatures and conversions, as a share of what is allowed; above 1 it was too long; not a number where it failed.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct HeatStep(double Released, double Lost, double Error);

/// <summary>
/// One step of one stage: conduction and reaction together, by <see cref="RosenbrockTable"/>. In each point the reaction's own slopes are taken out by hand, so that one
/// banded matrix over the nodes is left: capacity, conduction, films, and what the reaction takes off the diagonal. Heat is neither lost nor made.
/// </summary>
internal sealed class HeatStepper
{
    // error allowed in one step [K], [ratio]
    private const double AllowedK = 0.05;
    private const double AllowedConversion = 5e-4;

    // in a run-away no digit is shown, so less is asked of it: once more per so many kelvin above [°C], [K]
    private const double LooseAboveC = 120;
    private const double LooseK = 1.5;
    private const double MostLoose = 60;

    // steps that one factored matrix serves: the method keeps its order, but the reaction's slopes have moved on
    private const int MostAge = 6;

    private readonly HeatStage stage;
    private readonly StageState state;
    private readonly RoomCurve room;
    private readonly double share;
    private readonly double[] shift;
    private readonly double[] gain;
    private readonly double[] byKelvin;
    private readonly double[][] nodeTurn;
    private readonly double[][] nodeFlow;
    private readonly double[][] pointTurn;
    private readonly double[] celsius;
    private readonly double[] flow;
    private readonly double[] conversion;
    private readonly double[] rate;
    private readonly double[] push;
    private readonly double[] source;
    private BandedCholesky? factor;
    private double factoredS;
    private int age;

    /// <summary>Makes ready for one stage.</summary>
    /// <param name="share">Errors allowed in one step, as a share of the usual ones.</param>
    public HeatStepper(HeatStage stage, StageState state, RoomCurve room, double share)
    {
        (this.stage, this.state, this.room, this.share) = (stage, state, room, share);
        var (nodes, points) = (stage.Nodes.Length, stage.PointNode.Length);
        (shift, celsius, flow, source) = (new double[nodes], new double[nodes], new double[nodes], new double[nodes]);
        (gain, byKelvin, conversion, rate, push) = (new double[points], new double[points], new double[points], new double[points], new double[points]);
        nodeTurn = [.. Enumerable.Range(0, Table.Stages).Select(_ => new double[nodes])];
        nodeFlow = [.. Enumerable.Range(0, Table.Stages).Select(_ => new double[nodes])];
        pointTurn = [.. Enumerable.Range(0, Table.Stages).Select(_ => new double[points])];
    }

    /// <summary>Works a step out; the state becomes its end only by <see cref="Accept"/>.</summary>
    /// <param name="atH">Its start [h] on the room's scale.</param>
    /// <param name="dt">Its length [s].</param>
    public HeatStep Try(double atH, double dt)
    {
        var part = Table.Gamma * dt;
        Ready(part);
        var (from, to) = (room.CelsiusAt(atH), room.CelsiusAt(atH + (dt / 3600)));
        Span<double> lost = stackalloc double[Table.Stages];
        for (var i = 0; i < Table.Stages; i++)
        {
            lost[i] = Stage(i, dt, part, from + (Table.Share[i] * (to - from)), Table.Slope[i] * (to - from), lost);
        }

        double whole = 0;
        for (var i = 0; i < Table.Stages; i++)
        {
            whole += Table.M[i] * lost[i];
        }

        return End(whole);
    }

    /// <summary>The state becomes what the last try led to.</summary>
    public void Accept(double dt, double roomC)
    {
        age++;
        state.Become(celsius, conversion, dt, roomC);
    }

    private void Ready(double part)
    {
        if (factor is not null && part == factoredS && age < MostAge)
        {
            return;
        }

        Array.Clear(shift);
        for (var p = 0; p < gain.Length; p++)
        {
            gain[p] = part / (1 - (part * Math.Min(0, state.ByConversion[p])));
            byKelvin[p] = state.ByKelvin[p];
            shift[stage.PointNode[p]] += state.JoulePerTurn[p] * gain[p] * byKelvin[p];
        }

        factor = Positive(part);
        (factoredS, age) = (part, 0);
    }

    // where the reaction would take more off the diagonal than is there, it is left out of the matrix: the order stays, the error says how long a step may be
    private BandedCholesky Positive(double part)
    {
        try
        {
            return stage.Factor(part, shift);
        }
        catch (InvalidOperationException)
        {
            Array.Clear(shift);
            Array.Clear(byKelvin);
            return stage.Factor(part, shift);
        }
    }

    private double Stage(int i, double dt, double part, double roomC, double roomSlope, ReadOnlySpan<double> lost)
    {
        var first = i == 0;
        Combine(state.Temperature, nodeTurn, Table.A[i], i, celsius);
        Combine(state.Flow, nodeFlow, Table.A[i], i, flow);
        Combine(state.Conversion, pointTurn, Table.A[i], i, conversion);
        if (first)
        {
            state.Rate.CopyTo(rate, 0);
        }
        else
        {
            state.Rates(celsius, conversion, rate);
        }

        // what earlier stages push
        Combine(null, pointTurn, Table.C[i], i, push, 1 / dt);
        Array.Clear(source);
        for (var p = 0; p < rate.Length; p++)
        {
            var q = rate[p] + push[p];
            source[stage.PointNode[p]] += state.JoulePerTurn[p] * ((q * gain[p]) - (part * push[p]));
            rate[p] = q;
        }

        var (turn, own) = (nodeTurn[i], nodeFlow[i]);
        Combine(null, nodeTurn, Table.C[i], i, turn, 1 / dt);
        double films = 0;
        for (var n = 0; n < turn.Length; n++)
        {
            films += stage.Film[n] * (celsius[n] - roomC - roomSlope);
            own[n] = turn[n] = source[n] + (part * ((stage.Film[n] * (roomC + roomSlope)) - flow[n] + (stage.Capacity[n] * turn[n])));
        }

        factor!.Solve(turn);
        for (var n = 0; n < turn.Length; n++)
        {
            films += stage.Film[n] * turn[n];
            own[n] = (own[n] - ((stage.Capacity[n] - shift[n]) * turn[n])) / part;
        }

        var points = pointTurn[i];
        for (var p = 0; p < points.Length; p++)
        {
            points[p] = gain[p] * (rate[p] + (byKelvin[p] * turn[stage.PointNode[p]]));
        }

        double before = 0;
        for (var j = 0; j < i; j++)
        {
            before += Table.C[i][j] / dt * lost[j];
        }

        return part * (films + before);
    }

    private HeatStep End(double lost)
    {
        Combine(state.Temperature, nodeTurn, Table.M, Table.Stages, celsius);
        Combine(state.Conversion, pointTurn, Table.M, Table.Stages, conversion);
        double released = 0, error = 0;
        for (var p = 0; p < conversion.Length; p++)
        {
            // a hair beyond either end goes back, and its heat with it
            var inside = Math.Clamp(conversion[p], 0, 1);
            if (inside != conversion[p])
            {
                celsius[stage.PointNode[p]] += state.JoulePerTurn[p] * (inside - conversion[p]) / stage.Capacity[stage.PointNode[p]];
                conversion[p] = inside;
            }

            released += state.JoulePerTurn[p] * (conversion[p] - state.Conversion[p]);
        }

        Combine(null, nodeTurn, Table.E, Table.Stages, flow);
        Combine(null, pointTurn, Table.E, Table.Stages, rate);
        var allowed = share * Math.Min(MostLoose, 1 + (Math.Max(0, Hottest() - LooseAboveC) / LooseK));
        error = Math.Max(Most(flow) / AllowedK, Most(rate) / AllowedConversion) / allowed;
        return new HeatStep(released, lost, error > 1 ? Filtered() / allowed : error);
    }

    // the embedded order does not forget what is infinitely fast, such as a thin wall that takes on the temperature of what is poured on it; the matrix does
    private double Filtered()
    {
        for (var n = 0; n < flow.Length; n++)
        {
            flow[n] *= stage.Capacity[n];
        }

        factor!.Solve(flow);
        return Math.Max(Most(flow) / AllowedK, Most(rate) / AllowedConversion);
    }

    private double Hottest()
    {
        var hottest = double.NegativeInfinity;
        foreach (var c in state.Temperature)
        {
            hottest = Math.Max(hottest, c);
        }

        return hottest;
    }

    private static double Most(double[] values)
    {
        double most = 0;
        foreach (var v in values)
        {
            most = double.IsFinite(v) ? Math.Max(most, Math.Abs(v)) : double.NaN;
        }

        return most;
    }

    // from + times · Σ shareⱼ · termⱼ
    private static void Combine(double[]? from, double[][] terms, double[] shares, int count, double[] into, double times = 1)
    {
        var k = 0;
        for (; k <= into.Length - Vector<double>.Count; k += Vector<double>.Count)
        {
            var sum = from is null ? Vector<double>.Zero : new Vector<double>(from, k);
            for (var j = 0; j < count; j++)
            {
                sum = Vector.FusedMultiplyAdd(new Vector<double>(shares[j] * times), new Vector<double>(terms[j], k), sum);
            }

            sum.CopyTo(into, k);
        }

        for (; k < into.Length; k++)
        {
            var sum = from is null ? 0 : from[k];
            for (var j = 0; j < count; j++)
            {
                sum += shares[j] * times * terms[j][k];
            }

            into[k] = sum;
        }
    }
}
