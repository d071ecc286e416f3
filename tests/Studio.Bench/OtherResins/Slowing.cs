namespace Studio.Bench.Tools.OtherResins;

/// <summary>What the slowness of molecules leaves of a rate constant.</summary>
internal abstract record Slowing
{
    /// <summary>The rate constant that is left, in the unit of the one given.</summary>
    public abstract double Left(double rate, double conversion, double celsius);
}

/// <summary>Chern and Poehlein (Polym. Eng. Sci. 27, 1987, 788, from memory): it stops about a critical conversion, which rises straight with the temperature.</summary>
/// <param name="At23">Critical conversion at 23 °C.</param>
/// <param name="PerK">How much it rises [1/K].</param>
/// <param name="Sharpness">How suddenly.</param>
internal sealed record CriticalConversion(double At23, double PerK, double Sharpness) : Slowing
{
    public override double Left(double rate, double conversion, double celsius) =>
        rate / (1 + Math.Exp(Sharpness * (conversion - At23 - (PerK * (celsius - 23)))));
}

/// <summary>Rabinowitch's sum of two resistances with a diffusion of Williams, Landel and Ferry's kind about the glass transition (as Wisanrakkit and Gillham 1990, from memory).</summary>
/// <param name="Line">Where the glass transition is.</param>
/// <param name="AtGlass">Rate constant of diffusion at the glass transition, in the unit of the rates given.</param>
/// <param name="Steep">Exponent far from it.</param>
/// <param name="SpreadK">Distance at which half of it is reached [K].</param>
internal sealed record FreeVolume(GlassLine Line, double AtGlass, double Steep, double SpreadK) : Slowing
{
    public override double Left(double rate, double conversion, double celsius)
    {
        var over = celsius - Line.CelsiusAt(conversion);
        var diffusion = AtGlass * Math.Exp(Steep * over / (SpreadK + Math.Abs(over)));
        return rate * diffusion / (rate + diffusion);
    }
}
