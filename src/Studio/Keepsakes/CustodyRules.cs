using Studio.Engine.Custody;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>What may be done with a keepsake: the family's word first, then the material's rule, then where it is.</summary>
public static class CustodyRules
{
    // a bench scale shows tenths; a rounding of half a tenth is no lie
    private const double ScaleSlackG = 0.05;

    /// <summary>Why an act may not be done now, in a sentence that says what to do; null when it may.</summary>
    /// <param name="act">A constant of <see cref="CustodyLink"/>.</param>
    /// <param name="material">The material's key.</param>
    /// <param name="permits">What the family permits.</param>
    /// <param name="now">What the chain says.</param>
    public static string? Refusal(string act, string material, string permits, ChainNow now)
    {
        if (act is CustodyLink.Note or CustodyLink.Corrected or CustodyLink.Photographed)
        {
            return null;
        }

        return Gone(act, now) ?? FamilysWord(act, permits) ?? Material(act, material, now);
    }

    /// <summary>Why so much cannot leave; null when it can, or nobody weighed.</summary>
    public static string? MassRefusal(ChainNow now, double? massG) =>
        massG is { } wanted && now.InHandG is { } inHand && wanted > inHand + ScaleSlackG
            ? $"By the scale there are {Say.Grams(Math.Max(0, inHand))} here, so {Say.Grams(wanted)} cannot leave. Weigh it again, or look at the figure."
            : null;

    private static string? Gone(string act, ChainNow now) => (now.Custody, now.InHand, act) switch
    {
        (CustodyChain.Returned, _, _) => "It went back to the family. If it comes again, take it in anew: it gets a new number.",
        (_, true, _) => null,
        (_, _, CustodyLink.Returned) => null, // it goes home in its piece
        _ => $"All of it is cast ({now.Place}), so there is nothing left here for this.",
    };

    private static string? FamilysWord(string act, string permits) => (act, permits) switch
    {
        (CustodyLink.Moved or CustodyLink.Weighed or CustodyLink.Returned, _) => null,
        (_, Permission.ReturnUntouched) => "The family asked for it back untouched. If they have changed their mind, correct what they permit first and write who said so.",
        (CustodyLink.Embedded, Permission.CopyReturn) => "The family permits a copy to be cast and wants the original back. Cast the copy instead; or, if they have changed their mind, correct what they permit and write who said so.",
        _ => null,
    };

    private static string? Material(string act, string material, ChainNow now) => act switch
    {
        CustodyLink.Embedded when MaterialRules.For(material) is { NeverEmbed: true } rule => rule.NeedsBeforeResin,
        CustodyLink.CopyCast when !now.Copied => "Note first what was copied and how; then the copy can be cast.",
        _ => null,
    };
}
