namespace Studio.Engine.Resins;

/// <summary>A resin with everything worked out: its density and the share of each part by mass.</summary>
public sealed class MixedResin
{
    /// <summary>Denser than any element (osmium 22.6 g/ml, from memory): beyond it a density is a slip of the unit.</summary>
    public const double DensestGPerMl = 30;

    private const double MostParts = 1e6;
    private const double MostMm = 10_000;
    private const double MostG = 1e9;
    private const double MostMinutes = 1e6;

    private readonly double shareA;

    private MixedResin(ResinSpec spec, double densityGPerMl) =>
        (Spec, DensityGPerMl, shareA) = (spec, densityGPerMl, WeightA(spec.Mix) / (WeightA(spec.Mix) + WeightB(spec.Mix)));

    /// <summary>As entered.</summary>
    public ResinSpec Spec { get; }

    /// <summary>Density of the mixed resin [g/ml], as given or by ideal mixing of the parts.</summary>
    public double DensityGPerMl { get; }

    /// <summary>Checks a description; null, with errors added, when it cannot be used.</summary>
    public static MixedResin? Make(ResinSpec spec, string path, InputErrors errors)
    {
        var good = CheckLimits(spec, path, errors) & CheckMix(spec.Mix, path + ".mix", errors);
        if (spec.DensityGPerMl is null && (spec.Mix.DensityAGPerMl is null || spec.Mix.DensityBGPerMl is null))
        {
            errors.Add(path + ".densityGPerMl", "The density of the mixed resin is missing. Give it, or give the densities of both parts in 'mix'.");
            return null;
        }

        return good ? new MixedResin(spec, spec.DensityGPerMl ?? MixDoubts.Ideal(spec.Mix)!.Value) : null;
    }

    /// <summary>Grams of A and of B in a mass of mixed resin [g].</summary>
    public (double AG, double BG) Split(double mixG) => (mixG * shareA, mixG * (1 - shareA));

    private static bool CheckLimits(ResinSpec spec, string path, InputErrors errors) =>
        errors.Positive(path + ".densityGPerMl", spec.DensityGPerMl, DensestGPerMl, "g/ml")
        & errors.Positive(path + ".maxPourMm", spec.MaxPourMm, MostMm, "mm")
        & errors.Positive(path + ".maxBatchG", spec.MaxBatchG, MostG, "g")
        & errors.Positive(path + ".potLifeMinutes", spec.PotLifeMinutes, MostMinutes, "minutes");

    private static bool CheckMix(MixSpec mix, string path, InputErrors errors)
    {
        var good = errors.Positive(path + ".partsA", mix.PartsA, MostParts, "parts")
            & errors.Positive(path + ".partsB", mix.PartsB, MostParts, "parts")
            & errors.Positive(path + ".densityAGPerMl", mix.DensityAGPerMl, DensestGPerMl, "g/ml")
            & errors.Positive(path + ".densityBGPerMl", mix.DensityBGPerMl, DensestGPerMl, "g/ml");
        return mix.By switch
        {
            "weight" => good,
            "volume" => good & Needs(mix.DensityAGPerMl, path + ".densityAGPerMl", errors) & Needs(mix.DensityBGPerMl, path + ".densityBGPerMl", errors),
            _ => Refuse(path + ".by", $"The parts are measured by 'weight' or by 'volume'; '{mix.By}' was given.", errors),
        };
    }

    private static bool Needs(double? density, string path, InputErrors errors) =>
        density is not null || Refuse(path, "A mix by volume needs this part's density, to turn its millilitres into grams.", errors);

    private static bool Refuse(string path, string message, InputErrors errors)
    {
        errors.Add(path, message);
        return false;
    }

    // mass = volume × density; parts by weight are masses already
    private static double WeightA(MixSpec mix) => IsByVolume(mix) ? mix.PartsA * mix.DensityAGPerMl!.Value : mix.PartsA;

    private static double WeightB(MixSpec mix) => IsByVolume(mix) ? mix.PartsB * mix.DensityBGPerMl!.Value : mix.PartsB;

    private static bool IsByVolume(MixSpec mix) => string.Equals(mix.By, "volume", StringComparison.Ordinal);
}
