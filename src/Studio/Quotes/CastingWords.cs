using Studio.Engine.Moulds;
using Studio.Papers;

namespace Studio.Quotes;

/// <summary>The size of a casting as it is said to the family, to the whole millimetre: "About 126 mm square at the foot, 105 mm high".</summary>
internal static class CastingWords
{
    // a belly within this of the foot is not worth a word [mm]
    private const double BellyMm = 1;

    public static string Of(CastingSize size, PaperFormat format)
    {
        var foot = size.Foot switch
        {
            FootForm.Square => $"{Length(size.WidthMm)} square at the foot",
            FootForm.Oblong or FootForm.Free => $"{Length(size.WidthMm)} × {Length(size.DepthMm)} at the foot",
            FootForm.Round => $"{Length(size.WidthMm)} across at the foot",
            FootForm.Sided => $"{Length(Math.Max(size.WidthMm, size.DepthMm))} across at its {size.Sides}-sided foot",
            FootForm.Point or FootForm.Unknown => "",
            var unknown => throw new InvalidOperationException($"No words for a foot that is {unknown}."),
        };
        var belly = size.WidestMm > Math.Max(size.WidthMm, size.DepthMm) + BellyMm ? $"{Length(size.WidestMm)} at its widest" : "";
        return "About " + string.Join(", ", new[] { foot, belly, $"{Length(size.HeightMm)} high" }.Where(w => w.Length > 0));

        string Length(double mm) => format.Length(Math.Round(mm));
    }
}
