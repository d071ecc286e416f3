using System.Globalization;
using Studio.Engine.Moulds;
using Studio.Shell;

namespace Studio.Moulds;

/// <summary>How a mould is said in words.</summary>
public static class MouldWords
{
    /// <summary>"Square pyramid", "Hexagonal prism", "Cylinder", as the shape says it; a key that is not known stands for itself.</summary>
    public static string Shape(MouldSpec spec) => MouldShapes.Find(spec.Shape)?.Called(spec) ?? spec.Shape;

    /// <summary>"Edge at the open top 150 mm, height 125 mm": what differs from the shape's usual figure, counts left to the shape's words.</summary>
    public static string Sizes(MouldSpec spec, string units)
    {
        if (spec.Readings is { Count: > 0 } fill)
        {
            return $"{(fill.Count == 1 ? "1 reading" : $"{fill.Count} readings")} up to {Say.Length(fill[^1].HeightMm, units)}";
        }

        if (spec.Mesh is { } mesh)
        {
            return $"{mesh.File}, in {Unit(mesh.Unit)}";
        }

        var said = (MouldShapes.Find(spec.Shape)?.Dimensions ?? [])
            .Where(d => d.Unit.Length > 0 && spec.Dimensions.TryGetValue(d.Name, out var v) && !v.Equals(d.Default ?? double.NaN))
            .Select(d => $"{d.Label.ToLowerInvariant()} {Size(d, spec.Dimensions[d.Name], units)}");
        var words = string.Join(", ", said);
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>"375 ml", "1.13 litres".</summary>
    public static string Capacity(double ml) => ml < 1000 ? Say.Millilitres(ml) : string.Create(CultureInfo.InvariantCulture, $"{ml / 1000:0.00} litres");

    /// <summary>"387 ml ± 8 ml" where water said how sure that is.</summary>
    public static string Capacity(double ml, double? spreadMl) =>
        spreadMl is not { } spread ? Capacity(ml)
        : ml < 1000 ? $"{Say.Millilitres(ml)} ± {Say.Millilitres(spread)}"
        : string.Create(CultureInfo.InvariantCulture, $"{ml / 1000:0.00} ± {spread / 1000:0.00} litres");

    /// <summary>A mesh's unit in words.</summary>
    public static string Unit(string unit) => unit switch { "mm" => "millimetres", "cm" => "centimetres", "m" => "metres", "inch" => "inches", _ => unit };

    /// <summary>Which way of the file stands up.</summary>
    public static string Up(string up) => up switch
    {
        "+z" => "Z up, as most printing files stand",
        "-z" => "Z down: the file turned over",
        "+y" => "Y up, as most files for the screen stand",
        "-y" => "Y down",
        "+x" => "X up",
        _ => "X down",
    };

    private static string Size(Dimension d, double value, string units) =>
        d.Unit == "mm" ? Say.Length(value, units) : string.Create(CultureInfo.InvariantCulture, $"{value:0.##}{(d.Unit == "°" ? "" : " ")}{d.Unit}");
}
