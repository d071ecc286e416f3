namespace Studio.Engine.Parts;

/// <summary>A kind of cell that is sold everywhere.</summary>
/// <param name="Button">Round and wider than tall: the rule for button and coin cells holds (16 CFR 1263: diameter greater than height).</param>
/// <param name="Volts">Nominal [V].</param>
/// <param name="Size">In words.</param>
/// <param name="Stated">What sources say it holds.</param>
public sealed record Cell(string Key, string Name, bool Button, double Volts, string Size, IReadOnlyList<CellCapacity> Stated);

/// <summary>A stated capacity.</summary>
/// <param name="LeastMah">The lower end of what is stated [mAh].</param>
/// <param name="MostMah">The upper end, the same where one number is stated [mAh].</param>
/// <param name="AtMa">The load it was measured at [mA]; null where the source does not say.</param>
public sealed record CellCapacity(double LeastMah, double MostMah, double? AtMa, string Source);

/// <summary>Known cells, each number with its source. No law asks makers to print a capacity, and it depends on the load.</summary>
public static class Cells
{
    /// <summary>Key for a cell whose capacity the maker types.</summary>
    public const string Own = "own";

    // nominal volts and the CR2032's load: from memory (IEC 60086; makers' data sheets)
    public static IReadOnlyList<Cell> All { get; } =
    [
        new("aa", "AA, alkaline (LR6)", false, 1.5, "50.5 × 14.5 mm, 23 g",
        [
            new(2900, 2900, 25, "lygte-info.dk, comparison of chemistries"),
            new(1400, 1400, 500, "lygte-info.dk, comparison of chemistries"),
        ]),
        new("aaa", "AAA, alkaline (LR03)", false, 1.5, "44.5 × 10.5 mm, 11.5 g", [new(900, 1155, null, "encyc.org, AAA battery")]),
        new("cr2032", "CR2032, coin cell", true, 3, "20 × 3.2 mm, 3.1 g", [new(225, 225, 0.2, "en.wikipedia.org, CR2032, down to 2.0 V; its load from memory of data sheets")]),
    ];

    /// <summary>The cell of that key, or null.</summary>
    public static Cell? Find(string key) => All.FirstOrDefault(c => c.Key == key);
}
