namespace Studio.Engine.Cure;

/// <summary>Ranges in which kinetics can be worked with; wide, so that a slow-down can also be switched off by its numbers.</summary>
internal static class KineticsCheck
{
    /// <summary>Adds every figure that cannot be.</summary>
    internal static void Check(Kinetics k, string path, InputErrors errors)
    {
        errors.Positive(path + ".rateAt23CPerS", k.RateAt23CPerS, 10, "1/s");
        errors.Within(path + ".kappa", k.Kappa, 0, 100, "");
        errors.Within(path + ".m", k.M, 0, 10, "");
        errors.Within(path + ".n", k.N, 0, 10, "");
        errors.Within(path + ".activationJPerMol", k.ActivationJPerMol, 0, 500_000, "J/mol");
        errors.Within(path + ".heatJPerKg", k.HeatJPerKg, 0, 5_000_000, "J/kg");
        errors.Within(path + ".glassStartC", k.GlassStartC, -273.15, 1000, "°C");
        errors.Within(path + ".glassEndC", k.GlassEndC, -273.15, 1000, "°C");
        errors.Positive(path + ".lambda", k.Lambda, 10, "");
        errors.Within(path + ".vitrificationOffsetK", k.VitrificationOffsetK, -1000, 1e6, "K");
        errors.Positive(path + ".vitrificationWidthK", k.VitrificationWidthK, 1e6, "K");
        if (!(k.GelConversion is > 0 and < 1))
        {
            errors.Add(path + ".gelConversion", FormattableString.Invariant($"Must be above 0 and below 1; {k.GelConversion} was given."));
        }

        Together(k, path, errors);
    }

    /// <summary>For a caller in code.</summary>
    /// <exception cref="ArgumentException">A figure is out of range; names it.</exception>
    internal static void Require(Kinetics kinetics)
    {
        var errors = new InputErrors();
        Check(kinetics, nameof(kinetics), errors);
        if (!errors.None)
        {
            throw new ArgumentException(string.Join(" ", errors.All.Select(e => $"{e.Path}: {e.Message}")), nameof(kinetics));
        }
    }

    private static void Together(Kinetics k, string path, InputErrors errors)
    {
        if (k.GlassEndC < k.GlassStartC)
        {
            errors.Add(path + ".glassEndC", FormattableString.Invariant($"The cured resin's glass transition, {k.GlassEndC} °C, is below that of the fresh mix, {k.GlassStartC} °C."));
        }

        if (k is { Kappa: 0, M: > 0 })
        {
            errors.Add(path + ".kappa", "With a kappa of 0 and m above 0 the reaction never starts. Give kappa above 0.");
        }
    }
}
