using Studio.Engine.Price;

namespace Studio.Quotes;

/// <summary>Hand work as the design lists it.</summary>
public sealed class HandCost : ICostLine
{
    public const string Key = "hand";

    public string Kind => Key;

    public string Label => "Work by hand";

    public IEnumerable<LabourLine> Labour(QuoteSource source) =>
        source.Piece.Tasks.Where(t => t.Minutes > 0).Select(t => new LabourLine(t.Name, (decimal)t.Minutes, source.Settings.LabourRatePerHour));
}
