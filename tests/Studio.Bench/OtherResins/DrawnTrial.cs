namespace Studio.Bench.Tools.OtherResins;

/// <summary>What a made-up resin truly does in a cup, in a slab and in a layer.</summary>
internal static class DrawnTrial
{
    /// <summary>Diameter of the mould that a layer is poured in [mm].</summary>
    public const double MouldMm = 100;

    /// <summary>Its wall and floor [mm].</summary>
    public const double WallMm = 10;

    // a laboratory's room, for which a sheet is printed
    public const double PrintedC = 23;

    private const int Fine = 18;
    private const double Hasty = 0.6;

    // a run ends here at the latest, in times of a film's gel
    private const double Latest = 6;
    private static readonly DrawnWall Plastic = new(0.2, 1000, 1700);

    /// <summary>A cup as wide as it is deep, of 1 mm of plastic.</summary>
    public static RoundTold Cup(DrawnResin resin, double massG, int fine = Fine, double share = Hasty)
    {
        var mm = 10 * Math.Cbrt(4 * massG * 1000 / resin.Matter.DensityKgPerM3 / Math.PI);
        return new RoundHeat(RoundBody.Cylinder(mm, mm, 1, 1, fine), resin.Matter, resin.Kinetics, Plastic, resin.Laboratory, PrintedC, PrintedC)
            .Run(Until(resin, PrintedC), resin.Gel, PrintedC, 0.9, share);
    }

    /// <summary>Peak of a slab without edges on silicone, open above [°C].</summary>
    public static double SlabPeakC(DrawnResin resin, double deepMm) =>
        new RoundHeat(RoundBody.Slab(deepMm, WallMm), resin.Matter, resin.Kinetics, resin.Silicone, resin.Laboratory with { Side = 0 }, PrintedC, PrintedC)
            .Run(Until(resin, PrintedC), resin.Gel, PrintedC, 0.9).PeakC;

    /// <summary>A layer in the round mould, mix and mould as warm as the room.</summary>
    public static RoundTold Layer(DrawnResin resin, double deepMm, double roomC, int fine = Fine, double share = Hasty) =>
        new RoundHeat(RoundBody.Cylinder(MouldMm, deepMm, WallMm, WallMm, fine), resin.Matter, resin.Kinetics, resin.Silicone, resin.Workroom, roomC, roomC)
            .Run(Until(resin, roomC), resin.Gel, roomC, 0.3, share);

    private static double Until(DrawnResin resin, double roomC) => Latest * resin.Kinetics.FilmHours(roomC, resin.Gel);
}
