using Studio.Engine.Cure;
namespace Studio.Engine.Fit;

/// <summary>The sheet's numbers, each beside what a resin would print in its place.</summary>
/// <remarks>
/// Standard deviations: a gel time 15 %, a demould time 15 %, a pot life 25 % (it is taken for the conversion at which the mix has become twice as thick, 0.21; Castro and
/// Macosko's exponent 1.5, from memory), a cup's peak 10 K; each made wider by the step to which the sheet seems to have been rounded. The greatest depth is taken for the one
/// at which a slab without edges reaches 60 ± 14 °C: common practice, no source. By the printed next pour a thin layer has gelled, with some reserve: it lies late of that by
/// 12 % as a rule, sooner by much more.
/// </remarks>
internal sealed class SheetData
{
    /// <summary>The cup that is meant where none is printed: 100 g is the trade's habit [g].</summary>
    public const double UsualCupG = 100;

    public const string Depth = "peakAtMaxPourCelsius";

    private const double PotLife = 0.21;

    // a printed next-pour time is that of the film's gel and some reserve: common practice, no source
    private const double NextPourShare = 0.88;
    private const double NextPourSd = 0.12;
    private const double NextPourSdBelow = 0.5;
    private const double DepthPeakC = 60;
    private const double DepthSdK = 14;
    private const double DepthPower = 2.2;

    private readonly double trust;
    private readonly SheetTrial? cup;
    private readonly SheetTrial? slab;
    private readonly DataSheet sheet;
    private readonly List<Entry> entries = [];
    private readonly Dictionary<FitResin, Ran> known = [];

    public SheetData(DataSheet sheet, FitState frame, bool leavePeakOut = false)
    {
        this.sheet = sheet;
        trust = Math.Min(1, ResinClass.Find(sheet.Class)?.Widen ?? 1);
        var surer = sheet.CupMassG is null ? 2 : 1;
        Time("gelMinutes", sheet.GelMinutes / 60, 0.15 * surer, r => r.Gel);
        Time("potLifeMinutes", sheet.PotLifeMinutes / 60, 0.25 * (surer == 1 ? 1 : 1.6), r => r.Pot);
        Time("demouldHours", sheet.DemouldHours, 0.15, r => r.Demould);
        NextPour(sheet.NextPourFromHours);
        Rise("peakCelsius", leavePeakOut ? null : sheet.PeakCelsius, 10.0 * surer, 0, r => r.Peak);
        Rise(Depth, sheet.MaxPourMm is null ? null : Math.Max(DepthPeakC, sheet.PrintedAtC + 15), DepthSdK, DepthPower * Rounding(sheet.MaxPourMm ?? 1), r => r.Slab);
        cup = entries.Exists(e => e.Name is "gelMinutes" or "potLifeMinutes" or "peakCelsius") ? SheetTrial.Cup(sheet.CupMassG ?? UsualCupG, frame.DensityKgPerM3, sheet.PrintedAtC) : null;
        slab = sheet.MaxPourMm is { } mm ? SheetTrial.Slab(mm, sheet.PrintedAtC) : null;
    }

    public int Count => entries.Count;

    /// <summary>ln(model / printed) of times and rises, in standard deviations.</summary>
    public double[] Residuals(FitResin resin)
    {
        var ran = Run(resin);
        return [.. entries.Select(e => e.Off(ran) / trust)];
    }

    /// <summary>For people: each number in its field's unit.</summary>
    public IReadOnlyList<FitDatum> Tell(FitResin resin)
    {
        var ran = Run(resin);
        return [.. entries.Zip(Residuals(resin), (e, off) => new FitDatum(e.Name, e.Printed * e.PerUnit, e.Of(ran) * e.PerUnit, off))];
    }

    /// <summary>Peak that a resin would print for this cup [°C].</summary>
    public double CupPeak(FitResin resin) => (cup ?? SheetTrial.Cup(sheet.CupMassG ?? UsualCupG, resin.DensityKgPerM3, sheet.PrintedAtC)).Run(resin, resin.Kinetics.GelConversion).PeakC;

