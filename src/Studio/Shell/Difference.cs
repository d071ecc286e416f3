using System.Globalization;
using System.Reflection;

namespace Studio.Shell;

/// <summary>One field that two people changed, each in their own way.</summary>
public sealed record Difference(string Field, string Yours, string Theirs)
{
    /// <summary>
    /// Brings what somebody else saved meanwhile into a form: a field that only they changed becomes theirs, a field that only this form changed stays,
    /// and the fields that both changed are left as typed and told.
    /// </summary>
    /// <param name="yours">What the form holds; changed in place.</param>
    /// <param name="basis">What the form began with.</param>
    /// <param name="theirs">The newest version.</param>
    /// <param name="labels">The fields that count: property to label.</param>
    public static IReadOnlyList<Difference> Merge<T>(T yours, T basis, T theirs, IReadOnlyDictionary<string, string> labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        var both = new List<Difference>();
        foreach (var (name, label) in labels)
        {
            var property = typeof(T).GetProperty(name)!;
            string mine = Text(property, yours), began = Text(property, basis), other = Text(property, theirs);
            if (string.Equals(mine, began, StringComparison.Ordinal))
            {
                property.SetValue(yours, property.GetValue(theirs));
            }
            else if (!string.Equals(other, began, StringComparison.Ordinal) && !string.Equals(mine, other, StringComparison.Ordinal))
            {
                both.Add(new Difference(label, mine, other));
            }
        }

        return both;
    }

    private static string Text<T>(PropertyInfo property, T record) => property.GetValue(record) switch
    {
        null => "",
        string s => s,
        DateOnly day => day.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")),
        IEnumerable<DateOnly> days => string.Join(", ", days.Select(d => d.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")))),
        IEnumerable<string> list => string.Join(", ", list),
        var other => Convert.ToString(other, CultureInfo.InvariantCulture) ?? "",
    };
}
