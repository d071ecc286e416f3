using PdfSharp.Drawing;

namespace Studio.Papers;

/// <summary>Bars of 100 mm and of 4 in, across and down, in a page's lower left corner: a ruler laid on them says whether the print is at true size.</summary>
internal static class PaperCheckBars
{
    /// <summary>Strip that the bars take along the left and along the bottom [mm].</summary>
    public const double RoomMm = 17;

    /// <summary>What to write beside them.</summary>
    public const string Words = "Print at 100 %, not fitted to the page. Lay a ruler on the bars in the corner: 100 mm and 4 in, across and down. If they differ, the page is not at true size.";

    private const double InchMm = 25.4;
    private const double EndMm = 1.6;
    private const double StepMm = 0.9;
    private const double ApartMm = 8;
    private const double HairPt = 0.3;

    /// <summary>Draws all four.</summary>
    /// <param name="leftMm">The corner, from the page's left edge [mm].</param>
    /// <param name="bottomMm">The corner, from the page's upper edge [mm].</param>
    public static void Draw(PaperInk ink, PaperType type, double leftMm, double bottomMm)
    {
        var box = new XRect(Measure.Mm(leftMm), Measure.Mm(bottomMm - RoomMm - 102), Measure.Mm(RoomMm + 102), Measure.Mm(RoomMm + 102));
        using var figure = ink.Figure("Check bars of 100 mm and of 4 in, across and down", box);
        foreach (var (length, step, at, words) in new[] { (100, 10, 2, "100 mm"), (4 * InchMm, InchMm, 2 + ApartMm, "4 in") })
        {
            Across(ink, leftMm + RoomMm, bottomMm - at, length, step);
            Down(ink, leftMm + at, bottomMm - RoomMm, length, step);
            ink.Text(words, type.Label, Measure.Mm(leftMm + RoomMm + length + 3), Measure.Mm(bottomMm - at) + (type.Label.Font.Size * 0.35));
            var side = Measure.Mm(leftMm + at) - (at < ApartMm ? Measure.Mm(1.5) : ink.Width(words, type.Label) / 2);
            ink.Text(words, type.Label, side, at < ApartMm ? Measure.Mm(bottomMm - RoomMm + 4.6) : Measure.Mm(bottomMm - RoomMm - length - 2));
        }
    }

    private static void Across(PaperInk ink, double xMm, double yMm, double lengthMm, double stepMm)
    {
        Hair(ink, xMm, yMm, xMm + lengthMm, yMm);
        foreach (var (at, half) in Marks(lengthMm, stepMm))
        {
            Hair(ink, xMm + at, yMm - half, xMm + at, yMm + half);
        }
    }

    private static void Down(PaperInk ink, double xMm, double bottomMm, double lengthMm, double stepMm)
    {
        Hair(ink, xMm, bottomMm - lengthMm, xMm, bottomMm);
        foreach (var (at, half) in Marks(lengthMm, stepMm))
        {
            Hair(ink, xMm - half, bottomMm - at, xMm + half, bottomMm - at);
        }
    }

    private static IEnumerable<(double AtMm, double HalfMm)> Marks(double length, double step) =>
        Enumerable.Range(0, (int)Math.Round(length / step) + 1).Select(i => (Math.Min(i * step, length), i == 0 || (i + 0.5) * step > length ? EndMm : StepMm));

    private static void Hair(PaperInk ink, double x1, double y1, double x2, double y2) =>
        ink.Line(Measure.Mm(x1), Measure.Mm(y1), Measure.Mm(x2), Measure.Mm(y2), XColors.Black, HairPt);
}