    /// <summary>Standard deviation of the rounding as a share of a number: the largest step of 0.5, 1, 5, 10, 50 … that divides it and is at most a third of it.</summary>
    internal static double Rounding(double printed)
    {
        double most = 0;
        for (var step = 0.5; step <= printed / 3 + 1e-9; step *= IsPowerOfTen(step) ? 5 : 2)
        {
            var times = printed / step;
            most = Math.Abs(times - Math.Round(times)) < 1e-6 ? step : most;
        }

        return most / Math.Sqrt(12) / printed;

        static bool IsPowerOfTen(double x) => Math.Abs(Math.Log10(x) - Math.Round(Math.Log10(x))) < 1e-9;
    }

    private void Time(string name, double? hours, double sd, Func<Ran, double> of)
    {
        if (hours is { } h)
        {
            var perUnit = name.EndsWith("Minutes", StringComparison.Ordinal) ? 60 : 1;
            entries.Add(new(name, h, 0, Math.Sqrt((sd * sd) + Math.Pow(Rounding(h * perUnit), 2)), perUnit, of));
        }
    }

    // a layer has gelled by then: being sooner is no contradiction, being later is
    private void NextPour(double? hours)
    {
        if (hours is { } h)
        {
            entries.Add(new("nextPourFromHours", h * NextPourShare, 0, NextPourSd, 1 / NextPourShare, r => r.Film) { SdBelow = NextPourSdBelow });
        }
    }

    private void Rise(string name, double? peakC, double sdK, double more, Func<Ran, double> of)
    {
        if (peakC is { } c)
        {
            var sd = Math.Min(1, sdK / (c - sheet.PrintedAtC));
            entries.Add(new(name, c, sheet.PrintedAtC, Math.Sqrt((sd * sd) + (more * more)), 1, of) { Steep = name == Depth });
        }
    }

    // the demould conversion changes neither cup nor slab: what was run for the same kinetics is used again
    private Ran Run(FitResin resin)
    {
        var k = resin.Kinetics;
        var same = resin with { DemouldConversion = 0 };
        if (!known.TryGetValue(same, out var found))
        {
            var (gelH, peakC) = cup is null ? default : sheet.GelMinutes is null && sheet.PotLifeMinutes is not null ? default : cup.Run(resin, k.GelConversion);
            var (potH, peak2C) = cup is null || sheet.PotLifeMinutes is null ? default : cup.Run(resin, PotLife);
            known[same] = found = new Ran(gelH, potH, gelH > 0 ? peakC : peak2C, 0, slab?.Run(resin, k.GelConversion).PeakC ?? 0, 0);
        }

        return found with
        {
            Demould = sheet.DemouldHours is null ? 0 : IsothermalClock.Hours(k, sheet.PrintedAtC, resin.DemouldConversion),
            Film = sheet.NextPourFromHours is null ? 0 : IsothermalClock.Hours(k, sheet.PrintedAtC, k.GelConversion),
        };
    }

    private sealed record Entry(string Name, double Printed, double Zero, double Sd, double PerUnit, Func<Ran, double> Of)
    {
        /// <summary>Of a model below what is printed, where that says less.</summary>
        public double? SdBelow { get; init; }

        /// <summary>Far above what is printed is worse than its logarithm: nobody prints a depth at which his resin runs away (common practice, no source).</summary>
        public bool Steep { get; init; }

        /// <summary>ln(model / printed) in standard deviations.</summary>
        public double Off(Ran ran)
        {
            var log = Math.Log(Math.Max(1e-6, Of(ran) - Zero) / (Printed - Zero));
            return (Steep && log > 0 ? (log + Math.Exp(log) - 1) / 2 : log) / (log < 0 ? SdBelow ?? Sd : Sd);
        }
    }

    private sealed record Ran(double Gel, double Pot, double Peak, double Demould, double Slab, double Film);
}
