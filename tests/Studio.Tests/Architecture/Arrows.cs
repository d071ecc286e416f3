using System.Text.RegularExpressions;
using ArchUnitNET.Domain;

namespace Studio.Tests.Architecture;

/// <summary>docs/arrows.puml read as rules: which folder may know which.</summary>
internal sealed partial class Arrows
{
    private static readonly string[] Ground = ["Studio.Data", "Studio.Papers", "Studio.Settings", "Studio.SignIn", "Studio.Shell", "Studio.Drawing"];
    private static readonly string[] Edges = ["Studio.Commands", "Studio.Demo"];

    private readonly HashSet<string> folders = new(StringComparer.Ordinal);
    private readonly HashSet<(string From, string To)> drawn = [];

    public Arrows(string puml)
    {
        foreach (var line in puml.Split('\n').Where(l => !l.TrimStart().StartsWith('\'')))
        {
            var names = Box().Matches(line).Select(m => m.Groups["name"].Value).ToArray();
            folders.UnionWith(names);
            if (names.Length == 2 && line.Contains("-->", StringComparison.Ordinal))
            {
                drawn.Add((names[0], names[1]));
            }
        }
    }

    public IReadOnlyCollection<string> Folders => folders;

    public Arrows Without(string from, string to)
    {
        var fewer = new Arrows("");
        fewer.folders.UnionWith(folders);
        fewer.drawn.UnionWith(drawn.Where(a => a != (from, to)));
        return fewer;
    }

    /// <summary>Every dependency between two folders that no arrow allows, as a sentence.</summary>
    public IReadOnlyList<string> Broken(IEnumerable<IType> types) =>
        [.. types
            .Select(t => (Type: t, Folder: Folder(t.Namespace?.FullName)))
            .Where(t => t.Folder is not null)
            .SelectMany(t => t.Type.Dependencies.Select(d => (From: t.Folder!, To: Folder(d.Target.Namespace?.FullName), Words: $"{t.Type.FullName} knows {d.Target.FullName}")))
            .Where(d => d.To is not null && d.To != d.From && !Allowed(d.From, d.To) && !d.Words.Contains("::", StringComparison.Ordinal)) // a type parameter is nobody's
            .Select(d => $"{d.From} --> {d.To}: {d.Words}")
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)];

    /// <summary>Arrows that no code uses any more.</summary>
    public IReadOnlyList<string> Stale(IEnumerable<IType> types)
    {
        var used = types
            .Select(t => (Type: t, Folder: Folder(t.Namespace?.FullName)))
            .Where(t => t.Folder is not null)
            .SelectMany(t => t.Type.Dependencies.Select(d => (From: t.Folder!, To: Folder(d.Target.Namespace?.FullName))))
            .ToHashSet();
        return [.. drawn.Where(a => !used.Contains((a.From, a.To))).Select(a => $"{a.From} --> {a.To}").Order(StringComparer.Ordinal)];
    }

    /// <summary>Folders that can reach themselves along the arrows.</summary>
    public IReadOnlyList<string> Cycles() => [.. folders.Where(f => Reached(f).Contains(f)).Order(StringComparer.Ordinal)];

    private HashSet<string> Reached(string from)
    {
        var (seen, next) = (new HashSet<string>(StringComparer.Ordinal), new Stack<string>([from]));
        while (next.TryPop(out var at))
        {
            foreach (var to in drawn.Where(a => a.From == at).Select(a => a.To).Where(seen.Add))
            {
                next.Push(to);
            }
        }

        return seen;
    }

    private bool Allowed(string from, string to)
    {
        var fromEngine = from.StartsWith("Studio.Engine", StringComparison.Ordinal);
        var toEngine = to.StartsWith("Studio.Engine", StringComparison.Ordinal);
        if (drawn.Contains((from, to)))
        {
            return true;
        }

        // the app may know the engine, never the other way round; edges may know everything; rooms stand on the ground
        return !fromEngine && (toEngine || Edges.Contains(from) || (Ground.Contains(to) && !Ground.Contains(from)));
    }

    // "Studio.Engine.Moulds.Meshes" belongs to Studio.Engine.Moulds, "Studio.Data.Files" to Studio.Data; the engine's own root is open
    private static string? Folder(string? ns)
    {
        if (ns is null || !ns.StartsWith("Studio.", StringComparison.Ordinal) || ns == "Studio.Engine" || ns.StartsWith("Studio.Tests", StringComparison.Ordinal))
        {
            return null;
        }

        var parts = ns.Split('.');
        return string.Join('.', parts.Take(parts[1] == "Engine" ? 3 : 2));
    }

    [GeneratedRegex(@"\[(?<name>Studio[\w.]+)\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Box();
}
