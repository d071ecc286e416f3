using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Works out one layer after another and adds up the piece's mass and moment.</summary>
/// <param name="mould">The mould.</param>
/// <param name="former">Room for lights, or null.</param>
/// <param name="waste">What stays in the cups.</param>
/// <param name="spread">How far all volumes of the mould may be off together [ratio]; null where nobody filled it with water.</param>
internal sealed class PieceSum(MouldBody mould, Former? former, WasteSpec waste, double? spread)
{
    private double massG;
    private double momentGMm;

    /// <summary>One layer's result; its mass joins the piece.</summary>
    public LayerResult Add(LayerSpec layer, MixedResin resin, LayerLevel level, string path, string resinPath, InputErrors errors)
    {
        var room = LayerRoom.Of(layer, level, mould, former);
        var given = layer.ResinMl is not null && level.LeftOverMl == 0;
        var swelling = Solids.MixedMlPerResinMl(layer, resin.DensityGPerMl);
        var resinMl = given ? layer.ResinMl!.Value : Math.Max(0, room.GrossMl - room.DisplacedMl) / swelling;
        var resinG = resinMl * resin.DensityGPerMl;
        var additions = layer.Additions.Select(a => new AdditionResult(a.Name, a.PercentOfResin / 100 * resinG)).ToList();
        Weigh(resinG + additions.Sum(a => a.Grams) + Solids.WeighedG(layer), room.CentroidMm);

        var batches = Batches.Of(resinG, resin, waste, resinPath, errors);
        var mixed = resin.Split(batches.MixG);
        return new LayerResult
        {
            Name = layer.Name,
            FromMm = level.FromMm,
            ToMm = level.ToMm,
            DepthMm = level.ToMm - level.FromMm,
            GrossMl = room.GrossMl,
            DisplacedMl = room.DisplacedMl,
            ResinMl = resinMl,
            Additions = additions,
            ResinG = resinG,
            MixG = batches.MixG,
            MixSpreadG = given ? null : spread * room.GrossMl / swelling * resin.DensityGPerMl * (1 + (waste.Percent / 100)),
            LevelSpreadMm = given ? spread * room.GrossMl * 1000 / OpenMm2(level.ToMm) : null,
            PartAG = mixed.AG,
            PartBG = mixed.BG,
            PartAMl = mixed.AG / resin.Spec.Mix.DensityAGPerMl,
            PartBMl = mixed.BG / resin.Spec.Mix.DensityBGPerMl,
            Batches = batches.Each,
            FaceMarkMm = mould.FaceMarkMm(level.ToMm),
            Warnings = [.. LayerWarnings.Of(layer, resin, level, room, batches, path)],
        };
    }

    /// <summary>The piece as a whole.</summary>
    public LayersResult Whole(IReadOnlyList<LayerResult> layers) => new()
    {
        CapacityMl = mould.CapacityMl,
        FinishedMassG = massG,
        CentreOfMassMm = massG > 0 ? momentGMm / massG : 0,
        Layers = layers,
    };

    // the surface that rises as resin goes in
    private double OpenMm2(double zMm) => mould.AreaMm2(zMm) - (former?.AreaMm2(zMm) ?? 0);

    private void Weigh(double grams, double centroidMm) => (massG, momentGMm) = (massG + grams, momentGMm + (grams * centroidMm));
}
