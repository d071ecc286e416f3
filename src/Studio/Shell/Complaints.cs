using FluentValidation.Results;

namespace Studio.Shell;

/// <summary>
/// What is wrong with a form, by field; every field at once. Once a form was refused it is checked again whenever somebody looks, so that
/// a mended field loses its complaint at the change that mends it and not at the next try to keep it.
/// </summary>
public sealed class Complaints
{
    private Dictionary<string, string> byField = new(StringComparer.Ordinal);
    private Func<Dictionary<string, string>>? again;

    /// <summary>Told when a look finds something else wrong than the one before, or nothing any more.</summary>
    internal event Action? Changed;

    /// <summary>The sentences, in the order of the form.</summary>
    public IEnumerable<string> All => Looked().Values;

    public bool Any => Looked().Count > 0;

    /// <summary>The sentence beside a field; null when it is fine.</summary>
    public string? On(string field) => Looked().GetValueOrDefault(field);

    public void Clear() => (byField, again) = (new(StringComparer.Ordinal), null);

    /// <summary>Checks the form in place of what was said before, and again from then on while something is wrong; true when nothing is.</summary>
    /// <param name="check">Looks at the form as it stands when it is called.</param>
    /// <param name="besides">What the check does not know of: a field and its sentence.</param>
    public bool Take(Func<ValidationResult> check, Func<IEnumerable<KeyValuePair<string, string>>>? besides = null)
    {
        ArgumentNullException.ThrowIfNull(check);
        byField = Found(check, besides);
        again = byField.Count > 0 ? () => Found(check, besides) : null;
        return byField.Count == 0;
    }

    private static Dictionary<string, string> Found(Func<ValidationResult> check, Func<IEnumerable<KeyValuePair<string, string>>>? besides)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (field, words) in check().Errors.Select(e => KeyValuePair.Create(e.PropertyName, e.ErrorMessage)).Concat(besides?.Invoke() ?? []))
        {
            found.TryAdd(field, words);
        }

        return found;
    }

    private Dictionary<string, string> Looked()
    {
        if (again is not null)
        {
            var (before, now) = (byField, again());
            byField = now;
            if (!before.SequenceEqual(now))
            {
                Changed?.Invoke();
            }
        }

        return byField;
    }
}
