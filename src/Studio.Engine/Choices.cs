namespace Studio.Engine;

/// <summary>What there is to choose from, for a message.</summary>
internal static class Choices
{
    private const int Most = 20;
    private const int Longest = 60;

    /// <summary>"clear, white", the first few where there are many, so that a message about each of them stays short.</summary>
    public static string Few(IEnumerable<string> names)
    {
        var first = names.Take(Most + 1).ToList();
        return string.Join(", ", first.Take(Most).Select(Short)) + (first.Count > Most ? " and more" : "");
    }

    /// <summary>A name that somebody gave, cut where it is very long.</summary>
    public static string Short(string name) => name.Length <= Longest ? name : name[..(char.IsHighSurrogate(name[Longest - 1]) ? Longest - 1 : Longest)] + "…";
}
