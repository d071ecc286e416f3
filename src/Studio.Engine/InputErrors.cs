using System.Globalization;

namespace Studio.Engine;

/// <summary>Gathers everything that is wrong with an input, so that a person sees it all at once.</summary>
public sealed class InputErrors
{
    /// <summary>So many errors are kept, each once; beyond them nothing is added. A person mends the first and asks again.</summary>
    public const int Most = 100_000;

    private readonly List<InputError> errors = [];
    private readonly HashSet<string> complained = new(StringComparer.Ordinal);
    private readonly HashSet<string> holders = new(StringComparer.Ordinal);
    private readonly HashSet<string> settled = new(StringComparer.Ordinal);

    /// <summary>All errors so far, in the order found.</summary>
    public IReadOnlyList<InputError> All => errors;

    /// <summary>True when nothing was found.</summary>
    public bool None => errors.Count == 0;

    private bool Full => errors.Count == Most;

    /// <summary>True when nothing was found at a field or inside it. With too many errors to keep, no field is taken for clean.</summary>
    public bool Clean(string path) => !holders.Contains(path) && !Full;

    /// <summary>Everything reported up to now is settled: later checks say nothing more about these fields or what lies inside them.</summary>
    public void Settle() => settled.UnionWith(complained);

    /// <summary>Adds an error, unless this field has one already or the field or one that holds it is settled.</summary>
    /// <param name="code">For those who must tell this error from another.</param>
    public void Add(string path, string message, string code = "")
    {
        if (!Full && !complained.Contains(path) && !(settled.Count > 0 && Holders(path).Any(settled.Contains)))
        {
            complained.Add(path);
            holders.UnionWith(Holders(path));
            errors.Add(new InputError(path, message, code));
        }
    }

    /// <summary>Adds an error unless the number is finite, above zero and at most <paramref name="max"/>.</summary>
    /// <returns>True when the number can be used.</returns>
    public bool Positive(string path, double? value, double max, string unit) =>
        value is null || Check(value > 0 && value <= max, path, Above(max.ToString("R", CultureInfo.InvariantCulture), unit, Shown(value.Value)));

    /// <summary>Adds an error unless the number is finite, at least <paramref name="min"/> and at most <paramref name="max"/>.</summary>
    /// <returns>True when the number can be used.</returns>
    public bool Within(string path, double? value, double min, double max, string unit) =>
        value is null || Check(value >= min && value <= max, path, FormattableString.Invariant($"Must be between {min} and {Unit(max.ToString("R", CultureInfo.InvariantCulture), unit)}; {Shown(value.Value)}."));

    /// <summary>Adds an error unless the number is above zero and at most <paramref name="max"/>.</summary>
    public bool Positive(string path, decimal value, decimal max, string unit) =>
        Check(value > 0 && value <= max, path, Above(max.ToString(CultureInfo.InvariantCulture), unit, Shown(value)));

    /// <summary>Adds an error unless the number is at least <paramref name="min"/> and at most <paramref name="max"/>.</summary>
    public bool Within(string path, decimal value, decimal min, decimal max, string unit) =>
        Check(value >= min && value <= max, path, FormattableString.Invariant($"Must be between {min} and {Unit(max.ToString(CultureInfo.InvariantCulture), unit)}; {Shown(value)}."));

    /// <summary>Adds an error unless the text says something.</summary>
    public bool Named(string path, string text) => Check(!string.IsNullOrWhiteSpace(text), path, "Must not be empty; give it a name.");

    // "", "layers", "layers[1]" and "layers[1].toMm" for the last of them: whoever asks looks these few up, however many errors there are
    private static IEnumerable<string> Holders(string path)
    {
        yield return "";
        for (var end = 1; end < path.Length; end++)
        {
            if (path[end] is '.' or '[')
            {
                yield return path[..end];
            }
        }

        yield return path;
    }

    private static string Above(string max, string unit, string shown) => $"Must be above zero and at most {Unit(max, unit)}; {shown}.";

    private static string Unit(string number, string unit) => unit.Length == 0 ? number : number + " " + unit;

    private static string Shown(double value) =>
        double.IsNaN(value) ? "there is no number" : string.Create(CultureInfo.InvariantCulture, $"{value} was given");

    private static string Shown(decimal value) => string.Create(CultureInfo.InvariantCulture, $"{value} was given");

    private bool Check(bool good, string path, string message)
    {
        if (!good)
        {
            Add(path, message);
        }

        return good;
    }
}
