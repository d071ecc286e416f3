namespace Studio.Engine.Film;

/// <summary>What one way of printing needs before resin.</summary>
/// <param name="Key">Stored key.</param>
/// <param name="Label">In plain words.</param>
/// <param name="SealMm">Clear laminate or film left all round the picture [mm]; 0 where the print stands uncovered.</param>
/// <param name="OneColour">True where it prints in black only.</param>
/// <param name="Words">What to do, in whole sentences.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record FilmInk(string Key, string Label, double SealMm, bool OneColour, string Words, string Source);

/// <summary>A rule for every photograph, whatever it is printed with.</summary>
/// <param name="Key">Stored key.</param>
/// <param name="Words">What to do, in whole sentences.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record FilmRule(string Key, string Words, string Source);

/// <summary>The ways of printing that the program knows: one row each. A new one is a line here.</summary>
public static class FilmInks
{
    /// <summary>Laser toner in colour.</summary>
    public const string Toner = "toner";

    private const string Practice = "common practice, no source";

    /// <summary>All rows in the order a form offers them.</summary>
    public static IReadOnlyList<FilmInk> All { get; } =
    [
        new(Toner, "Laser toner, in colour, on film", 0, false, "Toner stands in resin uncovered. Cast a test strip of the same film and toner first.", Practice),
        new("toner-black", "Laser toner, black, on film", 0, true, "Toner stands in resin uncovered. Cast a test strip of the same film and toner first, and bring the picture to one colour.", Practice),
        new("dye", "Inkjet, dye ink, on film", 5, false, "Dye ink runs in liquid resin: seal both sides with laminate or clear film, with a margin of clear film all round the picture.", Practice),
        new("pigment", "Inkjet, pigment ink, on film", 5, false, "Pigment ink lifts and runs in liquid resin: seal both sides with laminate or clear film, with a margin of clear film all round the picture.", Practice),
        new("paper", "A print on photographic paper", 5, false, "Paper drinks resin and turns glassy in spots: seal both sides and the edges. Its back shows white from behind; stand two prints back to back, or place it against a dark layer.", Practice),
    ];

    /// <summary>Rules whatever the ink.</summary>
    public static IReadOnlyList<FilmRule> Rules { get; } =
    [
        new("never-the-only-one", "Never cast the only photograph. Scan it, print a copy, and give the original back.", "our rule"),
        new("film-vanishes", "Clear film nearly vanishes in resin: at its face 0.09 % of the light is reflected, against 4.5 % in air. What shows is trapped air, so wet both sides with resin before it goes in.", "Fresnel's equations with n 1.636 for polyester film (measured at 633 nm, a film-measuring laboratory) and 1.54 for resin"),
    ];

    /// <summary>The row of that key, or null.</summary>
    public static FilmInk? Find(string key) => All.FirstOrDefault(i => string.Equals(i.Key, key, StringComparison.Ordinal));
}
