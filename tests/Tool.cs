namespace Studio.Tests;

/// <summary>
/// Debian's programs that tests use. On a maker's own machine a test is skipped for want of one; under CI it fails.
/// <c>deploy/check</c> installs every program that is asked for here: <c>ToolListTests</c> reads both.
/// </summary>
internal static class Tool
{
    private static readonly string[] Folders = ["/usr/bin", "/usr/sbin", "/usr/local/bin"];

    /// <summary>Where the program lies; null when it is not installed.</summary>
    public static string? Find(string name) => Folders.Select(f => Path.Combine(f, name)).FirstOrDefault(File.Exists);

    /// <summary>Where the program lies; the test is skipped when it is not installed, and fails under CI.</summary>
    public static string Need(string name)
    {
        if (Find(name) is { } path)
        {
            return path;
        }

        var words = $"{name} is not installed: deploy/check installs it.";
        if (Environment.GetEnvironmentVariable("CI") is { Length: > 0 })
        {
            Assert.Fail(words);
        }

        Assert.Skip(words);
        return "";
    }
}
