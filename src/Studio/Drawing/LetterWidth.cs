namespace Studio.Drawing;

/// <summary>How wide words will be in the pages' sans face, guessed a little too wide rather than too narrow.</summary>
public static class LetterWidth
{
    private const string Narrow = "iljI.,:;'|!()[] ·ft\u00A0";
    private const string Wide = "mwMW%@œæŒÆ—…";

    /// <summary>Width of a line of text at a size [the size's own unit].</summary>
    public static double Of(string text, double size) => text.Sum(Em) * size;

    private static double Em(char c) =>
        Narrow.Contains(c, StringComparison.Ordinal) ? 0.34
        : Wide.Contains(c, StringComparison.Ordinal) ? 0.88
        : char.IsUpper(c) ? 0.68
        : c < 0x250 ? 0.55
        : 1.05;
}
