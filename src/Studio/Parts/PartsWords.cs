using System.Globalization;
using Studio.Engine.Parts;

namespace Studio.Parts;

/// <summary>How parts are named and measured on the page and on paper.</summary>
public static class PartsWords
{
    private const double MmPerInch = 25.4;

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>"74.5 mm" or "2.933 in": what a rule and a saw's stop can be set to.</summary>
    public static string Length(double mm, string units) => Bare(mm, units) + (units == "inch" ? " in" : " mm");

    /// <summary>"80 × 41 mm".</summary>
    public static string Size(double widthMm, double heightMm, string units) => $"{Bare(widthMm, units)} × {Length(heightMm, units)}";

    /// <summary>"70 × 40 × 30 mm".</summary>
    public static string Size(double widthMm, double depthMm, double heightMm, string units) => $"{Bare(widthMm, units)} × {Size(depthMm, heightMm, units)}";

    /// <summary>The number alone.</summary>
    public static string Bare(double mm, string units) => units == "inch" ? (mm / MmPerInch).ToString("0.###", English) : mm.ToString("0.##", English);

    /// <summary>A letter for each part of the cut list, as the drawings show it.</summary>
    public static string Letter(PartsPlan plan, SheetPart part) => ((char)('A' + Math.Max(0, plan.Parts.ToList().FindIndex(p => p.Key == part.Key)))).ToString();

    /// <summary>"1 sheet of 600 × 300 mm, 3 mm thick: 12 % becomes parts."</summary>
    public static string Used(SheetUse use, string units) => use.Sheets.Count == 0
        ? $"No part fits a sheet of {Size(use.WidthMm, use.HeightMm, units)}."
        : string.Create(English, $"{(use.Sheets.Count == 1 ? "1 sheet" : $"{use.Sheets.Count} sheets")} of {Size(use.WidthMm, use.HeightMm, units)}, {Length(use.SheetMm, units)} thick: {use.UsedPercent:0.#} % becomes parts.");

    /// <summary>"about 14 to 29 hours".</summary>
    public static string Hours(LightPlan light)
    {
        var (from, to) = (Rounded(light.FromHours), Rounded(light.ToHours));
        return from == to ? $"about {from} {(from == "1" ? "hour" : "hours")}" : $"about {from} to {to} hours";
    }

    /// <summary>Where a hole's middle stands in its part.</summary>
    public static string Hole(PartHole hole, string units) => $"{Length(hole.XMm, units)} from the left, {Length(hole.YMm, units)} from below";

    private static string Rounded(double hours) => hours < 10 ? hours.ToString("0.#", English) : Math.Floor(hours).ToString("#,0", English);
}
