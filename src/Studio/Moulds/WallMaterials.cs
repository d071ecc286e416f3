using Studio.Engine.Forecast;
using Studio.Engine.Heat;

namespace Studio.Moulds;

/// <summary>What a mould's wall is made of.</summary>
/// <param name="Key">What is stored.</param>
/// <param name="Label">What is read.</param>
/// <param name="ConductivityWPerMK">[W/(m K)].</param>
/// <param name="DensityKgPerM3">[kg/m³].</param>
/// <param name="HeatCapacityJPerKgK">[J/(kg K)].</param>
/// <param name="LimitC">Hotter than this the wall suffers or holds the resin fast [°C].</param>
/// <param name="Source">Where the figures are from.</param>
public sealed record WallMaterial(string Key, string Label, double ConductivityWPerMK, double DensityKgPerM3, double HeatCapacityJPerKgK, double LimitC, string Source);

/// <summary>Walls that the heat knows; a new one is one line.</summary>
public static class WallMaterials
{
    private const string Handbook = "handbook values of the material, from memory; limit: common practice, no source";

    /// <summary>Silicone first: what most moulds are.</summary>
    public static IReadOnlyList<WallMaterial> All { get; } =
    [
        new("silicone", "Silicone", 0.25, 1150, 1300, HeatLimit.SiliconeMould.Celsius, "conductivity 0.22 to 0.27 W/(m K): Baudot et al., Cryogenics 38 (1998) 227; limit: common practice, no source"),
        new("polypropylene", "Polypropylene", 0.20, 905, 1900, 80, Handbook),
        new("polyethylene", "Polyethylene, hard", 0.45, 955, 1900, 70, Handbook),
        new("acrylic", "Acrylic", 0.19, 1190, 1450, 75, Handbook),
        new("wood", "Sealed wood or board", 0.13, 600, 1600, 80, Handbook),
        new("steel", "Steel", 50, 7850, 480, 120, Handbook),
    ];

    /// <summary>What is taken where nobody said: a usual silicone wall [mm].</summary>
    public const double UsualMm = 8;

    /// <summary>The material of a key; silicone where the key is not known.</summary>
    public static WallMaterial Of(string? key) => All.FirstOrDefault(m => m.Key == key) ?? All[0];

    /// <summary>As the engine takes it.</summary>
    /// <param name="wall">Null where nobody said.</param>
    /// <param name="startC">Temperature of the empty mould [°C].</param>
    public static WallSpec Spec(MouldWall? wall, double startC)
    {
        var material = Of(wall?.Material);
        return new()
        {
            ThicknessMm = wall?.ThicknessMm ?? UsualMm,
            FloorMm = wall?.FloorMm ?? UsualMm,
            ConductivityWPerMK = material.ConductivityWPerMK,
            DensityKgPerM3 = material.DensityKgPerM3,
            HeatCapacityJPerKgK = material.HeatCapacityJPerKgK,
            StartCelsius = startC,
        };
    }

    /// <summary>What its face must not reach.</summary>
    public static HeatLimit Limit(MouldWall? wall)
    {
        var material = Of(wall?.Material);
        return new($"the mould's {material.Label.ToLowerInvariant()}", wall?.LimitC ?? material.LimitC, wall?.LimitC is null ? material.Source : "the mould's page in the stores") { AtMouldFace = true };
    }
}
