namespace Studio.Shell;

/// <summary>
/// Gathers the number fields of one form whose text cannot be read, so that a save never keeps an old number behind a new text.
/// A form cascades one (<c>&lt;CascadingValue Value="unread"&gt;</c>) and asks it before saving.
/// </summary>
public sealed class UnreadNumbers
{
    private readonly Dictionary<NumberField, string> fields = [];

    /// <summary>True when some field holds text that is not a usable number.</summary>
    public bool Any => fields.Count > 0;

    /// <summary>Their labels, in the order they went wrong.</summary>
    public IReadOnlyList<string> Labels => [.. fields.Values];

    internal void Note(NumberField field, bool unread)
    {
        if (unread)
        {
            fields[field] = field.Label;
        }
        else
        {
            fields.Remove(field);
        }
    }
}
