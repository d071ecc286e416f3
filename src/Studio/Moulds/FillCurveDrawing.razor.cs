using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Shell;

namespace Studio.Moulds;

/// <summary>Draws a fill's curve; scaling only, every figure comes from the book.</summary>
public sealed partial class FillCurveDrawing
{
    private const double Left = 44;
    private const double Right = 328;
    private const double Top = 16;
    private const double Bottom = 176;

    [Parameter, EditorRequired]
    public FillCurve Curve { get; set; } = default!;

    [Parameter]
    public string Units { get; set; } = "metric";

    private string Most => Curve.MostMl < 1000 ? Curve.MostMl.ToString("0", CultureInfo.InvariantCulture) + " ml" : (Curve.MostMl / 1000).ToString("0.0", CultureInfo.InvariantCulture) + " l";

    private string Words => $"Water over height: {Curve.Dots.Count} readings up to {Say.Length(Curve.HighestMm, Units)} and {MouldWords.Capacity(Curve.MostMl)}"
        + (Curve.Dots.Any(d => d.Wild) ? $"; look again at reading {string.Join(", ", Curve.Dots.Where(d => d.Wild).Select(d => d.Row + 1))}" : "");

    private string Line => string.Join(' ', Curve.Line.Select((p, i) => $"{(i == 0 ? "M" : "L")} {X(p)} {Y(p)}"));

    private string X(FillPoint p) => N(Left + ((Right - Left) * p.HeightMm / Curve.HighestMm));

    private string Y(FillPoint p) => N(Bottom - ((Bottom - Top) * p.VolumeMl / Curve.MostMl));

    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
