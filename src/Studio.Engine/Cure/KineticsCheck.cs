namespace Studio.Engine.Cure;

/// <summary>Ranges in which kinetics can be worked with, the same for the clock and the heat; wide, so that a slow-down can also be switched off by its numbers.</summary>
internal static class KineticsCheck
{
    /// <summary>Adds every figure that cannot be.</summary>
    internal static void Check(Kinetics k, string path, InputErrors errors)
    {
        // at 10 per second a mix would gel before it is stirred
        errors.Positive(path + ".rateAt23CPerS", k.RateAt23CPerS, 10, "1/s");

        // 0 goes with m = 0 only; at 100 nothing of the autocatalysis is left
        errors.Within(path + ".kappa", k.Kappa, 0, 100, "");

        // the path that needs no reacted groups takes up to some 50 kJ/mol more (our study)
        errors.Within(path + ".kappaEnergyJPerMol", k.KappaEnergyJPerMol, -200_000, 200_000, "J/mol");

        // published fits of epoxies lie between 0.3 and 3; 0 is a reaction that does not feel what it has used up
        errors.Within(path + ".m", k.M, 0, 10, "");
        errors.Within(path + ".n", k.N, 0, 10, "");

        // 350 kJ/mol breaks the bond between two carbons; 0 switches the temperature off
        errors.Within(path + ".activationJPerMol", k.ActivationJPerMol, 0, 500_000, "J/mol");

        // ten times what an epoxy has; 0 switches the heat off
        errors.Within(path + ".heatJPerKg", k.HeatJPerKg, 0, 5_000_000, "J/kg");

        // from absolute zero to where any resin has long burnt
        errors.Within(path + ".glassStartC", k.GlassStartC, -273.15, 1000, "°C");
        errors.Within(path + ".glassEndC", k.GlassEndC, -273.15, 1000, "°C");

        // a ratio of heat capacity steps, 0.3 to 1 where published; 0 would leave the glass transition where it begins
        errors.Positive(path + ".lambda", k.Lambda, 10, "");

        // far above any temperature, or so wide that nothing is slowed: both switch vitrification off
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
