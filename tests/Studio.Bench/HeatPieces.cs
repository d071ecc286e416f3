using System.Diagnostics;

namespace Studio.Bench.Tools;

/// <summary>Random pieces of every shape: `calc heat` of this build beside a reference in Python that knows docs/calculations.md alone (reference/pieces.py).</summary>
internal static class HeatPieces
{
    private const string Python = "/usr/bin/python3";

    /// <summary>COUNT, SEED and --solve go to the script as they are. 0 where every difference is within its tolerance.</summary>
    public static int Run(string[] arguments)
    {
        if (Script() is not { } script)
        {
            Console.WriteLine("The script tests/Studio.Bench/reference/pieces.py was not found above this program. Nothing was compared.");
            return 1;
        }

        if (!File.Exists(Python) || Ran([Python, "-c", "import scipy.integrate"]) != 0)
        {
            Console.WriteLine("There is no reference: python3 with scipy is missing (Debian: python3-scipy). Nothing was compared.");
            return 1;
        }

        return Ran([Python, script, .. arguments, "--studio", Path.Combine(AppContext.BaseDirectory, "studio.dll")]);
    }

    // in the sources, not beside the program: the reference's answers are kept beside the script
    private static string? Script()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (Path.Combine(folder.FullName, "tests", "Studio.Bench", "reference", "pieces.py") is var file && File.Exists(file))
            {
                return file;
            }
        }

        return null;
    }

    private static int Ran(string[] command)
    {
        using var process = Process.Start(command[0], command[1..]);
        process.WaitForExit();
        return process.ExitCode;
    }
}
