using Studio.Resins;

namespace Studio.Tests.Resins;

/// <summary>Sheets that tests start from.</summary>
internal static class Sheets
{
    public static ResinForm Casting(string name) => new()
    {
        Name = name,
        Class = "casting",
        PartsA = 100,
        PartsB = 44,
        MixBy = "weight",
        DensityGPerMl = 1.10,
        MaxPourMm = 20,
        PotLifeMinutes = 45,
        PotLifeMassG = 100,
        PotLifeAtC = 23,
        MinC = 18,
        MaxC = 28,
        Times = [new ResinTimesRow { AtC = 23, GelHours = 4, NextFromHours = 6, NextUntilHours = 24, DemouldHours = 24, FullCureHours = 168 }],
        Packs = [new ResinPackRow { SizeG = 1000, Price = 27.5 }],
    };
}
