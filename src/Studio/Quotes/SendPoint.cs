namespace Studio.Quotes;

/// <summary>Something to settle before a quote is sent.</summary>
/// <param name="Code">Stable kebab-case key.</param>
/// <param name="Words">What is so and what to do, in whole sentences.</param>
/// <param name="Link">Where it is done; empty for the quote's own page.</param>
/// <param name="LinkWords">What the link says.</param>
public sealed record SendPoint(string Code, string Words, string Link = "", string LinkWords = "")
{
    /// <summary>The paper would say what is not so: it can't be sent like this, whatever the reason.</summary>
    public bool Refuses { get; init; }
}
