using System.Globalization;
using Studio.Engine.Moulds;
using Studio.Shell;

namespace Studio.Moulds;

/// <summary>How a mould is said in words.</summary>
public static class MouldWords
{
    /// <summary>"Square pyramid", "Hexagonal prism", "Cylinder"; a shape without words of its own is said by the engine's name.</summary>
    public static string Shape(MouldSpec spec)
    {
        var name = MouldShapes.Find(spec.Shape)?.DisplayName ?? spec.Shape;
        return spec.Shape switch
        {
            "pyramid" or "prism" => $"{Sides(spec.Dimensions.GetValueOrDefault("sides", 4))} {name.ToLowerInvariant()}",
            "cone" => Round(spec.Dimensions.GetValueOrDefault("bottomDiameterMm"), spec.Dimensions.GetValueOrDefault("topDiameterMm")),
            _ => name,
        };
    }

    /// <summary>"Edge at the open top 150 mm, height 125 mm": what differs from the shape's usual figure, counts left to the shape's words.</summary>
    public static string Sizes(MouldSpec spec, string units)
    {
        var said = (MouldShapes.Find(spec.Shape)?.Dimensions ?? [])
            .Where(d => d.Unit.Length > 0 && spec.Dimensions.TryGetValue(d.Name, out var v) && !v.Equals(d.Default ?? double.NaN))
            .Select(d => $"{d.Label.ToLowerInvariant()} {Size(d, spec.Dimensions[d.Name], units)}");
        var words = string.Join(", ", said);
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>"375 ml", "1.13 litres".</summary>
    public static string Capacity(double ml) => ml < 1000 ? Say.Millilitres(ml) : string.Create(CultureInfo.InvariantCulture, $"{ml / 1000:0.00} litres");

    private static string Size(Dimension d, double value, string units) =>
        d.Unit == "mm" ? Say.Length(value, units) : string.Create(CultureInfo.InvariantCulture, $"{value:0.##}{(d.Unit == "°" ? "" : " ")}{d.Unit}");

    private static string Sides(double sides) => sides switch { 3 => "Three-sided", 4 => "Square", 5 => "Five-sided", 6 => "Hexagonal", 8 => "Octagonal", _ => string.Create(CultureInfo.InvariantCulture, $"{sides:0}-sided") };

    private static string Round(double bottom, double top) => bottom == 0 ? "Cone" : Math.Abs(bottom - top) < 1e-9 ? "Cylinder" : "Cone with a flat bottom";
}
