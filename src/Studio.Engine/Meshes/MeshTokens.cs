using System.Globalization;
using System.Text;

namespace Studio.Engine.Meshes;

/// <summary>Words of an ASCII file, with the line they stand on. A word ends at a space or control character; nothing is copied.</summary>
internal ref struct MeshTokens(ReadOnlySpan<byte> text)
{
    private readonly ReadOnlySpan<byte> text = text;
    private int at;

    /// <summary>Line of the last word, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>The last word; empty at the end.</summary>
    public ReadOnlySpan<byte> Word { get; private set; }

    /// <summary>The last word for a message, cut short and printable.</summary>
    public readonly string Shown
    {
        get
        {
            var shown = Encoding.Latin1.GetString(Word.Length > 20 ? Word[..20] : Word);
            return new string([.. shown.Select(c => c is >= ' ' and <= '~' ? c : '?')]) + (Word.Length > 20 ? "…" : "");
        }
    }

    /// <summary>Goes to the next word, over line ends if need be.</summary>
    /// <returns>False at the end.</returns>
    public bool Next() => Skip(overLines: true) && Take();

    /// <summary>Goes to the next word of the same line.</summary>
    public bool NextInLine() => Skip(overLines: false) && Take();

    /// <summary>Leaves the rest of the line unread.</summary>
    public void RestOfLine()
    {
        var end = text[at..].IndexOfAny((byte)'\n', (byte)'\r');
        at = end < 0 ? text.Length : at + end;
    }

    /// <summary>The last word is this one, whatever its case.</summary>
    public readonly bool Is(ReadOnlySpan<byte> word) => Ascii.EqualsIgnoreCase(Word, word);

    /// <summary>The last word as a finite number, point as decimal mark whatever the system's language.</summary>
    public readonly bool Number(out double value) =>
        double.TryParse(Word, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private bool Take()
    {
        var start = at;
        while (at < text.Length && text[at] > ' ')
        {
            at++;
        }

        Word = text[start..at];
        return true;
    }

    // a line ends with LF, CRLF or, from very old systems, CR alone
    private bool Skip(bool overLines)
    {
        while (at < text.Length && text[at] <= ' ')
        {
            var ends = text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n'));
            if ((text[at] is (byte)'\n' or (byte)'\r') && !overLines)
            {
                Word = default;
                return false;
            }

            Line += ends ? 1 : 0;
            at++;
        }

        if (at < text.Length)
        {
            return true;
        }

        Word = default;
        return false;
    }
}
