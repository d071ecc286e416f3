using Studio.Bench.Tools;

return args switch
{
    ["write", var folder] => await Writer.RunAsync(folder),
    ["make", var folder] => await Writer.MakeAsync(folder),
    ["heat"] => Heat(),
    [] => await Measure.RunAsync(),
    ["mesh"] => await MeshCost.RunAsync(),
    ["mesh-once", var file] => await MeshCost.OnceAsync(file),
    _ => Usage(),
};

static int Usage()
{
    Console.WriteLine("Studio.Bench: nothing to measure | mesh | heat | make FOLDER | write FOLDER");
    return 2;
}

static int Heat()
{
    HeatCost.Run();
    return 0;
}
