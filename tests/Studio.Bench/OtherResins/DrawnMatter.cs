namespace Studio.Bench.Tools.OtherResins;

/// <summary>What a resin is made of, apart from its kinetics.</summary>
/// <param name="DensityKgPerM3">[kg/m³].</param>
/// <param name="ConductivityWPerMK">[W/(m K)].</param>
/// <param name="HeatJPerKg">Of the whole reaction [J/kg].</param>
/// <param name="LiquidJPerKgK">Heat capacity above the glass transition at 23 °C [J/(kg K)].</param>
/// <param name="PerK">How that rises [J/(kg K²)].</param>
/// <param name="StepJPerKgK">How much less it is as a glass [J/(kg K)].</param>
/// <param name="Line">Where the glass transition is.</param>
internal sealed record DrawnMatter(double DensityKgPerM3, double ConductivityWPerMK, double HeatJPerKg, double LiquidJPerKgK, double PerK, double StepJPerKgK, GlassLine Line)
{
    private const double GlassWidthK = 5;

    /// <summary>[J/(kg K)].</summary>
    public double HeatCapacity(double celsius, double conversion) =>
        LiquidJPerKgK + (PerK * (celsius - 23)) - (StepJPerKgK == 0 ? 0 : StepJPerKgK / (1 + Math.Exp((celsius - Line.CelsiusAt(conversion)) / GlassWidthK)));
}
