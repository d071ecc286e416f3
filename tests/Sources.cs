namespace Studio.Tests;

/// <summary>The project's own text, for tests that read it.</summary>
internal static class Sources
{
    private static readonly string[] Made = ["obj", "bin", "Migrations"];

    public static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Studio.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("Studio.sln lies in no folder above the tests.");
    }

    /// <summary>C# files of the tests.</summary>
    public static IEnumerable<(string Path, string Text)> Tests() => Under("tests", "*.cs");

    /// <summary>Files of the program.</summary>
    public static IEnumerable<(string Path, string Text)> Program(string pattern) => Under("src", pattern);

    private static IEnumerable<(string Path, string Text)> Under(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root(), folder), pattern, SearchOption.AllDirectories)
            .Where(f => !Path.GetRelativePath(Root(), f).Split(Path.DirectorySeparatorChar).Any(p => Made.Contains(p, StringComparer.Ordinal)))
            .Select(f => (Path.GetRelativePath(Root(), f), File.ReadAllText(f)));
}
