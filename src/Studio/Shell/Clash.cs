namespace Studio.Shell;

/// <summary>A form that met a newer version of its record: what it began with, what somebody else saved, and what both changed.</summary>
/// <typeparam name="T">The record.</typeparam>
public sealed class Clash<T>(IReadOnlyDictionary<string, string> labels)
    where T : class, Data.IVersioned
{
    private T? basis;
    private T? theirs;

    /// <summary>True from the refused save until a choice is made.</summary>
    public bool Met => theirs is not null;

    public IReadOnlyList<Difference> Both { get; private set; } = [];

    /// <summary>Remembers what a form begins with; <paramref name="copy"/> must be another object than the form's.</summary>
    public void Begin(T? copy) => (basis, theirs, Both) = (copy, null, []);

    /// <summary>Takes the newest version: merges it into the form, and lets the next save through when nothing was changed by both.</summary>
    public void Meet(T form, T newest)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(newest);
        if (Both.Count > 0 && theirs?.Version == newest.Version)
        {
            // the same newer version again, and no choice made yet
            return;
        }

        Both = Difference.Merge(form, basis ?? newest, newest, labels);
        (theirs, basis) = (newest, newest);
        if (Both.Count == 0)
        {
            form.Version = newest.Version;
        }
    }

    /// <summary>What is typed stands; the next save goes over theirs, knowingly.</summary>
    public void KeepMine(T form)
    {
        form.Version = theirs!.Version;
        (theirs, Both) = (null, []);
    }
}
