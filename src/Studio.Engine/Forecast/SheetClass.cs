using Studio.Engine.Cure;

namespace Studio.Engine.Forecast;

/// <summary>The class of a resin whose sheet does not say one; common practice, no source.</summary>
internal static class SheetClass
{
    /// <summary>By the greatest depth, else by the times.</summary>
    public static string Of(DataSheet sheet) => sheet switch
    {
        { MaxPourMm: >= 25 } => "deepPour",
        { MaxPourMm: <= 4 } => "fast",
        { MaxPourMm: not null } => "casting",
        { DemouldHours: >= 40 } => "deepPour",
        { DemouldHours: <= 8 } => "fast",
        { DemouldHours: not null } => "casting",
        _ => (sheet.GelMinutes ?? (2 * sheet.PotLifeMinutes)) switch { >= 500 => "deepPour", <= 60 => "fast", _ => "casting" },
    };

    /// <summary>What is said of a sheet that is fitted.</summary>
    public static IEnumerable<Finding> Doubts(DataSheet given, string path)
    {
        if (given.Class is null)
        {
            yield return new(
                "class-assumed", Severity.Warn, path + ".class",
                $"The sheet does not say its class; by its other numbers it is taken for '{Of(given)}'. Look it up and give it: what is not printed is taken from the class.", "common practice, no source");
        }

        foreach (var doubt in DataSheetCheck.Doubts(given, path).Where(d => d.Code is "sheet-temperature-assumed" or "figure-slipped" or "figure-unusual" || d.Path.Contains(".nextPour", StringComparison.Ordinal)))
        {
            yield return doubt;
        }
    }
}
