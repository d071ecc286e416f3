namespace Studio.Engine.Heat;

/// <summary>Temperatures and conversions of one stage at the start and the end of a step, with their slopes, so that anything between can be told.</summary>
internal sealed class StageState
{
    private readonly HeatStage stage;
    private readonly (StageKinetics Kinetics, int From, int Count)[] runs;
    private readonly double[] whole;
    private readonly double[][] wholeConversion;
    private readonly double[] pointC;

    public StageState(HeatInput input, HeatStage stage, double[] whole, double[][] wholeConversion)
    {
        (this.stage, this.whole, this.wholeConversion) = (stage, whole, wholeConversion);
        var (nodes, points) = (stage.Nodes.Length, stage.PointNode.Length);
        runs = [.. stage.PointLayer.Distinct().Select(l => (new StageKinetics(input.Layers[l].Kinetics), Array.IndexOf(stage.PointLayer, l), stage.PointLayer.Count(k => k == l)))];
        JoulePerTurn = [.. Enumerable.Range(0, points).Select(p => stage.PointVolume[p] * input.Layers[stage.PointLayer[p]].DensityKgPerM3 * input.Layers[stage.PointLayer[p]].Kinetics.HeatJPerKg)];
        Temperature = [.. stage.Nodes.Select(n => whole[n])];
        Conversion = [.. Enumerable.Range(0, points).Select(p => wholeConversion[stage.PointLayer[p]][stage.Nodes[stage.PointNode[p]]])];
        (FromTemperature, FromConversion) = ([.. Temperature], [.. Conversion]);
        (KelvinPerS, FromKelvinPerS, Flow) = (new double[nodes], new double[nodes], new double[nodes]);
        (Rate, FromRate, ByConversion, ByKelvin, pointC) = (new double[points], new double[points], new double[points], new double[points], new double[points]);
    }

    /// <summary>At the end of the last step [°C].</summary>
    public double[] Temperature { get; }

    /// <summary>At the end of the last step.</summary>
    public double[] Conversion { get; }

    /// <summary>Conversion per second there.</summary>
    public double[] Rate { get; }

    /// <summary>Its slope by conversion [1/s].</summary>
    public double[] ByConversion { get; }

    /// <summary>Its slope by temperature [1/(s K)].</summary>
    public double[] ByKelvin { get; }

    /// <summary>What flows off each node [W].</summary>
    public double[] Flow { get; }

    /// <summary>How its temperature changes [K/s].</summary>
    public double[] KelvinPerS { get; }

    /// <summary>Heat of each point's whole reaction [J].</summary>
    public double[] JoulePerTurn { get; }

    /// <summary>At the start of the last step [°C].</summary>
    public double[] FromTemperature { get; }

    public double[] FromConversion { get; }

    public double[] FromRate { get; }

    public double[] FromKelvinPerS { get; }

    /// <summary>Length of the last step [s].</summary>
    public double StepS { get; private set; }

    /// <summary>Takes on what a step led to.</summary>
    /// <param name="seconds">Its length [s]; 0 for the state it begins with.</param>
    /// <param name="room">The room at its end [°C].</param>
    public void Become(double[] temperature, double[] conversion, double seconds, double room)
    {
        Temperature.CopyTo(FromTemperature, 0);
        Conversion.CopyTo(FromConversion, 0);
        Rate.CopyTo(FromRate, 0);
        KelvinPerS.CopyTo(FromKelvinPerS, 0);
        temperature.CopyTo(Temperature, 0);
        conversion.CopyTo(Conversion, 0);
        StepS = seconds;
        Gather(Temperature);
        foreach (var (kinetics, from, count) in runs)
        {
            kinetics.Slopes(Conversion.AsSpan(from, count), pointC.AsSpan(from, count), Rate.AsSpan(from, count), ByConversion.AsSpan(from, count), ByKelvin.AsSpan(from, count));
        }

        stage.Conduct(Temperature, Flow);
        for (var n = 0; n < KelvinPerS.Length; n++)
        {
            KelvinPerS[n] = (stage.Film[n] * room) - Flow[n];
        }

        for (var p = 0; p < Rate.Length; p++)
        {
            KelvinPerS[stage.PointNode[p]] += JoulePerTurn[p] * Rate[p];
        }

        for (var n = 0; n < KelvinPerS.Length; n++)
        {
            KelvinPerS[n] /= stage.Capacity[n];
        }

        if (seconds == 0)
        {
            Rate.CopyTo(FromRate, 0);
            KelvinPerS.CopyTo(FromKelvinPerS, 0);
            Temperature.CopyTo(FromTemperature, 0);
            Conversion.CopyTo(FromConversion, 0);
        }
    }

    /// <summary>Rates elsewhere, at temperatures of the nodes and conversions of the points.</summary>
    public void Rates(double[] temperature, double[] conversion, double[] rate)
    {
        Gather(temperature);
        foreach (var (kinetics, from, count) in runs)
        {
            kinetics.Rates(conversion.AsSpan(from, count), pointC.AsSpan(from, count), rate.AsSpan(from, count));
        }
    }

    /// <summary>A node's temperature within the last step, by the cubic through both ends and slopes [°C].</summary>
    /// <param name="node">By its place in the stage.</param>
    /// <param name="share">Of the step [0 to 1].</param>
    public double CelsiusAt(int node, double share) =>
        Cubic(FromTemperature[node], Temperature[node], FromKelvinPerS[node] * StepS, KelvinPerS[node] * StepS, share);

    /// <summary>A point's conversion within the last step, likewise.</summary>
    public double ConversionAt(int point, double share) =>
        Cubic(FromConversion[point], Conversion[point], FromRate[point] * StepS, Rate[point] * StepS, share);

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

    private static double Cubic(double from, double to, double slopeFrom, double slopeTo, double s)
    {
        var left = 1 - s;
        return (left * from) + (s * to) + (s * left * ((left * (slopeFrom - (to - from))) - (s * (slopeTo - (to - from)))));
    }

    private void Gather(double[] temperature)
    {
        for (var p = 0; p < pointC.Length; p++)
        {
            pointC[p] = temperature[stage.PointNode[p]];
        }
    }
}
