namespace Studio.Steps;

/// <summary>A step that is offered: either a page to go to, or a move of the commission.</summary>
/// <param name="Label">What the button says.</param>
/// <param name="Href">The page that does it; empty for a move.</param>
/// <param name="To">Where the commission stands afterwards; empty for a page.</param>
/// <param name="Words">What the day book says of a move.</param>
/// <param name="Disagrees">What speaks against it; a reason is asked for then, and kept.</param>
public sealed record Step(string Label, string Href, string To, string Words, IReadOnlyList<string> Disagrees)
{
    /// <summary>True where something ends: a reason is asked for whatever agrees.</summary>
    public bool Ends => To is Commissions.Standing.LetGo or Commissions.Standing.CrossedOut;

    /// <summary>True when it is asked why.</summary>
    public bool Asks => Ends || Disagrees.Count > 0;

    /// <summary>A step that is done on another page.</summary>
    public static Step Page(string label, string href) => new(label, href, "", "", []);
}

/// <summary>Where a commission stands and what can be done, as the facts have it.</summary>
/// <param name="Stands">The key.</param>
/// <param name="Sentence">Where it stands, in whole sentences.</param>
/// <param name="Main">The next step that the facts allow; null where nothing is left to do.</param>
/// <param name="Others">Further steps.</param>
/// <param name="Elsewhere">Standing somewhere else, to set it right by hand.</param>
public sealed record StepView(int CommissionId, string Stands, string Sentence, Step? Main, IReadOnlyList<Step> Others, IReadOnlyList<Step> Elsewhere);
