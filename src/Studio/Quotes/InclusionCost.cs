using Studio.Stores;

namespace Studio.Quotes;

/// <summary>Pigments, powders and loose filling by their mass, from the stores' packs. What the family lends costs nothing.</summary>
public sealed class InclusionCost : ICostLine
{
    // a bulk measure without a packing of its own: the contract's own default (docs/calculations.md)
    private const double DefaultPacking = 0.6;

    public string Kind => "inclusion";

    public string Label => "Pigments and filling";

    public IEnumerable<BoughtLine> Bought(QuoteSource source) =>
        Added(source).Concat(Strewn(source))
            .Where(x => x.Grams > 0)
            .GroupBy(x => (x.MaterialId, x.Name))
            .Select(g => Line(source.Materials.FirstOrDefault(m => m.Id == g.Key.MaterialId), g.Key.Name, g.Sum(x => x.Grams)));

    private static IEnumerable<(int? MaterialId, string Name, double Grams)> Added(QuoteSource source) =>
        source.Piece.Layers.OrderBy(l => l.Order).Zip(source.Grams.Layers)
            .SelectMany(x => x.First.Additions.Zip(x.Second.Additions, (wanted, worked) => (wanted.MaterialId, wanted.Name, worked.Grams)));

    private static IEnumerable<(int? MaterialId, string Name, double Grams)> Strewn(QuoteSource source) =>
        from layer in source.Piece.Layers
        from s in layer.Scatter
        let density = s.DensityGPerMl ?? source.Materials.FirstOrDefault(m => m.Id == s.MaterialId)?.DensityGPerMl ?? 0
        select (s.MaterialId, s.Name, s.MassG ?? ((s.BulkMl ?? 0) * (s.PackingFraction ?? DefaultPacking) * density));

    private static BoughtLine Line(Material? material, string name, double grams)
    {
        // a tint is bought by the millilitre and stirred in by mass
        var inMl = material is { Unit: "ml", DensityGPerMl: > 0 };
        var used = decimal.Round((decimal)(inMl ? grams / material!.DensityGPerMl!.Value : grams), 2, MidpointRounding.AwayFromZero);
        var unit = inMl ? "ml" : "g";
        return material is { PackSize: > 0, PackPrice: > 0, Unit: "g" or "ml" }
            ? new(name, unit, used, (decimal)material.PackSize, material.PackPrice) { MaterialId = material.Id }
            : new(name, unit, used, null, null, material is null ? $"{name} is not in the stores, so it has no price. Add it there, or enter its price here." : $"{name} has no price by the gram. Enter its pack under Stores.") { MaterialId = material?.Id };
    }
}
