using System.Diagnostics;
using System.Globalization;

namespace Studio.Tests.Papers;

/// <summary>Debian's qpdf and pdftoppm. On a maker's own machine a test may be skipped for want of them; under CI it fails.</summary>
internal static class PaperTools
{
    public static void Need(string tool)
    {
        if (Find(tool) is not null)
        {
            return;
        }

        var ci = string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase);
        ci.ShouldBeFalse($"{tool} is missing: deploy/check installs poppler-utils and qpdf");
        Assert.Skip($"{tool} is not installed here");
    }

    /// <summary>Runs <c>qpdf --check</c>; its exit code and all it printed.</summary>
    public static (int Code, string Output) QpdfCheck(byte[] pdf) => WithFile(pdf, path => Run("qpdf", "--check", path));

    /// <summary>The pages as PNG files' bytes.</summary>
    public static IReadOnlyList<byte[]> Pages(byte[] pdf, int dpi) => WithFile(pdf, path =>
    {
        var (code, output) = Run("pdftoppm", "-r", dpi.ToString(CultureInfo.InvariantCulture), "-png", path, path + "-page");
        code.ShouldBe(0, output);
        return Directory.GetFiles(Path.GetDirectoryName(path)!, "*.png").Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToList();
    });

    private static T WithFile<T>(byte[] pdf, Func<string, T> use)
    {
        var folder = Directory.CreateTempSubdirectory("papers");
        try
        {
            var path = Path.Combine(folder.FullName, "paper.pdf");
            File.WriteAllBytes(path, pdf);
            return use(path);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int Code, string Output) Run(string tool, params string[] arguments)
    {
        var start = new ProcessStartInfo(Find(tool)!) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd() + error.GetAwaiter().GetResult();
        process.WaitForExit();
        return (process.ExitCode, output);
    }

    private static string? Find(string tool) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator).Select(folder => Path.Combine(folder, tool)).FirstOrDefault(File.Exists);
}
