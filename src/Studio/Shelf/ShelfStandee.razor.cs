using Microsoft.AspNetCore.Components;
using Studio.Bench;
using Studio.Drawing;
using Studio.Shell;

namespace Studio.Shelf;

/// <summary>One piece on its board, with its paper tag.</summary>
public sealed partial class ShelfStandee
{
    // pieces stand beside each other to one scale as far as the board allows
    private const double PxPerMm = 0.86;
    private const double Narrowest = 64;
    private const double Widest = 168;

    [Parameter, EditorRequired]
    public Standee Piece { get; set; } = default!;

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

    private static string Cap(string words) => char.ToUpperInvariant(words[0]) + words[1..] + ".";
}
