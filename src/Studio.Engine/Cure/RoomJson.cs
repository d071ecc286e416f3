using System.Text.Json;
using Studio.Engine.Json;

namespace Studio.Engine.Cure;

/// <summary>Reads the list <c>room</c>, which may be a sensor's of many days.</summary>
internal static class RoomJson
{
    private static readonly string[] Names = ["hours", "celsius"];

    /// <summary>All readings, in the order given.</summary>
    internal static IReadOnlyList<RoomReading> Read(Fields fields) => fields.List("room", Plain, Reading);

    private static RoomReading Reading(Fields fields)
    {
        var reading = new RoomReading(fields.Number("hours"), fields.Number("celsius"));
        fields.NothingElse();
        return reading;
    }

    // the two fields, each once, in the usual order; whatever else it is, is read field by field
    private static RoomReading? Plain(JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        Span<double> read = stackalloc double[Names.Length];
        var at = 0;
        foreach (var property in element.EnumerateObject())
        {
            if (at == Names.Length || !property.NameEquals(Names[at]) || property.Value.ValueKind != JsonValueKind.Number || !property.Value.TryGetDouble(out read[at]) || !double.IsFinite(read[at]))
            {
                return null;
            }

            at++;
        }

        return at == Names.Length ? new(read[0], read[1]) : null;
    }
}
