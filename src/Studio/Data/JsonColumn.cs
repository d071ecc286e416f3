using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Studio.Data;

/// <summary>Keeps a small list or record as JSON text in one column: open lists stay out of the schema.</summary>
public static class JsonColumn
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    /// <summary>Stores the property as JSON and compares it by that JSON.</summary>
    public static PropertyBuilder<T> AsJson<T>(this PropertyBuilder<T> property) =>
        property.HasConversion(
            v => Write(v),
            s => Read<T>(s)!,
            new ValueComparer<T>((a, b) => Write(a) == Write(b), v => StringComparer.Ordinal.GetHashCode(Write(v)), v => Read<T>(Write(v))!));

    /// <summary>The JSON text of a value.</summary>
    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    /// <summary>A value from its JSON text; null for empty text.</summary>
    public static T? Read<T>(string? json) => string.IsNullOrEmpty(json) ? default : JsonSerializer.Deserialize<T>(json, Options);
}
