namespace Studio.Pieces;

/// <summary>
/// A name of one's own in a field that offers what fits: the offers follow the keys by a moment, so that an Enter right after the last key
/// would take the name without its last letter. What was typed counts, not what the list last heard.
/// </summary>
internal sealed class TypedName
{
    private readonly HashSet<string> offered = new(StringComparer.Ordinal);
    private string typed = "";

    /// <summary>Told with every text of the field; the words of an offer that was chosen are nobody's typing.</summary>
    public void Type(string? text)
    {
        if (text is not null && !offered.Contains(text))
        {
            typed = text.Trim();
        }
    }

    /// <summary>Told what the list shows.</summary>
    public void Offer(IEnumerable<string> words)
    {
        offered.Clear();
        offered.UnionWith(words);
    }

    /// <summary>The name that was meant by an offer of the typed words.</summary>
    public string Of(string name) =>
        typed.Length > 1 && (typed.StartsWith(name, StringComparison.Ordinal) || name.StartsWith(typed, StringComparison.Ordinal)) ? typed : name;
}
