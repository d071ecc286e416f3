using Studio.Drawing;

namespace Studio.Bench;

/// <summary>The piece in section as the bench shows it: what is poured, what cures, and the layer in hand.</summary>
internal static class BenchSection
{
    internal static SectionView? Of(BenchView sheet, BenchLayer? inHand) =>
        SectionView.For(sheet.Mould, sheet.Layers.Select(l => Layer(sheet, l, inHand)).OfType<SectionLayer>(), sheet.Former, sheet.Stage is not (Pieces.Making.Demoulded or Pieces.Making.Finished or Pieces.Making.Home), sheet.Photographs);

    private static SectionLayer? Layer(BenchView sheet, BenchLayer layer, BenchLayer? inHand)
    {
        var pour = sheet.Pours.LastOrDefault(p => !p.Withdrawn && p.LayerOrder == layer.Order);
        var (from, to) = pour is not null ? (pour.FromMm, pour.ToMm) : (layer.Plan?.FromMm, layer.Plan?.ToMm) is ({ } f, { } t) ? (f, t) : (0, 0);
        return to <= from ? null : new SectionLayer(layer.Name, from, to, pour?.Colour ?? layer.Colour, State(sheet, layer, inHand), Key: layer.Order)
        {
            Scatter = layer.HasScatter,
            Placed = [.. layer.Things.Where(t => t.What == "place").Select(t => t.Name)],
        };
    }

    private static LayerState State(BenchView sheet, BenchLayer layer, BenchLayer? inHand) =>
        layer.Order == inHand?.Order ? LayerState.Now
        : sheet.Times.Layers.FirstOrDefault(l => l.Order == layer.Order) is { } times ? times.Curing ? LayerState.Curing : LayerState.Poured
        : LayerState.Planned;
}
