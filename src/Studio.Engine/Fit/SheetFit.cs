using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>
/// Fits a resin's kinetics to its data sheet: the cup, the slab and the film that the sheet's numbers come from are made again on the heat model, and the resin is sought
/// that would print them (Gauss and Newton with a prior by class, Laplace's covariance).
/// </summary>
/// <remarks>A sheet tells two or three combinations of the numbers. The rest stays at the prior, and the result says which.</remarks>
public static class SheetFit
{
    // logarithms: of rate (flat), κ × or ÷ 2, heat ± 12 %; E ± 6 kJ/mol; films ± 25 %; demould conversion ± 0.05; gel conversion ± 0.035; the path by κ: + 15 ± 14 kJ/mol
    // (0 to 44 in the literature, our study); orders 1 ± 0.15 and 2 ± 0.2, which sum to 2.5 to 3 (Barral et al. 1995)
    private static readonly double[] PriorSd = [1.6, Math.Log(2), 0.12, 6, 0.25, 0.05, ResinClass.GelSd, 14, 0.15, 0.2];

    private const double Kappa = 0.04;
    private const double ActivationKJ = 55;
    private const double Demould = 0.78;
    private const double KappaEnergyKJ = 15;
    private const double UsualDensity = 1100;

    /// <summary>Fits, or says everything that is wrong with the sheet.</summary>
    public static Outcome<ResinFit> Run(DataSheet sheet)
    {
        var errors = SheetRefusals.Of(sheet);
        return errors.Count > 0 ? Outcome<ResinFit>.Refused(errors) : Outcome<ResinFit>.Of(Fit(sheet));
    }

    /// <summary>What is taken before the sheet's times and temperatures are looked at.</summary>
    internal static FitState Prior(DataSheet sheet)
    {
        var kind = ResinClass.Find(sheet.Class)!;
        var state = Usual(kind) with
        {
            AtCelsius = sheet.PrintedAtC,
            SeenCelsius = [sheet.PrintedAtC],
            GlassEndC = sheet.GlassEndC ?? kind.GlassEndC,
            DensityKgPerM3 = sheet.DensityKgPerM3 ?? UsualDensity,
            FullCureHours = sheet.FullCureHours,
            LogDoubt = kind.LogDoubt,
            Apart = kind.Apart,
        };
        if (FirstRate(sheet, state.Best().Kinetics) is not { } rate)
        {
            return state;
        }

        double[] mean = [.. state.Mean];
        mean[FitNumbers.LogRate] = Math.Log(rate);
        return state with { Mean = mean };
    }

    /// <summary>A resin of a class of which nothing is printed; of the middle class where none is named.</summary>
    internal static FitState Usual(ResinClass? named)
    {
        var kind = named ?? ResinClass.Find("casting")!;
        return new()
        {
            Mean = [Math.Log(kind.RateAt23CPerS), Math.Log(Kappa), Math.Log(kind.HeatJPerKg), ActivationKJ, 0, Demould, kind.GelConversion, KappaEnergyKJ, 1, 2],
            Spread = [.. PriorSd.Select((sd, i) => (IReadOnlyList<double>)[.. PriorSd.Select((_, j) => i == j ? sd : 0)])],
            PriorSd = PriorSd,
            AtCelsius = DataSheet.UsualCelsius,
            GlassEndC = kind.GlassEndC,
            DensityKgPerM3 = UsualDensity,
        };
    }

    internal static GaussFound Search(FitState prior, SheetData data) => GaussNewton.Fit(prior, x => data.Residuals(prior.Resin(x)));

    private static ResinFit Fit(DataSheet sheet)
    {
        var prior = Prior(sheet);
        var data = new SheetData(sheet, prior);
        if (data.Count == 0)
        {
            return ResinFit.Of(prior, [], [SheetDoubts.Nothing()]);
        }

        var found = Search(prior, data);
        // numbers that contradict each other tell less than they seem to: the interval grows by their misfit
        var widen = Math.Max(1, ResinClass.Find(sheet.Class)!.Widen) * Math.Max(1, Math.Sqrt(found.Residuals.Average(r => r * r)));
        var state = prior with { Mean = found.Mean, Spread = [.. found.Spread.Select(row => (IReadOnlyList<double>)[.. row.Select(x => x * widen)])] };
        state = state with { Kept = FitMembers.Of(prior, state, found, x => data.Residuals(prior.Resin(x)), widen) };
        var told = data.Tell(state.Best());
        return ResinFit.Of(state, told, SheetDoubts.Of(sheet, prior, state, told));
    }

    // an isothermal film's time; a cup warms itself and is quicker, so it only starts the search
    private static double? FirstRate(DataSheet sheet, Kinetics prior)
    {
        var (hours, conversion) = sheet switch
        {
            { DemouldHours: { } h } => (h, Demould),
            { GelMinutes: { } m } => (m / 60, prior.GelConversion),
            { PotLifeMinutes: { } m } => (m / 60, 0.21),
            _ => (0, 0),
        };
        return hours == 0 ? null : prior.RateAt23CPerS * IsothermalClock.Hours(prior, sheet.PrintedAtC, conversion) / hours;
    }
}
