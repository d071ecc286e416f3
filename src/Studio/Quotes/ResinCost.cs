using Studio.Resins;

namespace Studio.Quotes;

/// <summary>Resin as it is mixed, waste and cup residue included, from the pack that suits it best.</summary>
public sealed class ResinCost : ICostLine
{
    public const string Key = "resin";

    public string Kind => Key;

    public string Label => "Resin";

    public IEnumerable<BoughtLine> Bought(QuoteSource source) =>
        source.Piece.Layers.OrderBy(l => l.Order)
            .Zip(source.Grams.Layers, (layer, grams) => (layer.Resin, grams.MixG))
            .Where(x => x.Resin is not null && x.MixG > 0)
            .GroupBy(x => x.Resin!.Id)
            .Select(g => Line(g.First().Resin!, (decimal)g.Sum(x => x.MixG)));

    private static BoughtLine Line(Resin resin, decimal grams) => Pack(resin, grams) is { } pack
        ? new(resin.Name, "g", decimal.Round(grams, 1, MidpointRounding.AwayFromZero), (decimal)pack.SizeG, pack.Price) { ResinId = resin.Id }
        : new(resin.Name, "g", decimal.Round(grams, 1, MidpointRounding.AwayFromZero), null, null, $"{resin.Name} has no price. Enter a pack's size and price with it, under Stores.") { ResinId = resin.Id };

    // the smallest outlay that covers the piece: one pack that holds enough, else the pack with the best price by the gram
    private static ResinPack? Pack(Resin resin, decimal grams)
    {
        var priced = resin.Packs.Where(p => p is { SizeG: > 0, Price: > 0 }).ToList();
        return priced.Where(p => (decimal)p.SizeG >= grams).MinBy(p => p.Price) ?? priced.MinBy(p => p.Price / (decimal)p.SizeG);
    }
}
