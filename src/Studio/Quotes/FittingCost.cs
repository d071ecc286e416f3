namespace Studio.Quotes;

/// <summary>Lights, bases and other things counted by the piece.</summary>
public sealed class FittingCost : ICostLine
{
    public const string Key = "fitting";

    public string Kind => Key;

    public string Label => "Lights and fittings";

    public IEnumerable<BoughtLine> Bought(QuoteSource source) =>
        from f in source.Piece.Fittings
        where f.Count > 0
        let material = source.Materials.FirstOrDefault(m => m.Id == f.MaterialId)
        let unit = material?.Unit ?? "piece"
        select material is { PackSize: > 0, PackPrice: > 0 }
            ? new BoughtLine(f.Name, unit, (decimal)f.Count, (decimal)material.PackSize, material.PackPrice) { MaterialId = material.Id }
            : new BoughtLine(f.Name, unit, (decimal)f.Count, null, null, $"{f.Name} has no price. Enter its pack under Stores, or its price here.") { MaterialId = material?.Id };
}
