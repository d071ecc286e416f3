using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Resins;

namespace Studio.Resins;

/// <summary>A resin and what its data sheet prints. Nothing here is guessed: an empty field is a sheet that does not say.</summary>
public sealed class Resin : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary><c>deepPour</c>, <c>casting</c> or <c>fast</c>.</summary>
    public string Class { get; set; } = "casting";

    /// <summary>True for a typical sheet from the seed, to be replaced by the maker's own.</summary>
    public bool Typical { get; set; }

    public string SheetNote { get; set; } = "";

    public double? DensityGPerMl { get; set; }

    public double PartsA { get; set; } = 2;

    public double PartsB { get; set; } = 1;

    /// <summary><c>weight</c> or <c>volume</c>.</summary>
    public string MixBy { get; set; } = "weight";

    public double? DensityAGPerMl { get; set; }

    public double? DensityBGPerMl { get; set; }

    public double? ViscosityMPas { get; set; }

    public double? PotLifeMinutes { get; set; }

    public double? PotLifeMassG { get; set; }

    public double? PotLifeAtC { get; set; }

    /// <summary>Gel time of the same cup [min], where the sheet prints one beside the pot life.</summary>
    public double? CupGelMinutes { get; set; }

    /// <summary>Peak exotherm of the same cup [°C].</summary>
    public double? CupPeakC { get; set; }

    /// <summary>Highest temperature the sheet allows while it cures [°C].</summary>
    public double? LimitC { get; set; }

    public double? MaxPourMm { get; set; }

    public double? MaxBatchG { get; set; }

    public double? HeatDeflectionC { get; set; }

    public double? MaxHumidityPercent { get; set; }

    /// <summary>Printed times, one row a temperature.</summary>
    public List<CureTimes> Times { get; set; } = [];

    public double FactorPer10C { get; set; } = 2;

    public double? MinC { get; set; }

    public double? MaxC { get; set; }

    public List<ResinPack> Packs { get; set; } = [];

    public bool Retired { get; set; }

    public int Version { get; set; }

    public ResinSpec Spec => new()
    {
        DensityGPerMl = DensityGPerMl,
        MaxPourMm = MaxPourMm,
        MaxBatchG = MaxBatchG,
        PotLifeMinutes = PotLifeMinutes,
        Mix = new MixSpec { PartsA = PartsA, PartsB = PartsB, By = MixBy, DensityAGPerMl = DensityAGPerMl, DensityBGPerMl = DensityBGPerMl },
    };

    /// <summary>
    /// The sheet's numbers as a fit takes them; null where nothing on it says how fast it is. Times count where their temperature is that of
    /// the pot life, within 2 K; the glass transition of the finished resin is taken 5 K above the heat deflection temperature (common practice, no source).
    /// </summary>
    public DataSheet? DataSheet
    {
        get
        {
            var row = Times.Where(t => t.DemouldHours is not null || t.FullCureHours is not null || t.NextPourFromHours is not null)
                .MinBy(t => Math.Abs(t.AtCelsius - (PotLifeAtC ?? DataSheet.UsualCelsius)));
            var at = PotLifeAtC ?? row?.AtCelsius;
            if (row is not null && at is { } c && Math.Abs(row.AtCelsius - c) > 2)
            {
                row = null;
            }

            return PotLifeMinutes is null && CupGelMinutes is null && row?.DemouldHours is null && row?.NextPourFromHours is null ? null : new DataSheet
            {
                Class = Class,
                PotLifeMinutes = CupGelMinutes is null ? PotLifeMinutes : null, // the gel of the same cup says the same, and better
                GelMinutes = CupGelMinutes,
                CupMassG = PotLifeMassG,
                AtCelsius = at,
                PeakCelsius = CupPeakC,
                MaxPourMm = MaxPourMm,
                NextPourFromHours = row?.NextPourFromHours, // a layer has gelled by then
                DemouldHours = row?.DemouldHours,
                FullCureHours = row?.FullCureHours,
                GlassEndC = HeatDeflectionC is >= 20 and <= 195 ? HeatDeflectionC + 5 : null,
                DensityKgPerM3 = Engine.Resins.MixedResin.Make(Spec, "resin", new InputErrors())?.DensityGPerMl * 1000,
            };
        }
    }

    public CureSheet Sheet => new() { Times = Times, FactorPer10C = FactorPer10C, MinC = MinC, MaxC = MaxC };

    private sealed class Table : IEntityTypeConfiguration<Resin>
    {
        public void Configure(EntityTypeBuilder<Resin> builder)
        {
            builder.Ignore(r => r.Spec);
            builder.Ignore(r => r.Sheet);
            builder.Ignore(r => r.DataSheet);
            builder.Property(r => r.Times).AsJson();
            builder.Property(r => r.Packs).AsJson();
        }
    }
}

/// <summary>A pack as bought: A and B together.</summary>
/// <param name="SizeG">Mass of A + B [g].</param>
/// <param name="Price">In the studio's currency.</param>
public sealed record ResinPack(double SizeG, decimal Price);
