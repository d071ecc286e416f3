namespace Studio.Drawing;

/// <summary>What lies in a layer beside resin, as marks.</summary>
public sealed partial class SectionLayout
{
    /// <summary>Specks for loose filling, always the same for the same layer, on the layer's floor where loose pieces come to rest.</summary>
    public IEnumerable<SectionMark> Specks(SectionBand band)
    {
        var depth = band.Layer.ToMm - band.Layer.FromMm;
        for (var i = 0; i < 46 && depth > 0; i++)
        {
            // two steps that share no rhythm spread points evenly without any chance in it (the plastic number's powers)
            var (a, b) = (Fraction(i * 0.7548776662), Fraction(i * 0.5698402910));
            var z = band.Layer.FromMm + (depth * (0.08 + (0.84 * b)));
            if (z < view.HeightMm && z > 0)
            {
                var half = view.WidthMm(z) / 2;
                yield return new SectionMark(X(((2 * a) - 1) * half * 0.92), Y(view.Drawn(z)), 1.1 + (0.9 * Fraction(i * 0.37)));
            }
        }
    }

    /// <summary>A small plate for each thing set by hand, side by side across the layer.</summary>
    public IEnumerable<(SectionMark At, string Name)> Plates(SectionBand band)
    {
        var z = Math.Clamp((band.Layer.FromMm + band.Layer.ToMm) / 2, 0, view.HeightMm);
        var things = band.Layer.Placed;
        var width = view.WidthMm(z) * Scale * 0.7;
        var size = Math.Min(Math.Min((band.Layer.ToMm - band.Layer.FromMm) * Scale * 0.62, 30), width / Math.Max(1, things.Count) * 0.8);
        for (var i = 0; i < things.Count && size > 2; i++)
        {
            yield return (new SectionMark(AxisX - (width / 2) + (width * (i + 0.5) / things.Count), Y(view.Drawn(z)), size), things[i]);
        }
    }

    private static double Fraction(double value) => value - Math.Floor(value);
}
