using Studio.Bench.Tools;

return args switch
{
    ["write", var folder] => await Writer.RunAsync(folder),
    ["make", var folder] => await Writer.MakeAsync(folder),
    [] => await Measure.RunAsync(),
    _ => Usage(),
};

static int Usage()
{
    Console.WriteLine("Studio.Bench: nothing to measure | make FOLDER | write FOLDER");
    return 2;
}
