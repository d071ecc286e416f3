using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>The doubts of the trade about one layer, each a sentence that says what to do.</summary>
internal static class LayerWarnings
{
    /// <summary>Time to weigh and stir one batch [min]; common practice, no source.</summary>
    public const double MinutesABatch = 5;

    /// <summary>Least room between a former and the wall [mm]; common practice, no source.</summary>
    public const double LeastWallMm = 5;

    private const double Tie = 1e-9;

    // each code's weight and source, in one place; splitting a mix is ordinary work
    private static readonly Dictionary<string, (Severity Severity, string Source)> Weights = new(StringComparer.Ordinal)
    {
        ["pour-too-deep"] = (Severity.Warn, "the resin's data sheet"),
        ["batch-split"] = (Severity.Note, "the resin's data sheet"),
        ["pot-life-short"] = (Severity.Warn, "the resin's data sheet; 5 minutes a batch: common practice, no source"),
        ["scatter-overflows"] = (Severity.Warn, "geometry of the mould"),
        ["former-too-close"] = (Severity.Warn, "common practice, no source"),
        ["over-filled"] = (Severity.Warn, "geometry of the mould"),
        ["floats"] = (Severity.Warn, "Archimedes' principle"),
    };

    /// <summary>All warnings of a layer.</summary>
    /// <param name="path">The layer's path, such as <c>layers[1]</c>.</param>
    public static IEnumerable<Finding> Of(LayerSpec layer, MixedResin resin, LayerLevel level, LayerRoom room, Batches batches, string path) =>
        new[]
        {
            PourTooDeep(resin, level),
            BatchSplit(resin, batches),
            PotLifeShort(resin, batches),
            ScatterOverflows(layer, room),
            FormerTooClose(room),
            OverFilled(layer, level, room),
        }
        .OfType<Finding>()
        .Concat(Floats(layer, resin))
        .Select(f => f with { Path = path });

    private static Finding? PourTooDeep(MixedResin resin, LayerLevel level)
    {
        var depth = level.ToMm - level.FromMm;
        return depth > resin.Spec.MaxPourMm + Tie
            ? Say("pour-too-deep", $"The layer is {depth:0.#} mm deep and the resin allows {resin.Spec.MaxPourMm:0.#} mm in one pour. Deeper pours can overheat: pour in two layers or choose a resin for deeper pours.")
            : null;
    }

    private static Finding? BatchSplit(MixedResin resin, Batches batches) =>
        batches.Each.Count > 1
            ? Say("batch-split", $"The mix of {batches.MixG:0.#} g is more than the {resin.Spec.MaxBatchG:0.#} g allowed at once. Mix {batches.Each.Count} equal batches.")
            : null;

    private static Finding? PotLifeShort(MixedResin resin, Batches batches)
    {
        var needed = batches.Each.Count * MinutesABatch;
        return needed > resin.Spec.PotLifeMinutes + Tie
            ? Say("pot-life-short", $"Weighing and stirring {Count(batches.Each.Count)} takes about {needed:0} minutes, longer than the pot life of {resin.Spec.PotLifeMinutes:0.#} minutes. Pour each batch as soon as it is mixed, or use a slower resin.")
            : null;
    }

    private static Finding? ScatterOverflows(LayerSpec layer, LayerRoom room)
    {
        var heapMl = layer.Scatter.Sum(Solids.BulkMl);
        var openMl = room.GrossMl - room.FormerMl;
        if (heapMl > openMl * (1 + Tie))
        {
            return Say("scatter-overflows", $"The scatter heaps to {heapMl:0.#} ml and the layer has room for {openMl:0.#} ml. Use less scatter or make the layer deeper.");
        }

        return layer.Scatter.Sum(Solids.VolumeMl) > 0 && IsFull(room)
            ? Say("scatter-overflows", $"The scatter and what is placed take {room.SolidsMl:0.#} ml and the layer has room for {openMl:0.#} ml, so no resin fits. Use less scatter or make the layer deeper.")
            : null;
    }

    private static Finding? FormerTooClose(LayerRoom room) =>
        room.ClearanceMm < LeastWallMm - Tie
            ? Say("former-too-close", $"Only {Math.Max(0, room.ClearanceMm.Value):0.0} mm of resin stand between the former and the face. Keep at least {LeastWallMm:0} mm, or the wall may crack or show the former.")
            : null;

    private static Finding? OverFilled(LayerSpec layer, LayerLevel level, LayerRoom room)
    {
        if (level.LeftOverMl > 0)
        {
            return Say("over-filled", $"The mould is full at {level.ToMm:0.#} mm; {level.LeftOverMl:0.##} ml of the resin do not fit.");
        }

        if (level.AboveRimMm > 0)
        {
            return Say("over-filled", $"The layer would end {level.AboveRimMm:0.##} mm above the rim; it was cut at the rim, {level.ToMm:0.#} mm.");
        }

        return layer.Scatter.Sum(Solids.VolumeMl) <= 0 && IsFull(room)
            ? Say("over-filled", $"What is placed takes {room.SolidsMl:0.#} ml and the layer has room for {room.GrossMl - room.FormerMl:0.#} ml, so it stands out of the layer and no resin fits.")
            : null;
    }

    private static IEnumerable<Finding> Floats(LayerSpec layer, MixedResin resin) =>
        Solids.Floating(layer, resin.DensityGPerMl).Select(f => Say(
            "floats", $"'{f.Name}' is lighter than the resin and pushes up with {f.LiftGf:0.0##} gf (grams-force). Tack it down with a little resin first, or pour the layer in two."));

    private static bool IsFull(LayerRoom room) => room.SolidsMl > 0 && room.DisplacedMl > room.GrossMl * (1 + Tie);

    private static string Count(int batches) => batches == 1 ? "one batch" : FormattableString.Invariant($"{batches} batches");

    private static Finding Say(string code, FormattableString message)
    {
        var (severity, source) = Weights[code];
        return new(code, severity, "", FormattableString.Invariant(message), source);
    }
}
