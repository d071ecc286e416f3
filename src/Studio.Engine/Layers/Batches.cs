using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>How a pour is mixed: the total and the equal batches.</summary>
internal sealed record Batches(double MixG, IReadOnlyList<BatchResult> Each)
{
    private const int MostBatches = 1000;

    // a pour that fits its cup to the last digit must not be split by rounding
    private const double Tie = 1e-9;

    /// <summary>
    /// The fewest equal batches of which none, its cup residue included, is heavier than the resin allows. Each batch leaves
    /// <see cref="WasteSpec.PerBatchG"/> in its cup, so more batches need more mix.
    /// </summary>
    public static Batches Of(double resinG, MixedResin resin, WasteSpec waste, string resinPath, InputErrors errors)
    {
        if (resinG <= 0)
        {
            return new Batches(0, []);
        }

        var poured = resinG * (1 + (waste.Percent / 100));
        var needed = resin.Spec.MaxBatchG is { } most ? Math.Max(1, Math.Ceiling(poured / (most - waste.PerBatchG) * (1 - Tie))) : 1;
        if (needed > MostBatches)
        {
            errors.Add(resinPath + ".maxBatchG", FormattableString.Invariant($"A layer would take {needed:0} batches; more than {MostBatches} are not worked out. Allow a larger batch."));
            return new Batches(poured, []);
        }

        var mixG = poured + (needed * waste.PerBatchG);
        var (a, b) = resin.Split(mixG / needed);
        return new Batches(mixG, [.. Enumerable.Repeat(new BatchResult(a, b), (int)needed)]);
    }
}
