using Microsoft.AspNetCore.Components;
using Studio.Clock;
using Studio.Drawing;
using Studio.Shell;

namespace Studio.Shelf;

/// <summary>One piece on its board, with its paper tag.</summary>
public sealed partial class ShelfStandee
{
    // pieces stand beside each other to one scale as far as the board allows
    private const double PxPerMm = 1.02;
    private const double Narrowest = 76;
    private const double Widest = 180;
    private const double Tallest = 178;
    private const double BlockShare = 0.3;

    [Parameter, EditorRequired]
    public Standee Piece { get; set; } = default!;

    /// <summary>Where its tag leads.</summary>
    [Parameter, EditorRequired]
    public string Way { get; set; } = "";

    /// <summary>Said where it is late or tight; null else.</summary>
    [Parameter]
    public InTime? Promise { get; set; }

    [Parameter]
    public DateTime Now { get; set; }

    [Parameter]
    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    private string Left => Piece.Next switch
    {
        { Kind: ActKind.PourNext, Until: { } until } => Say.Duration(until - Now) + " left",
        { Kind: ActKind.WaitForWindow or ActKind.WaitDemould or ActKind.WaitFullCure, From: { } from } => "in " + Say.Duration(from - Now),
        { Kind: ActKind.WindowClosed, Since: { } since } => Say.Duration(Now - since) + " ago",
        _ => "",
    };

    private static double Wide(SectionView section) => Math.Clamp(section.WidestMm * PxPerMm, Narrowest, Widest);

    // a mould that ends in a point stands in a notched block, as it does on the bench
    private static (string Width, string Height, string Path)? Block(SectionView section)
    {
        if (!section.AsStands || section.WidthMm(0) > 0.4 * section.WidestMm)
        {
            return null;
        }

        var scale = new SectionLayout(section, large: false, Wide(section), Tallest, "metric").Scale;
        var high = section.HeightMm * BlockShare;
        var (h, top, tip) = (high * scale, section.WidthMm(high) * scale / 2, section.WidthMm(0) * scale / 2);
        var half = top + 15;
        string N(double v) => SectionLayout.Number(v);
        return (N(2 * half), N(h), $"M0 {N(h)}V0H{N(half - top - 3)}L{N(half - tip - 1)} {N(h - 3)}H{N(half + tip + 1)}L{N(half + top + 3)} 0H{N(2 * half)}V{N(h)}Z");
    }

    private static string Cap(string words) => char.ToUpperInvariant(words[0]) + words[1..] + ".";
}
