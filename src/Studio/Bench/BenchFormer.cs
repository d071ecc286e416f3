using Studio.Engine.Layers;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>Names the box for lights in the layers that it stands in: where, how level, and what holds it down against its own float.</summary>
internal static class BenchFormer
{
    internal static IEnumerable<BenchThing> Of(LayerAsk ask)
    {
        if (ask.Piece.Former is not { } box || ask.Level is not { } level || !ask.Holds(box.FromMm, double.MaxValue))
        {
            yield break;
        }

        var size = $"{Say.Length(box.OuterWidthMm, ask.Units)} × {Say.Length(box.OuterDepthMm, ask.Units)}";
        var from = Say.Length(box.FromMm, ask.Units);
        if (!ask.Begins(box.FromMm))
        {
            yield return new BenchThing("former", "The box for the lights", "stands in it already") { Notes = [$"{size}, from {from} up. Look that it is still upright; this layer rises around it."] };
            yield break;
        }

        List<string> notes =
        [
            $"Stand it in the middle, its floor {from} above the lowest point, level both ways, before this layer is poured.",
            box.Solid ? "It is a solid plug: coat it so that it lets go of the resin." : box.FloorMm is { } floor && floor < level.ToMm ? $"It is hollow: resin stands in it up to {Say.Length(floor, ask.Units)}." : "It is hollow: close it below, or resin runs in.",
        ];
        if (LiftG(ask, level) is { } lift)
        {
            notes.Add($"It floats: hold it down with at least {Say.Grams(lift)}, less what it weighs itself, until this layer has gelled.");
        }

        yield return new BenchThing("former", "The box for the lights", size) { Notes = notes };
    }

    // Archimedes: what the box keeps out of this layer, weighed as resin; layers below have set and hold it
    private static double? LiftG(LayerAsk ask, LayerResult level)
    {
        var bare = LayersCalculation.Run(PieceBook.Design(ask.Piece) with { Former = null });
        return bare.Ok && level.ResinMl > 0 && bare.Value.Layers.ElementAtOrDefault(ask.Layer.Order) is { } without && Math.Abs(without.ToMm - level.ToMm) < 1e-6
            ? (level.DisplacedMl - without.DisplacedMl) * level.ResinG / level.ResinMl
            : null;
    }
}
