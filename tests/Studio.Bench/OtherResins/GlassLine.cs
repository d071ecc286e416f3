namespace Studio.Bench.Tools.OtherResins;

/// <summary>Glass transition over conversion, not by DiBenedetto: Venditti and Gillham's logarithmic form (J. Appl. Polym. Sci. 64, 1997, 3, from memory), or a parabola.</summary>
/// <param name="Logarithmic">True for Venditti and Gillham.</param>
/// <param name="StartC">Of the fresh mix [°C].</param>
/// <param name="EndC">Fully reacted [°C].</param>
/// <param name="Bend">Ratio of the heat capacity steps, or the parabola's slope at the start as a share of the straight line's; both below 1 bend it upwards.</param>
internal sealed record GlassLine(bool Logarithmic, double StartC, double EndC, double Bend)
{
    private const double ZeroC = 273.15;

    public double CelsiusAt(double conversion) => Logarithmic
        ? Math.Exp((((1 - conversion) * Math.Log(StartC + ZeroC)) + (Bend * conversion * Math.Log(EndC + ZeroC))) / (1 - conversion + (Bend * conversion))) - ZeroC
        : StartC + ((EndC - StartC) * ((Bend * conversion) + ((1 - Bend) * conversion * conversion)));

    /// <summary>Conversion whose glass transition is at a temperature, by halving.</summary>
    public double ConversionAt(double celsius)
    {
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = CelsiusAt(middle) < celsius ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
