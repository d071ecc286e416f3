using System.Diagnostics;
using System.Globalization;

namespace Studio.Tests.Papers;

/// <summary>Debian's qpdf and pdftoppm on a paper's bytes.</summary>
internal static class PaperTools
{
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
        var start = new ProcessStartInfo(Tool.Need(tool)) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
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
}
