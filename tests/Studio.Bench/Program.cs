using System.Globalization;
using Studio.Bench.Tools;
using Studio.Engine.Tests.Fit;

return args switch
{
    ["write", var folder] => await Writer.RunAsync(folder),
    ["make", var folder] => await Writer.MakeAsync(folder),
    ["heat"] => Heat(),
    ["heat-reference"] => HeatReference.Run(),
    ["fit"] => Fit(200),
    ["fit", var count] => Fit(int.Parse(count, CultureInfo.InvariantCulture)),
    [] => await Measure.RunAsync(),
    ["mesh"] => await MeshCost.RunAsync(),
    ["mesh-once", var file] => await MeshCost.OnceAsync(file),
    _ => Usage(),
};

static int Fit(int resins)
{
    FitTable.Run(resins, Console.WriteLine);
    return 0;
}

static int Usage()
{
    Console.WriteLine("Studio.Bench: nothing to measure | mesh | heat | heat-reference | fit [COUNT] | make FOLDER | write FOLDER");
    return 2;
}

static int Heat()
{
    HeatCost.Run();
    return 0;
}
