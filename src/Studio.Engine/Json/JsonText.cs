using System.Text;
using System.Text.Json;

namespace Studio.Engine.Json;

/// <summary>Where JSON breaks, in lines and columns as an editor counts them.</summary>
internal static class Broken
{
    /// <summary>A sentence for the person who wrote the text.</summary>
    public static string At(string text, JsonException broken)
    {
        var line = (int)(broken.LineNumber ?? 0);
        var lines = text.Split('\n');
        var bytes = Encoding.UTF8.GetBytes(line < lines.Length ? lines[line] : "");
        var column = Encoding.UTF8.GetCharCount(bytes, 0, (int)Math.Min(bytes.Length, broken.BytePositionInLine ?? 0));
        return FormattableString.Invariant($"This is not JSON from line {line + 1}, column {column + 1} on. Look for a missing quotation mark, comma or bracket there or just before.");
    }
}

/// <summary>Escapes in JSON may hold half of a character; such texts are no text and come out as null.</summary>
internal static class Unicode
{
    /// <summary>A string's text.</summary>
    public static string? Text(JsonElement value) => Try(value.GetString);

    /// <summary>A field's name.</summary>
    public static string? Name(JsonProperty property) => Try(() => property.Name);

    private static string? Try(Func<string?> read)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
