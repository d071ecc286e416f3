using FluentValidation.Results;

namespace Studio.Shell;

/// <summary>What is wrong with a form, by field; every field at once.</summary>
public sealed class Complaints
{
    private readonly Dictionary<string, string> byField = new(StringComparer.Ordinal);

    /// <summary>The sentences, in the order of the form.</summary>
    public IEnumerable<string> All => byField.Values;

    public bool Any => byField.Count > 0;

    /// <summary>The sentence beside a field; null when it is fine.</summary>
    public string? On(string field) => byField.GetValueOrDefault(field);

    /// <summary>Says something about one field.</summary>
    public void Add(string field, string words) => byField.TryAdd(field, words);

    public void Clear() => byField.Clear();

    /// <summary>Takes a check's outcome in place of what was said before; true when nothing is wrong.</summary>
    public bool Take(ValidationResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        Clear();
        foreach (var failure in result.Errors)
        {
            Add(failure.PropertyName, failure.ErrorMessage);
        }

        return !Any;
    }
}
