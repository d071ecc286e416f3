using System.Globalization;

namespace Studio.Shell;

/// <summary>One field in which two versions of a record differ.</summary>
public sealed record Difference(string Field, string Yours, string Theirs)
{
    /// <summary>The fields named in <paramref name="labels"/> (property to label) in which the two differ, in that order.</summary>
    public static IReadOnlyList<Difference> Between<T>(T yours, T theirs, IReadOnlyDictionary<string, string> labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        return
        [
            .. labels.Select(l => new Difference(l.Value, Text(yours, l.Key), Text(theirs, l.Key))).Where(d => !string.Equals(d.Yours, d.Theirs, StringComparison.Ordinal)),
        ];
    }

    private static string Text<T>(T record, string property) => typeof(T).GetProperty(property)!.GetValue(record) switch
    {
        null => "",
        string s => s,
        DateOnly day => day.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")),
        IEnumerable<string> list => string.Join(", ", list),
        var other => Convert.ToString(other, CultureInfo.InvariantCulture) ?? "",
    };
}
