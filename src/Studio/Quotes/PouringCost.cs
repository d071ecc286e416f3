using Studio.Engine.Price;

namespace Studio.Quotes;

/// <summary>Weighing, stirring and pouring, where no work of the design is that: 15 minutes a layer and 5 a cup (common practice, no source).</summary>
public sealed class PouringCost : ICostLine
{
    private const int MinutesALayer = 15;
    private const int MinutesACup = 5;

    public string Kind => "pouring";

    public string Label => "Pouring";

    public IEnumerable<LabourLine> Labour(QuoteSource source)
    {
        var layers = source.Grams.Layers.Where(l => l.Batches.Count > 0).ToList();
        return layers.Count == 0 || source.Piece.Tasks.Any(t => t.Pours == true)
            ? []
            : [new LabourLine($"Weigh, stir and pour {layers.Count} layers", (layers.Count * MinutesALayer) + (layers.Sum(l => l.Batches.Count) * MinutesACup), source.Settings.LabourRatePerHour)];
    }
}
