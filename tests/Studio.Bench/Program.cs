using Studio.Bench.Tools;

return args switch
{
    ["write", var folder] => await Writer.RunAsync(folder),
    ["make", var folder] => await Writer.MakeAsync(folder),
    _ => Usage(),
};

static int Usage()
{
    Console.WriteLine("Studio.Bench: make FOLDER | write FOLDER");
    return 2;
}
