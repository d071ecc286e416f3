using Studio.Engine.Moulds;

namespace Studio.Engine.Layers;

/// <summary>Where the resin between former and face is thinnest.</summary>
/// <param name="WallMm">Square to the face [mm].</param>
/// <param name="AtMm">At this height [mm].</param>
public sealed record ThinnestWall(double WallMm, double AtMm);

/// <summary>Doubts of the trade about a piece as a whole, beyond the contract's warnings of each layer.</summary>
public static class PieceDoubts
{
    // between the ends a bulging or a meshed wall may come nearer
    private const int Looks = 60;

    // lighter or heavier than the resin by less than this, a thing may go either way (our choice)
    private const double DriftGPerMl = 0.05;

    /// <summary>Everything that can be said of a piece that was worked out.</summary>
    public static IReadOnlyList<Finding> Of(LayersInput input, LayersResult result, MouldBody mould)
    {
        var doubts = new List<Finding>();
        for (var i = 0; i < input.Layers.Count; i++)
        {
            doubts.AddRange(Weights(input, i));
        }

        if (Stability.Of(mould, result) is { TiltDegrees: < Stability.LeastTiltDegrees } unsafeOne)
        {
            doubts.Add(unsafeOne.ReachMm <= 0
                ? new Finding("no-base", Severity.Note, "", "It has no flat end to stand on. Plan a stand, or flatten a place for it.", "geometry of the mould")
                : new Finding("topples", Severity.Warn, "", FormattableString.Invariant($"Standing, it topples when tilted by {unsafeOne.TiltDegrees:0.0}°. Plan a wider base, or weight it low; from {Stability.LeastTiltDegrees:0}° on it is called safe here."), "geometry; the limit is our rule"));
        }

        return doubts;
    }

    /// <summary>Where the former stands nearest to a face; null without a former.</summary>
    public static ThinnestWall? Thinnest(FormerSpec? former, MouldBody mould)
    {
        if (former is null || !(former.FromMm < mould.HeightMm))
        {
            return null;
        }

        return Enumerable.Range(0, Looks + 1).Select(k => former.FromMm + ((mould.HeightMm - former.FromMm) * k / Looks))
            .Select(z => new ThinnestWall(mould.ClearanceMm(former.OuterWidthMm, former.OuterDepthMm, z), z)).MinBy(w => w.WallMm);
    }

    private static IEnumerable<Finding> Weights(LayersInput input, int i)
    {
        var (layer, own) = (input.Layers[i], Density(input, i));
        if (own is not { } resin)
        {
            yield break;
        }

        foreach (var (at, name, massG, density) in Solids.Weighed(layer))
        {
            var path = $"layers[{i}].{at}";
            var sinksGf = massG * (1 - (resin / density));
            if (density >= resin && density < resin + DriftGPerMl)
            {
                yield return new Finding("drifts", Severity.Note, path, FormattableString.Invariant($"'{name}' is about as heavy as the resin, so it may drift from where it was put. Tack it down with a thin pour first."), "Archimedes' principle; the margin of 0.05 g/ml is our choice");
            }
            else if (i > 0 && density >= resin + DriftGPerMl)
            {
                yield return new Finding("drops", Severity.Note, path, FormattableString.Invariant($"'{name}' presses down with {sinksGf:0.0##} gf (grams-force) and drops through '{input.Layers[i - 1].Name}' while that is soft. Wait for its gel before you set it in."), "Archimedes' principle");
            }
        }
    }

    private static double? Density(LayersInput input, int i) =>
        input.Resins.TryGetValue(input.Layers[i].Resin, out var spec) && Resins.MixedResin.Make(spec, "resin", new InputErrors()) is { } made ? made.DensityGPerMl : null;
}
