using System.Globalization;
using Studio.Bench.Tools;
using Studio.Bench.Tools.OtherResins;
using Studio.Engine.Tests.Fit;

return args switch
{
    ["write", var folder] => await Writer.RunAsync(folder),
    ["make", var folder] => await Writer.MakeAsync(folder),
    ["heat"] => Heat(),
    ["heat-round"] => HeatRound.Run(""),
    ["heat-round", var of] => HeatRound.Run(of),
    ["heat-pieces", .. var rest] => HeatPieces.Run(rest),
    ["fit"] => Fit("200"),
    ["fit", var count] => Fit(count),
    ["fit", var count, var seed] => Fit(count, seed),
    ["fit", var count, var seed, var workers] => Fit(count, seed, workers),
    ["coverage"] => CoverageTable.Run("60", "tuning", "1"),
    ["coverage", var count] => CoverageTable.Run(count, "tuning", "1"),
    ["coverage", var count, var seed] => CoverageTable.Run(count, seed, "1"),
    ["coverage", var count, var seed, var workers] => CoverageTable.Run(count, seed, workers),
    [] => await Measure.RunAsync(),
    ["time"] => await TimeAsync(),
    ["mesh"] => await MeshCost.RunAsync(),
    ["mesh-once", var file] => await MeshCost.OnceAsync(file),
    _ => Usage(),
};

static int Fit(string resins, string seed = "700000", string workers = "1")
{
    FitTable.Run(Number(resins), Number(seed), Number(workers), Console.WriteLine);
    return 0;

    static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}

static async Task<int> TimeAsync()
{
    await TimeCost.RunAsync();
    return 0;
}

static int Usage()
{
    Console.WriteLine("Studio.Bench: nothing to measure | time | mesh | heat | heat-round [WORD] | heat-pieces [COUNT [SEED]] [--solve] | fit [COUNT [SEED [WORKERS]]] | coverage [PER_CLASS [SEED|tuning|report [WORKERS]]] | make FOLDER | write FOLDER");
    return 2;
}

static int Heat()
{
    HeatCost.Run();
    HeatCost.Waits();
    return HeatReference.Run();
}
