using System.Diagnostics;
using System.Text.Json;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Bench.Tools;

/// <summary>Our heat against Debian's scipy on the same mesh: the peaks must agree within 0.1 K; the time is told as a ratio.</summary>
internal static class HeatReference
{
    private const double MostK = 0.1;
    private const string Python = "/usr/bin/python3";

    public static int Run()
    {
        if (!File.Exists(Python) || Ask(["-c", "import scipy.integrate"]) is null)
        {
            Console.WriteLine("There is no reference: python3 with scipy is missing (Debian: python3-scipy). Nothing was compared.");
            return 1;
        }

        var (input, mould) = HeatCost.Piece();
        var agrees = true;
        foreach (var (name, preview) in new[] { ("preview (cone)", true), ("three dimensions, 6 cells", false) })
        {
            agrees &= Compare(name, input, mould, preview);
        }

        return agrees ? 0 : 1;
    }

    private static bool Compare(string name, HeatInput input, MouldBody mould, bool preview)
    {
        var (best, outcome) = (TimeSpan.MaxValue, HeatRun.Run(input, mould, null, preview));
        for (var k = 0; k < 5; k++)
        {
            var clock = Stopwatch.GetTimestamp();
            outcome = HeatRun.Run(input, mould, null, preview);
            best = Stopwatch.GetElapsedTime(clock) is var took && took < best ? took : best;
        }

        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, JsonSerializer.Serialize(Case(input, HeatModel.Grid(input, mould, new HeatFineness(), preview))));
            if (Ask([Path.Combine(AppContext.BaseDirectory, "reference", "heat.py"), file]) is not { } said)
            {
                Console.WriteLine($"{name}: the reference gave no answer.");
                return false;
            }

            using var read = JsonDocument.Parse(said);
            double[] peaks = [.. read.RootElement.GetProperty("peaks").EnumerateArray().Select(p => p.GetDouble())];
            var seconds = read.RootElement.GetProperty("seconds").GetDouble();
            var apart = outcome.Layers.Zip(peaks, (l, p) => Math.Abs(l.PeakBeforeNextPourCelsius - p)).Max();
            Console.WriteLine(FormattableString.Invariant($"{name}: {outcome.Nodes} nodes, ours {best.TotalMilliseconds:0} ms in {outcome.Steps} steps, scipy's BDF {seconds * 1000:0} ms in {read.RootElement.GetProperty("steps").GetInt32()} steps, ratio {seconds / best.TotalSeconds:0.0} (aim 10)"));
            Console.WriteLine(FormattableString.Invariant($"  peaks ours {Words(outcome.Layers.Select(l => l.PeakBeforeNextPourCelsius))}, scipy {Words(peaks)} °C, at most {apart:0.000} K apart (allowed {MostK}){(apart <= MostK ? "" : ": TOO FAR")}"));
            return apart <= MostK;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Words(IEnumerable<double> peaks) => string.Join(" ", peaks.Select(p => p.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)));

    // names as reference/heat.py reads them
    private static Dictionary<string, object> Case(HeatInput input, HeatGrid grid) => new(StringComparer.Ordinal)
    {
        ["nodeCount"] = grid.NodeCount,
        ["startC"] = input.Wall.StartCelsius,
        ["roomHours"] = input.Room.Select(r => r.Hours),
        ["roomC"] = input.Room.Select(r => r.Celsius),
        ["layers"] = input.Layers.Select(Layer),
        ["stages"] = Enumerable.Range(1, input.Layers.Count).Select(poured => Stage(input, grid, poured)),
    };

    private static Dictionary<string, double> Layer(HeatLayer layer) => new(StringComparer.Ordinal)
    {
        ["density"] = layer.DensityKgPerM3,
        ["capacity"] = layer.HeatCapacityJPerKgK,
        ["pouredC"] = layer.PouredCelsius,
        ["rate"] = layer.Kinetics.RateAt23CPerS,
        ["kappa"] = layer.Kinetics.Kappa,
        ["m"] = layer.Kinetics.M,
        ["n"] = layer.Kinetics.N,
        ["energy"] = layer.Kinetics.ActivationJPerMol,
        ["heat"] = layer.Kinetics.HeatJPerKg,
        ["glassStart"] = layer.Kinetics.GlassStartC,
        ["glassEnd"] = layer.Kinetics.GlassEndC,
        ["lambda"] = layer.Kinetics.Lambda,
        ["offset"] = layer.Kinetics.VitrificationOffsetK,
        ["width"] = layer.Kinetics.VitrificationWidthK,
    };

    private static Dictionary<string, object> Stage(HeatInput input, HeatGrid grid, int poured)
    {
        var stage = new HeatStage(grid, input, poured);
        var entries = (from row in Enumerable.Range(0, stage.Nodes.Length)
                       from column in Enumerable.Range(Math.Max(0, row - stage.Band), Math.Min(row, stage.Band) + 1)
                       let value = stage.Conduction(row, column)
                       where value != 0
                       select (row, column, value)).ToList();
        return new(StringComparer.Ordinal)
        {
            ["poured"] = poured,
            ["fromHours"] = input.Layers[poured - 1].PouredAtHours,
            ["toHours"] = poured < input.Layers.Count ? input.Layers[poured].PouredAtHours : input.UntilHours,
            ["nodes"] = stage.Nodes,
            ["capacity"] = stage.Capacity,
            ["film"] = stage.Film,
            ["pointNode"] = stage.PointNode,
            ["pointLayer"] = stage.PointLayer,
            ["pointVolume"] = stage.PointVolume,
            ["row"] = entries.Select(e => e.row),
            ["column"] = entries.Select(e => e.column),
            ["value"] = entries.Select(e => e.value),
        };
    }

    // what it printed; null where it failed
    private static string? Ask(string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Python, arguments) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? said : null;
    }
}
