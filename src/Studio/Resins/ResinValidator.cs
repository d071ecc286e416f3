using FluentValidation;

namespace Studio.Resins;

/// <summary>What keeps a data sheet from being used at all. Contradictions that can still be kept are doubts: see <see cref="ResinDoubts"/>.</summary>
public sealed class ResinValidator : AbstractValidator<ResinForm>
{
    private const double DensestGPerMl = Engine.Resins.MixedResin.DensestGPerMl;

    public ResinValidator()
    {
        RuleFor(r => r.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give the resin a name that you will know it by at the bench.")
            .MaximumLength(100).WithMessage("Keep the name under 100 letters.");
        RuleFor(r => r.SheetNote).MaximumLength(1000).WithMessage("Keep the note under 1000 letters.");
        RuleFor(r => r.Class).Must(c => ResinWords.Classes.Any(k => k.Key == c)).WithMessage("Choose what kind of resin it is.");
        RuleFor(r => r.MixBy).Must(b => b is "weight" or "volume").WithMessage("Choose whether the parts are by weight or by volume.");
        Mix();
        Limits();
        RuleForEach(r => r.Times).SetValidator(new ResinTimesValidator());
        RuleFor(r => r.Times).Must(OneRowATemperature).WithMessage("Two rows have the same temperature. Keep one of them.").OverridePropertyName("TimesAll");
        RuleForEach(r => r.Packs).SetValidator(new ResinPackValidator());
    }

    private void Mix()
    {
        RuleFor(r => r.PartsA).NotNull().WithMessage("The mixing ratio is needed: how many parts of A.").Within(0, 1e6, "parts");
        RuleFor(r => r.PartsB).NotNull().WithMessage("The mixing ratio is needed: how many parts of B.").Within(0, 1e6, "parts");
        RuleFor(r => r.DensityGPerMl).Within(0, DensestGPerMl, "g/ml")
            .Must((r, d) => d is not null || r is { DensityAGPerMl: not null, DensityBGPerMl: not null })
            .WithMessage("A density is needed to turn a volume into grams: that of the mixed resin, or those of both parts.");
        RuleFor(r => r.DensityAGPerMl).Within(0, DensestGPerMl, "g/ml")
            .Must((r, d) => d is not null || r.MixBy != "volume").WithMessage("Mixed by volume, part A needs its density: without it no grams can be worked out.");
        RuleFor(r => r.DensityBGPerMl).Within(0, DensestGPerMl, "g/ml")
            .Must((r, d) => d is not null || r.MixBy != "volume").WithMessage("Mixed by volume, part B needs its density: without it no grams can be worked out.");
    }

    private void Limits()
    {
        RuleFor(r => r.ViscosityMPas).Within(0, 1e7, "mPa·s");
        RuleFor(r => r.PotLifeMinutes).Within(0, 1e5, "min");
        RuleFor(r => r.PotLifeMassG).Within(0, 1e6, "g");
        RuleFor(r => r.PotLifeAtC).Temperature();
        RuleFor(r => r.CupGelMinutes).Within(0, 2e4, "min");
        RuleFor(r => r.CupPeakC).Must(v => v is null or (> 0 and <= 600)).WithMessage("Must be between 0 and 600 °C. For Fahrenheit type the unit, such as 300 °F.");
        RuleFor(r => r.LimitC).Must(v => v is null or (>= 30 and <= 200)).WithMessage("Must be between 30 and 200 °C. For Fahrenheit type the unit, such as 150 °F.");
        RuleFor(r => r.MaxPourMm).Within(0, 2000, "mm");
        RuleFor(r => r.MaxBatchG).Within(0, 1e6, "g");
        RuleFor(r => r.HeatDeflectionC).Temperature();
        RuleFor(r => r.MaxHumidityPercent).Within(0, 100, "%");
        RuleFor(r => r.MinC).Temperature();
        RuleFor(r => r.MaxC).Temperature().Must((r, max) => max is null || r.MinC is null || max > r.MinC).WithMessage("The warmest room must be warmer than the coldest.");
        RuleFor(r => r.FactorPer10C).Must(f => f is null or (>= 1 and <= 10)).WithMessage("Must be between 1 and 10; 2 is common practice.");
    }

    private static bool OneRowATemperature(List<ResinTimesRow> rows)
    {
        var said = rows.Where(t => !t.Empty && t.AtC is not null).Select(t => t.AtC).ToList();
        return said.Distinct().Count() == said.Count;
    }
}

/// <summary>A row of printed times.</summary>
public sealed class ResinTimesValidator : AbstractValidator<ResinTimesRow>
{
    private const double LongestHours = 24 * 365;

    public ResinTimesValidator()
    {
        RuleFor(t => t.AtC).Temperature().Must((t, c) => t.Empty || c is not null).WithMessage("Times need the temperature they are printed for.");
        RuleFor(t => t.GelHours).Within(0, LongestHours, "h");
        RuleFor(t => t.NextFromHours).Within(0, LongestHours, "h");
        RuleFor(t => t.NextUntilHours).Within(0, LongestHours, "h")
            .Must((t, until) => until is null || t.NextFromHours is null || until > t.NextFromHours).WithMessage("The window must close after it opens.");
        RuleFor(t => t.DemouldHours).Within(0, LongestHours, "h");
        RuleFor(t => t.FullCureHours).Within(0, LongestHours, "h");
    }
}

/// <summary>A pack: both figures or neither.</summary>
public sealed class ResinPackValidator : AbstractValidator<ResinPackRow>
{
    public ResinPackValidator()
    {
        RuleFor(p => p.SizeG).Within(0, 1e7, "g").Must((p, s) => s is not null || p.Price is null).WithMessage("How many grams does the pack hold?");
        RuleFor(p => p.Price).Must((p, v) => v is not null || p.SizeG is null).WithMessage("What does the pack cost?")
            .Must(v => v is null or (>= 0 and <= 1e6)).WithMessage("A price is nothing or more, and at most 1000000.");
    }
}

/// <summary>Rules that several figures share.</summary>
internal static class FigureRules
{
    public static IRuleBuilderOptions<T, double?> Within<T>(this IRuleBuilder<T, double?> rule, double above, double atMost, string unit) =>
        rule.Must(v => v is null || (v > above && v <= atMost)).WithMessage(FormattableString.Invariant($"Must be above {above} and at most {atMost:0.##} {unit}."));

    public static IRuleBuilderOptions<T, double?> Temperature<T>(this IRuleBuilder<T, double?> rule) =>
        rule.Must(v => v is null or (>= -50 and <= 150)).WithMessage("Must be between −50 and 150 °C. For Fahrenheit type the unit, such as 77 °F.");
}
