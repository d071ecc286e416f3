using Studio.Engine.Cure;

namespace Studio.Engine.Heat;

/// <summary>Temperatures and conversions of one stage, and the reaction in each point.</summary>
internal sealed class StageState
{
    private readonly HeatStage stage;
    private readonly Kinetics[] kinetics;
    private readonly double[] kelvinPerTurn;
    private readonly double[] joulePerTurn;
    private readonly double[] whole;
    private readonly double[][] wholeConversion;
    private readonly double[] keptT;
    private readonly double[] keptA;
    private readonly double[] rate;
    private readonly double[] heating;

    public StageState(HeatInput input, HeatStage stage, double[] whole, double[][] wholeConversion)
    {
        (this.stage, this.whole, this.wholeConversion) = (stage, whole, wholeConversion);
        var points = stage.PointNode.Length;
        kinetics = [.. stage.PointLayer.Select(l => input.Layers[l].Kinetics)];
        joulePerTurn = [.. Enumerable.Range(0, points).Select(p => stage.PointVolume[p] * input.Layers[stage.PointLayer[p]].DensityKgPerM3 * kinetics[p].HeatJPerKg)];
        kelvinPerTurn = [.. Enumerable.Range(0, points).Select(p => joulePerTurn[p] / stage.Capacity[stage.PointNode[p]])];
        Temperature = [.. stage.Nodes.Select(n => whole[n])];
        Conversion = [.. Enumerable.Range(0, points).Select(p => wholeConversion[stage.PointLayer[p]][stage.Nodes[stage.PointNode[p]]])];
        (keptT, keptA, rate, heating) = (new double[Temperature.Length], new double[points], new double[points], new double[Temperature.Length]);
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
        Array.Clear(heating);
        for (var p = 0; p < rate.Length; p++)
        {
            rate[p] = kinetics[p].PerS(Conversion[p], Temperature[stage.PointNode[p]]);
            heating[stage.PointNode[p]] += rate[p] * kelvinPerTurn[p];
        }

        double released = 0, mostTurn = 0, mostK = 0;
        for (var p = 0; p < rate.Length; p++)
        {
            var node = stage.PointNode[p];
            rate[p] = kinetics[p].PerS(Math.Min(1, Conversion[p] + (half * rate[p])), Temperature[node] + (half * heating[node]));
        }

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
