using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Studio.Moulds;

/// <summary>Draws a mould's section; scaling only, every length comes from the book.</summary>
public sealed partial class MouldSection
{
    [Parameter, EditorRequired]
    public MouldSketch Sketch { get; set; } = default!;

    /// <summary>What the drawing shows, for those who cannot see it.</summary>
    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>True writes width at the rim and height beside it.</summary>
    [Parameter]
    public bool Measured { get; set; }

    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>True turns it over: the piece as it will stand, open top down.</summary>
    [Parameter]
    public bool Turned { get; set; }

    /// <summary>Every drawing on a page to one scale: the length that fills it [mm]; null fits each.</summary>
    [Parameter]
    public double? ScaleMm { get; set; }

    [Parameter]
    public string Class { get; set; } = "";

    private double Half => Sketch.WidestMm;

    private double Rim => Sketch.Wall[^1].HalfWidthMm;

    private double Longest => Sketch.LongestMm;

    private double Text => Longest * 0.075;

    private double Pad => Longest * 0.06;

    private double Wall => Longest * 0.012;

    private string ViewBox
    {
        get
        {
            if (Measured)
            {
                return $"{N(-Half - Pad)} {N(-Text * 2.6)} {N((2 * Half) + (2 * Pad) + (Text * 6))} {N(Sketch.HeightMm + (Text * 3.2))}";
            }

            var side = Math.Max(ScaleMm ?? 0, Longest) * 1.12;
            return $"{N(-side / 2)} {N(Sketch.HeightMm - (side * 0.96))} {N(side)} {N(side)}";
        }
    }

    // down the left wall, across the bottom, up the right one; y counts down from the rim
    private string Inside => string.Join(' ', Sketch.Wall.Reverse().Select(p => (X: -p.HalfWidthMm, p.ZMm)).Concat(Sketch.Wall.Select(p => (X: p.HalfWidthMm, p.ZMm)))
        .Select((p, i) => $"{(i == 0 ? "M" : "L")} {N(p.X)} {N(Turned ? p.ZMm : Sketch.HeightMm - p.ZMm)}"));

    // y counts down from the rim, or from the table where it is turned over
    private string? Rings => Sketch.Rings is not { } rings ? null
        : string.Join(' ', rings.Select(r => string.Join(' ', r.Select((p, i) => $"{(i == 0 ? "M" : "L")} {N(p.XMm)} {N(Turned ? p.ZMm : Sketch.HeightMm - p.ZMm)}")) + " Z"));

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
