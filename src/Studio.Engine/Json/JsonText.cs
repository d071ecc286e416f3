using System.Text.Json;

namespace Studio.Engine.Json;

/// <summary>Where JSON breaks, in lines and columns as an editor counts them.</summary>
internal static class Broken
{
    /// <summary>Brackets within brackets; no calculation needs ten.</summary>
    public const int Deepest = 64;

    /// <summary>A sentence for the person who wrote the text.</summary>
    public static string At(string text, JsonException broken)
    {
        var line = broken.LineNumber ?? 0;
        var start = 0;
        for (var i = 0L; i < line && text.IndexOf('\n', start) is >= 0 and var end; i++)
        {
            start = end + 1;
        }

        var column = Characters(text.AsSpan(start), broken.BytePositionInLine ?? 0);
        return TooDeep(text)
            ? FormattableString.Invariant($"There are more than {Deepest} brackets within brackets; no calculation needs that. Look at line {line + 1}, column {column + 1}.")
            : FormattableString.Invariant($"This is not JSON from line {line + 1}, column {column + 1} on. Look for a missing quotation mark, comma or bracket there or just before.");
    }

    // as many characters as make so many bytes of UTF-8
    private static int Characters(ReadOnlySpan<char> rest, long bytes)
    {
        var at = 0;
        foreach (var rune in rest.EnumerateRunes())
        {
            bytes -= rune.Utf8SequenceLength;
            if (bytes < 0)
            {
                break;
            }

            at += rune.Utf16SequenceLength;
        }

        return at;
    }

    // only asked of a text that could not be read; brackets inside quotation marks are none
    private static bool TooDeep(string text)
    {
        var (depth, quoted) = (0, false);
        for (var i = 0; i < text.Length; i++)
        {
            switch (text[i])
            {
                case '\\' when quoted:
                    i++;
                    break;
                case '"':
                    quoted = !quoted;
                    break;
                case '{' or '[' when !quoted && ++depth > Deepest:
                    return true;
                case '}' or ']' when !quoted:
                    depth--;
                    break;
            }
        }

        return false;
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
