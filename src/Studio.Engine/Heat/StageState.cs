using Studio.Engine.Cure;

namespace Studio.Engine.Heat;

/// <summary>Temperatures and conversions of one stage, and the reaction in each point.</summary>
internal sealed class StageState
{
    private readonly HeatStage stage;
    private readonly (Kinetics Kinetics, int From, int Count)[] runs;
    private readonly double[] kelvinPerTurn;
    private readonly double[] joulePerTurn;
    private readonly double[] whole;
    private readonly double[][] wholeConversion;
    private readonly double[] keptT;
    private readonly double[] keptA;
    private readonly double[] rate;
    private readonly double[] heating;
    private readonly double[] pointT;
    private readonly double[] pointA;

    public StageState(HeatInput input, HeatStage stage, double[] whole, double[][] wholeConversion)
    {
        (this.stage, this.whole, this.wholeConversion) = (stage, whole, wholeConversion);
        var points = stage.PointNode.Length;
        runs = [.. stage.PointLayer.Distinct().Select(l => (input.Layers[l].Kinetics, Array.IndexOf(stage.PointLayer, l), stage.PointLayer.Count(k => k == l)))];
        joulePerTurn = [.. Enumerable.Range(0, points).Select(p => stage.PointVolume[p] * input.Layers[stage.PointLayer[p]].DensityKgPerM3 * input.Layers[stage.PointLayer[p]].Kinetics.HeatJPerKg)];
        kelvinPerTurn = [.. Enumerable.Range(0, points).Select(p => joulePerTurn[p] / stage.Capacity[stage.PointNode[p]])];
        Temperature = [.. stage.Nodes.Select(n => whole[n])];
        Conversion = [.. Enumerable.Range(0, points).Select(p => wholeConversion[stage.PointLayer[p]][stage.Nodes[stage.PointNode[p]]])];
        (keptT, keptA, rate, heating) = (new double[Temperature.Length], new double[points], new double[points], new double[Temperature.Length]);
        (pointT, pointA) = (new double[points], new double[points]);
        (First, Work) = (new double[Temperature.Length], new double[Temperature.Length]);
    }

    public double[] Temperature { get; }

    public double[] Conversion { get; }

    /// <summary>Temperatures at the start of the step.</summary>
    public ReadOnlySpan<double> Kept => keptT;

    public double[] First { get; }

    public double[] Work { get; }

    public void Keep()
    {
        Temperature.CopyTo(keptT, 0);
        Conversion.CopyTo(keptA, 0);
    }

    public void Undo()
    {
        keptT.CopyTo(Temperature, 0);
        keptA.CopyTo(Conversion, 0);
    }

    /// <summary>Largest change of a temperature since it was kept [K].</summary>
    public double Change()
    {
        double most = 0;
        for (var n = 0; n < keptT.Length; n++)
        {
            most = Math.Max(most, Math.Abs(Temperature[n] - keptT[n]));
        }

        return most;
    }

    /// <summary>Lets every point react for a time [s] by the midpoint rule.</summary>
    /// <returns>Heat released [J], largest rise [K], largest conversion.</returns>
    public (double Released, double MostK, double MostTurn) React(double seconds)
    {
        var half = seconds / 2;
        for (var p = 0; p < rate.Length; p++)
        {
            pointT[p] = Temperature[stage.PointNode[p]];
        }

        Rates(Conversion);
        Array.Clear(heating);
        for (var p = 0; p < rate.Length; p++)
        {
            heating[stage.PointNode[p]] += rate[p] * kelvinPerTurn[p];
        }

        double released = 0, mostTurn = 0, mostK = 0;
        for (var p = 0; p < rate.Length; p++)
        {
            pointT[p] += half * heating[stage.PointNode[p]];
            pointA[p] = Math.Min(1, Conversion[p] + (half * rate[p]));
        }

        Rates(pointA);
        Array.Clear(heating);
        for (var p = 0; p < rate.Length; p++)
        {
            var turn = Math.Min(rate[p] * seconds, 1 - Conversion[p]);
            Conversion[p] += turn;
            heating[stage.PointNode[p]] += turn * kelvinPerTurn[p];
            released += turn * joulePerTurn[p];
            mostTurn = Math.Max(mostTurn, turn);
        }

        for (var n = 0; n < heating.Length; n++)
        {
            Temperature[n] += heating[n];
            mostK = Math.Max(mostK, heating[n]);
        }

        return (released, mostK, mostTurn);
    }

    private void Rates(double[] conversion)
    {
        foreach (var (kinetics, from, count) in runs)
        {
            StageKinetics.PerS(kinetics, conversion.AsSpan(from, count), pointT.AsSpan(from, count), rate.AsSpan(from, count));
        }
    }

    /// <summary>Hands the state to the next stage.</summary>
    public void WriteBack()
    {
        for (var n = 0; n < Temperature.Length; n++)
        {
            whole[stage.Nodes[n]] = Temperature[n];
        }

        for (var p = 0; p < Conversion.Length; p++)
        {
            wholeConversion[stage.PointLayer[p]][stage.Nodes[stage.PointNode[p]]] = Conversion[p];
        }
    }
}
