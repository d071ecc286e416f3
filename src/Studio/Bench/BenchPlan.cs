using Studio.Engine;
using Studio.Engine.Layers;
using Studio.Pieces;

namespace Studio.Bench;

/// <summary>A piece's design as the engine wants it. The piece must come with mould, layers and their resins.</summary>
internal static class BenchPlan
{
    /// <summary>Heights, grams and batches of every layer, or what is wrong with the design.</summary>
    internal static Outcome<LayersResult> Of(Piece piece) => LayersCalculation.Run(new LayersInput
    {
        Mould = piece.Mould!.Spec,
        Former = piece.Former,
        Waste = new WasteSpec { Percent = piece.WastePercent, PerBatchG = piece.WastePerBatchG },
        Resins = piece.Layers.Select(l => l.Resin!).DistinctBy(r => r.Id).ToDictionary(r => Key(r.Id), r => r.Spec, StringComparer.Ordinal),
        Layers = [.. piece.Layers.OrderBy(l => l.Order).Select(Layer)],
    });

    private static LayerSpec Layer(PieceLayer l) => new()
    {
        Name = l.Name,
        Resin = Key(l.ResinId),
        ToMm = l.ToMm,
        ThicknessMm = l.ThicknessMm,
        ResinMl = l.ResinMl,
        Additions = [.. l.Additions.Select(a => new AdditionSpec { Name = a.Name, PercentOfResin = a.PercentOfResin, DensityGPerMl = a.DensityGPerMl })],
        Scatter = [.. l.Scatter.Select(s => new ScatterSpec { Name = s.Name, MassG = s.MassG, DensityGPerMl = s.DensityGPerMl, BulkMl = s.BulkMl, PackingFraction = s.PackingFraction })],
        Placed = [.. l.Placed.Select(p => new PlacedSpec { Name = p.Name, MassG = p.MassG, DensityGPerMl = p.DensityGPerMl, DisplacedMl = p.DisplacedMl })],
    };

    private static string Key(int resinId) => resinId.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
