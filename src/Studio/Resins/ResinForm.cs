using Studio.Engine.Cure;

namespace Studio.Resins;

/// <summary>A data sheet as it is being typed: any figure may still be missing.</summary>
public sealed class ResinForm : Shell.IEdited
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    public string Class { get; set; } = "casting";

    public bool Typical { get; set; }

    public string SheetNote { get; set; } = "";

    public double? PartsA { get; set; }

    public double? PartsB { get; set; }

    public string MixBy { get; set; } = "weight";

    public double? DensityGPerMl { get; set; }

    public double? DensityAGPerMl { get; set; }

    public double? DensityBGPerMl { get; set; }

    public double? ViscosityMPas { get; set; }

    public double? PotLifeMinutes { get; set; }

    public double? PotLifeMassG { get; set; }

    public double? PotLifeAtC { get; set; }

    public double? CupGelMinutes { get; set; }

    public double? CupPeakC { get; set; }

    public double? LimitC { get; set; }

    public double? MaxPourMm { get; set; }

    public double? MaxBatchG { get; set; }

    public double? HeatDeflectionC { get; set; }

    public double? MaxHumidityPercent { get; set; }

    public double? MinC { get; set; }

    public double? MaxC { get; set; }

    public double? FactorPer10C { get; set; } = 2;

    public List<ResinTimesRow> Times { get; set; } = [new() { AtC = ResinTimesRow.UsualC }];

    public List<ResinPackRow> Packs { get; set; } = [new()];

    public bool Retired { get; set; }

    /// <summary>The form filled from what is stored.</summary>
    public static ResinForm Of(Resin r) => new()
    {
        Id = r.Id,
        Version = r.Version,
        Name = r.Name,
        Class = r.Class,
        Typical = r.Typical,
        SheetNote = r.SheetNote,
        PartsA = r.PartsA,
        PartsB = r.PartsB,
        MixBy = r.MixBy,
        DensityGPerMl = r.DensityGPerMl,
        DensityAGPerMl = r.DensityAGPerMl,
        DensityBGPerMl = r.DensityBGPerMl,
        ViscosityMPas = r.ViscosityMPas,
        PotLifeMinutes = r.PotLifeMinutes,
        PotLifeMassG = r.PotLifeMassG,
        PotLifeAtC = r.PotLifeAtC,
        CupGelMinutes = r.CupGelMinutes,
        CupPeakC = r.CupPeakC,
        LimitC = r.LimitC,
        MaxPourMm = r.MaxPourMm,
        MaxBatchG = r.MaxBatchG,
        HeatDeflectionC = r.HeatDeflectionC,
        MaxHumidityPercent = r.MaxHumidityPercent,
        MinC = r.MinC,
        MaxC = r.MaxC,
        FactorPer10C = r.FactorPer10C,
        Retired = r.Retired,
        Times = [.. r.Times.Select(ResinTimesRow.Of)],
        Packs = [.. r.Packs.Select(p => new ResinPackRow { SizeG = p.SizeG, Price = (double)p.Price })],
    };

    /// <summary>The record, from a form that the validator has passed; rows left wholly empty are dropped.</summary>
    public Resin ToResin() => new()
    {
        Id = Id,
        Version = Version,
        Name = Name.Trim(),
        Class = Class,
        Typical = Typical,
        SheetNote = SheetNote.Trim(),
        PartsA = PartsA ?? 0,
        PartsB = PartsB ?? 0,
        MixBy = MixBy,
        DensityGPerMl = DensityGPerMl,
        DensityAGPerMl = DensityAGPerMl,
        DensityBGPerMl = DensityBGPerMl,
        ViscosityMPas = ViscosityMPas,
        PotLifeMinutes = PotLifeMinutes,
        PotLifeMassG = PotLifeMassG,
        PotLifeAtC = PotLifeAtC,
        CupGelMinutes = CupGelMinutes,
        CupPeakC = CupPeakC,
        LimitC = LimitC,
        MaxPourMm = MaxPourMm,
        MaxBatchG = MaxBatchG,
        HeatDeflectionC = HeatDeflectionC,
        MaxHumidityPercent = MaxHumidityPercent,
        MinC = MinC,
        MaxC = MaxC,
        FactorPer10C = FactorPer10C ?? 2,
        Retired = Retired,
        Times = [.. Times.Where(t => !t.Empty && t.AtC is not null).OrderBy(t => t.AtC).Select(t => t.ToTimes())],
        Packs = [.. Packs.Where(p => p is { SizeG: not null, Price: not null }).OrderBy(p => p.SizeG).Select(p => new ResinPack(p.SizeG!.Value, (decimal)p.Price!.Value))],
    };
}

/// <summary>One row of printed times: hours after pouring, at one temperature.</summary>
public sealed class ResinTimesRow
{
    /// <summary>Where most sheets measure: 23 °C (common practice, no source).</summary>
    public const double UsualC = 23;

    public double? AtC { get; set; }

    public double? GelHours { get; set; }

    public double? NextFromHours { get; set; }

    public double? NextUntilHours { get; set; }

    public double? DemouldHours { get; set; }

    public double? FullCureHours { get; set; }

    /// <summary>True when it says nothing beyond its temperature.</summary>
    public bool Empty => (GelHours ?? NextFromHours ?? NextUntilHours ?? DemouldHours ?? FullCureHours) is null;

    public static ResinTimesRow Of(CureTimes t) => new()
    {
        AtC = t.AtCelsius,
        GelHours = t.GelHours,
        NextFromHours = t.NextPourFromHours,
        NextUntilHours = t.NextPourUntilHours,
        DemouldHours = t.DemouldHours,
        FullCureHours = t.FullCureHours,
    };

    public CureTimes ToTimes() => new()
    {
        AtCelsius = AtC ?? UsualC,
        GelHours = GelHours,
        NextPourFromHours = NextFromHours,
        NextPourUntilHours = NextUntilHours,
        DemouldHours = DemouldHours,
        FullCureHours = FullCureHours,
    };
}

/// <summary>A pack being typed: A and B together.</summary>
public sealed class ResinPackRow
{
    public double? SizeG { get; set; }

    public double? Price { get; set; }
}
