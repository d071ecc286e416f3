using Studio.Engine.Forecast;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Stores;

namespace Studio.Heat;

/// <summary>What in and around a layer must not become hotter, each with where that is from.</summary>
public static class HeatLimits
{
    /// <summary>The limits of one layer.</summary>
    /// <param name="mould">Its wall.</param>
    /// <param name="layer">With what is set into it.</param>
    /// <param name="film">True when a photograph on film stands in it.</param>
    /// <param name="keepsakes">Those of the commission.</param>
    /// <param name="materials">Those of the stores.</param>
    public static IReadOnlyList<HeatLimit> Of(Mould mould, PieceLayer layer, bool film, IReadOnlyList<Keepsake> keepsakes, IReadOnlyList<Material> materials) =>
    [
        OfResin(layer.Resin!),
        WallMaterials.Limit(mould.Wall),
        .. film ? [HeatLimit.PrintedFilm] : Array.Empty<HeatLimit>(),
        .. layer.Placed.Select(p => OfKeepsake(p, keepsakes)).OfType<HeatLimit>(),
        .. layer.Scatter.Select(s => (s.Name, s.MaterialId)).Concat(layer.Additions.Select(a => (a.Name, a.MaterialId))).Select(m => OfMaterial(m.Name, m.MaterialId, materials)).OfType<HeatLimit>(),
    ];

    /// <summary>The materials of the stores that are in a layer.</summary>
    internal static IEnumerable<int> MaterialsOf(PieceLayer layer) => layer.Scatter.Select(s => s.MaterialId).Concat(layer.Additions.Select(a => a.MaterialId)).OfType<int>();

    /// <summary>True when a photograph on film reaches into a layer.</summary>
    internal static bool FilmIn(Piece piece, LayersResult result, LayerResult level) => FilmRules.Of(piece, result)
        .Where(s => s.Fit is { Stands: true }).SelectMany(s => s.Fit!.InMould).Any(ring => ring.Min(q => q.Z) < level.ToMm && ring.Max(q => q.Z) > level.FromMm);

    /// <summary>The resin's own.</summary>
    public static HeatLimit OfResin(Resin resin) => resin.LimitC is { } c ? HeatLimit.Resin.From(c, $"data sheet of {resin.Name}") with { Of = resin.Name } : HeatLimit.Resin;

    private static HeatLimit? OfKeepsake(LayerPlaced placed, IReadOnlyList<Keepsake> keepsakes) => keepsakes.FirstOrDefault(k => k.Id == placed.KeepsakeId)?.Kind switch
    {
        "dried-flower" => HeatLimit.DriedFlowers with { Of = placed.Name },
        "plastic" => HeatLimit.Acrylic with { Of = placed.Name },
        "electronics" => HeatLimit.Lights with { Of = placed.Name },
        { } kind when kind.StartsWith("photograph-", StringComparison.Ordinal) => HeatLimit.PrintedFilm with { Of = placed.Name },
        _ => null,
    };

    private static HeatLimit? OfMaterial(string name, int? id, IReadOnlyList<Material> materials) =>
        materials.FirstOrDefault(m => m.Id == id)?.LimitC is { } c ? new(name, c, "the material's page in the stores") : null;
}
