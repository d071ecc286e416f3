namespace Studio.Engine.Resins;

/// <summary>Doubts about what the layer arithmetic takes from a data sheet.</summary>
internal static class ResinSpecDoubts
{
    /// <summary>Every doubt; paths as in the input, such as <c>resins.clear.densityGPerMl</c>.</summary>
    public static IEnumerable<Finding> Of(ResinSpec spec, string path) =>
        [.. MixDoubts.Of(spec.Mix, spec.DensityGPerMl, path + "."), .. new[]
        {
            SheetFigure.Doubt("maxPourMm", spec.MaxPourMm, null, path + ".maxPourMm"),
            SheetFigure.Doubt("maxBatchG", spec.MaxBatchG, null, path + ".maxBatchG"),
            SheetFigure.Doubt("potLifeMinutes", spec.PotLifeMinutes, null, path + ".potLifeMinutes"),
        }.OfType<Finding>()];
}
