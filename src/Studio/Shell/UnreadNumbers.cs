namespace Studio.Shell;

/// <summary>A field whose text has to be read before it is a value: a number, a time of day, a moment.</summary>
internal interface IReadField
{
    /// <summary>As it stands over the field.</summary>
    string Name { get; }

    /// <summary>What stands in it.</summary>
    string Typed { get; }

    /// <summary>Why that cannot be used; null when it can.</summary>
    string? Complaint { get; }

    /// <summary>Lets go of what cannot be read and shows the value again.</summary>
    void PutBack();
}

/// <summary>
/// Gathers the fields of one form whose text cannot be read, so that a save never keeps an old number behind a new text.
/// A <see cref="KeptForm"/> has one of its own; any other host cascades one with <see cref="KeptNumbers"/> and asks it wherever it keeps.
/// </summary>
/// <param name="outer">The form that this one is a part of, such as a layer's of its piece; what cannot be read here cannot be read there.</param>
public sealed class UnreadNumbers(UnreadNumbers? outer = null)
{
    private readonly List<IReadField> unread = [];
    private bool asked;

    /// <summary>Told when a field becomes unreadable, readable, or is asked for.</summary>
    internal event Action? Changed;

    /// <summary>True when some field holds text that is not a usable number.</summary>
    public bool Any => unread.Count > 0;

    /// <summary>Their labels, in the order they went wrong.</summary>
    public IReadOnlyList<string> Labels => [.. unread.Select(f => f.Name)];

    /// <summary>What stands in which field, and what to type: one sentence or two for each.</summary>
    public IReadOnlyList<string> Sentences => [.. unread.Select(Sentence)];

    /// <summary>Why nothing was kept when somebody wanted to; empty once everything is mended.</summary>
    public string Refused => asked && Any ? "Nothing was kept yet. " + string.Join(" ", Sentences) : "";

    /// <summary>Asked before anything is kept: true when a field cannot be read, and then the form says which from now on.</summary>
    public bool Refuse()
    {
        asked = Any;
        Changed?.Invoke();
        return asked;
    }

    /// <summary>Every field lets go of what cannot be read and shows its value again: for "put back what is saved" and for undo.</summary>
    public void PutBack()
    {
        foreach (var field in unread.ToList())
        {
            field.PutBack();
        }
    }

    /// <summary>A field refuses to stand where nothing gathers what cannot be read.</summary>
    /// <exception cref="InvalidOperationException">There is no gatherer.</exception>
    internal static void Need(UnreadNumbers? gatherer, string label) => _ = gatherer
        ?? throw new InvalidOperationException($"“{label}” stands where nothing gathers what cannot be read, so nothing would stop a save. Put it into a {nameof(KeptForm)} or into {nameof(KeptNumbers)}.");

    /// <summary>A field tells how it stands, or that it is gone.</summary>
    internal void Note(IReadField field, bool readable)
    {
        var known = unread.Remove(field);
        if (!readable)
        {
            unread.Add(field);
        }

        asked = asked && Any;
        outer?.Note(field, readable);
        if (known || !readable)
        {
            Changed?.Invoke();
        }
    }

    // most complaints quote what was typed; those of a range do not
    private static string Sentence(IReadField field) =>
        field.Complaint!.StartsWith('“') ? $"{field.Name}: {field.Complaint}"
        : field.Typed.Length == 0 ? $"{field.Name}: nothing stands there. {field.Complaint}"
        : $"{field.Name}: “{field.Typed}” stands there. {field.Complaint}";
}
