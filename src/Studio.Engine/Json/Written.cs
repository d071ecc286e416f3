using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Studio.Engine.Json;

/// <summary>How every calculation writes its answer: camelCase, numbers as invariant shortest decimals, letters as they are, nothing for null.</summary>
internal static class Written
{
    /// <summary>Options for results and errors alike.</summary>
    public static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
    };

    /// <summary>A result as JSON text.</summary>
    public static string Text<T>(T result) => JsonSerializer.Serialize(result, Options);

    /// <summary>All errors as JSON text; a code only where there is one.</summary>
    public static string Errors(IReadOnlyList<InputError> errors) =>
        JsonSerializer.Serialize(new { errors = errors.Select(e => new { e.Path, e.Message, Code = e.Code.Length > 0 ? e.Code : null }) }, Options);
}
