using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Studio.Engine.Json;

/// <summary>How every calculation writes its answer: camelCase, numbers as invariant shortest decimals, letters as they are, nothing for null.</summary>
internal static class Written
{
    // nobody reads more at once
    private const int MostErrors = 200;

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

    /// <summary>The errors as JSON text, the first of them and how many more there are; a code only where there is one.</summary>
    public static string Errors(IReadOnlyList<InputError> errors) =>
        JsonSerializer.Serialize(new { errors = Shown(errors).Select(e => new { e.Path, e.Message, Code = e.Code.Length > 0 ? e.Code : null }) }, Options);

    private static IEnumerable<InputError> Shown(IReadOnlyList<InputError> errors) => errors.Count <= MostErrors ? errors
        : errors.Take(MostErrors).Append(new("", FormattableString.Invariant($"and {(errors.Count < InputErrors.Most ? "" : "at least ")}{errors.Count - MostErrors} more. Mend these first, then ask again.")));
}
