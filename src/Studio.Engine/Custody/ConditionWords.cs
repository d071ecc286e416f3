namespace Studio.Engine.Custody;

/// <summary>A word for damage, with its meaning in plain English.</summary>
public sealed record ConditionWord(string Word, string Meaning);

/// <summary>
/// Words of the trade for a keepsake's condition on arrival (Victorian Collections glossary and Spectrum practice; meanings from
/// memory). Free words stay allowed: these are offered, not forced.
/// </summary>
public static class ConditionWords
{
    /// <summary>How the whole is rated; a rating needs written observations beside it.</summary>
    public static IReadOnlyList<string> Overall { get; } = ["Excellent", "Good", "Fair", "Poor"];

    /// <summary>Kinds of damage, alphabetically.</summary>
    public static IReadOnlyList<ConditionWord> Damage { get; } =
    [
        new("abrasion", "worn or scraped surface"),
        new("accretion", "something stuck to the surface"),
        new("bend", "out of its shape without a break"),
        new("blister", "a raised bubble in the surface"),
        new("bloom", "a pale, powdery or misty film"),
        new("break", "in two or more parts"),
        new("brittle", "breaks or crumbles when handled"),
        new("buckling", "waves in paper, card or cloth"),
        new("burn", "scorched or charred"),
        new("chip", "a small piece gone from an edge"),
        new("corrosion", "rust or another crust on metal"),
        new("crack", "a split that does not go all the way"),
        new("crease", "a line where it was folded"),
        new("fading", "colours paler than they were"),
        new("foxing", "brown spots in paper"),
        new("loss", "a part is missing"),
        new("stain", "a discoloured patch"),
        new("tear", "torn from an edge or inside"),
    ];
}
