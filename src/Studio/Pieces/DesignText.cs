using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Studio.Resins;

namespace Studio.Pieces;

/// <summary>What a maker designs of a piece, as text: for drafts, for undo, and to see whether two designs are the same.</summary>
public static class DesignText
{
    // what the bench and the clock write is no part of the design, and neither are whole other records
    private static readonly HashSet<string> LeftOut = new(StringComparer.Ordinal)
    {
        nameof(Piece.Commission), nameof(Piece.Mould), nameof(PieceLayer.Resin), nameof(Piece.Version), nameof(Piece.Stage), nameof(Piece.ClockSaid),
        nameof(Piece.ClockSaidAt), nameof(Piece.DemouldedAt), nameof(Piece.FinishedAt), nameof(Piece.CreatedAt), nameof(PieceLayer.PieceId),
    };

    private static readonly JsonSerializerOptions Options = new()
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { Trim } },
    };

    /// <summary>The design as text.</summary>
    public static string Write(Piece piece) => JsonSerializer.Serialize(piece, Options);

    /// <summary>Lays a design from text over a piece; what is not designed stays. False, and nothing changed, when the text is no design of this piece.</summary>
    public static bool Lay(string text, Piece over, IEnumerable<Moulds.Mould> moulds, IEnumerable<Resin> resins)
    {
        Piece? read;
        try
        {
            read = JsonSerializer.Deserialize<Piece>(text, Options);
        }
        catch (JsonException)
        {
            return false;
        }

        if (read is null || read.Id != over.Id)
        {
            return false;
        }

        (over.Name, over.Former, over.Fittings, over.Tasks, over.Notes) = (read.Name, read.Former, read.Fittings, read.Tasks, read.Notes);
        (over.Sheets, over.Parts) = (read.Sheets, read.Parts);
        (over.RoomPlan, over.StandsIn, over.PotId) = (read.RoomPlan, read.StandsIn, read.PotId);
        (over.WastePercent, over.WastePerBatchG, over.Layers) = (read.WastePercent, read.WastePerBatchG, [.. read.Layers.OrderBy(l => l.Order)]);
        if (moulds.FirstOrDefault(m => m.Id == read.MouldId) is { } mould)
        {
            (over.MouldId, over.Mould) = (mould.Id, mould);
        }

        foreach (var layer in over.Layers)
        {
            layer.Resin = resins.FirstOrDefault(r => r.Id == layer.ResinId);
        }

        return true;
    }

    private static void Trim(JsonTypeInfo type)
    {
        if (type.Type == typeof(Piece) || type.Type == typeof(PieceLayer))
        {
            foreach (var property in type.Properties.Where(p => LeftOut.Contains(p.Name)).ToList())
            {
                type.Properties.Remove(property);
            }
        }
    }
}
