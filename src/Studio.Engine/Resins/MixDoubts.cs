namespace Studio.Engine.Resins;

/// <summary>Doubts about a mixing ratio and the three densities that go with it.</summary>
public static class MixDoubts
{
    // a printed density is rounded, and a cured one is a few per cent denser than the mix
    private const double FewPerCent = 0.03;

    /// <summary>Every doubt; paths begin with <paramref name="path"/> and end in the contract's names, such as <c>mix.partsB</c>.</summary>
    /// <param name="densityGPerMl">Of the mixed resin [g/ml]; null where the sheet prints none.</param>
    public static IReadOnlyList<Finding> Of(MixSpec mix, double? densityGPerMl, string path)
    {
        var slipped = new[]
        {
            SheetFigure.Doubt("densityGPerMl", densityGPerMl, null, path + "densityGPerMl"),
            SheetFigure.Doubt("densityAGPerMl", mix.DensityAGPerMl, null, path + "mix.densityAGPerMl"),
            SheetFigure.Doubt("densityBGPerMl", mix.DensityBGPerMl, null, path + "mix.densityBGPerMl"),
            mix is { PartsA: > 0, PartsB: > 0 } ? SheetFigure.Doubt("partsB", 100 * mix.PartsB / mix.PartsA, null, path + "mix.partsB") : null,
        }.OfType<Finding>().ToList();

        // a slipped number does not fit the others either, and that says nothing more
        return slipped.Count == 0 && Misfit(mix, densityGPerMl, path) is { } misfit ? [misfit] : slipped;
    }

    /// <summary>Density by ideal mixing [g/ml], (wA + wB) / (wA/ρA + wB/ρB): the volumes of the parts add up. Null where a part's density is not known.</summary>
    public static double? Ideal(MixSpec mix)
    {
        if (mix is not { PartsA: > 0, PartsB: > 0, DensityAGPerMl: > 0 and var a, DensityBGPerMl: > 0 and var b })
        {
            return null;
        }

        var (wa, wb) = mix.By == "volume" ? (mix.PartsA * a, mix.PartsB * b) : (mix.PartsA, mix.PartsB);
        return (wa + wb) / ((wa / a) + (wb / b));
    }

    private static Finding? Misfit(MixSpec mix, double? densityGPerMl, string path) =>
        densityGPerMl is { } mixed && Ideal(mix) is { } ideal && Math.Abs(mixed - ideal) > FewPerCent * ideal
            ? new("density-does-not-fit", Severity.Warn, path + "densityGPerMl",
                FormattableString.Invariant($"The parts would mix to {ideal:0.00} g/ml, and {mixed:0.00} g/ml is entered. Check all three densities and the ratio."), "ideal mixing: the volumes of the parts add up")
            : null;
}
