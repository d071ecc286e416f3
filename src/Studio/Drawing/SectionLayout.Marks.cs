using System.Globalization;
using System.Text;

namespace Studio.Drawing;

/// <summary>What lies in a layer beside resin, as marks where resin is: beside the former, and inside the mould's own outline.</summary>
public sealed partial class SectionLayout
{
    private const double ClearMm = 0.5;

    /// <summary>Specks for loose filling, always the same for the same layer.</summary>
    public IEnumerable<SectionMark> Specks(SectionBand band)
    {
        var depth = band.Layer.ToMm - band.Layer.FromMm;
        for (var i = 0; i < 46 && depth > 0; i++)
        {
            // two steps that share no rhythm spread points evenly without any chance in it (the plastic number's powers)
            var (a, b) = (Fraction(i * 0.7548776662), Fraction(i * 0.5698402910));
            var z = band.Layer.FromMm + (depth * (0.08 + (0.84 * b)));
            if (z < view.HeightMm && z > 0 && Along(Free(z), 0.04 + (0.92 * a)) is { } x)
            {
                yield return new SectionMark(X(x), Y(view.Drawn(z)), 1.1 + (0.9 * Fraction(i * 0.37)));
            }
        }
    }

    /// <summary>As many specks as asked in one path.</summary>
    public string SpeckPath(SectionBand band, int most) => Specks(band).Take(most).Aggregate(new StringBuilder(), (path, m) =>
        path.Append(CultureInfo.InvariantCulture, $"M{m.X:0.#} {m.Y - (1.4 * m.Size):0.#}l{1.4 * m.Size:0.#} {1.4 * m.Size:0.#}l{-1.4 * m.Size:0.#} {1.4 * m.Size:0.#}l{-1.4 * m.Size:0.#} {-1.4 * m.Size:0.#}z")).ToString();

    /// <summary>A small plate for each thing set by hand, side by side across the layer.</summary>
    public IEnumerable<(SectionMark At, string Name)> Plates(SectionBand band)
    {
        var z = Math.Clamp((band.Layer.FromMm + band.Layer.ToMm) / 2, 0, view.HeightMm);
        var things = band.Layer.Placed;
        var free = Free(z);
        var width = free.Sum(f => f.Right - f.Left) * Scale * 0.7;
        var size = Math.Min(Math.Min((band.Layer.ToMm - band.Layer.FromMm) * Scale * 0.62, 30), width / Math.Max(1, things.Count) * 0.8);
        for (var i = 0; i < things.Count && size > 2; i++)
        {
            if (Along(free, 0.15 + (0.7 * (i + 0.5) / things.Count)) is { } x)
            {
                yield return (new SectionMark(X(x), Y(view.Drawn(z)), size), things[i]);
            }
        }
    }

    // where resin stands at a height as it stands for casting: what the mould spans, less the former
    private List<(double Left, double Right)> Free(double castMm)
    {
        var drawn = view.Drawn(castMm);
        var free = view.SpansMm(castMm).ToList();
        foreach (var box in view.Former.Where(f => f.LowMm < drawn && drawn < f.HighMm))
        {
            free = [.. free.SelectMany(f => new[] { (f.Left, Right: Math.Min(f.Right, box.LeftMm - ClearMm)), (Left: Math.Max(f.Left, box.RightMm + ClearMm), f.Right) }).Where(f => f.Right > f.Left)];
        }

        return free;
    }

    private static double? Along(List<(double Left, double Right)> free, double share)
    {
        var at = share * free.Sum(f => f.Right - f.Left);
        foreach (var (left, right) in free)
        {
            if (at <= right - left)
            {
                return left + at;
            }

            at -= right - left;
        }

        return null;
    }

    private static double Fraction(double value) => value - Math.Floor(value);
}
