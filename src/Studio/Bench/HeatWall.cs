using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Moulds;

namespace Studio.Bench;

/// <summary>A mould's wall as the heat takes it.</summary>
/// <param name="Wall">Thickness and material.</param>
/// <param name="Limit">What its inside must not reach; null for none.</param>
/// <param name="Assumed">A whole sentence where nobody said what the wall is; empty otherwise.</param>
internal sealed record HeatWall(WallSpec Wall, HeatLimit? Limit, string Assumed)
{
    // a usual block mould [mm]; common practice, no source
    private const double UsualMm = 10;

    /// <summary>From what the mould's page says, else a usual silicone wall.</summary>
    internal static HeatWall Of(MouldWall? wall, double startC)
    {
        var material = wall?.Material ?? "silicone";
        var (conductivity, density, capacity, limit) = Material(material);
        var spec = new WallSpec
        {
            ThicknessMm = wall?.ThicknessMm ?? UsualMm,
            FloorMm = wall?.FloorMm ?? UsualMm,
            ConductivityWPerMK = conductivity,
            DensityKgPerM3 = density,
            HeatCapacityJPerKgK = capacity,
            StartCelsius = startC,
        };
        var own = wall?.LimitC is { } c ? new HeatLimit("the mould", c, "the mould's page") { AtMouldFace = true } : limit;
        return new(spec, own, wall is null ? FormattableString.Invariant($"The mould's wall is not described, so {UsualMm:0} mm of silicone are assumed.") : "");
    }

    // handbook values from memory; what is not known counts as silicone, which keeps the heat best
    private static (double WPerMK, double KgPerM3, double JPerKgK, HeatLimit? Limit) Material(string key) => key switch
    {
        "polypropylene" => (0.22, 905, 1900, new HeatLimit("the polypropylene mould", 100, "polypropylene warps from about 100 °C, from memory") { AtMouldFace = true }),
        "polyethylene" => (0.45, 950, 2100, new HeatLimit("the polyethylene mould", 80, "polyethylene warps from about 80 °C, from memory") { AtMouldFace = true }),
        "acrylic" => (0.19, 1190, 1470, HeatLimit.Acrylic with { AtMouldFace = true }),
        "wood" => (0.15, 600, 1700, null),
        _ => (0.25, 1150, 1300, HeatLimit.SiliconeMould),
    };
}
