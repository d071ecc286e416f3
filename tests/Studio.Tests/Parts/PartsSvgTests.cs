using System.Globalization;
using System.Xml.Linq;
using Studio.Parts;
using Studio.Pieces;

namespace Studio.Tests.Parts;

/// <summary>The cutter's file read back as XML.</summary>
public sealed class PartsSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Its_units_are_millimetres_and_every_part_is_one_closed_path_of_its_size()
    {
        var plan = PieceBook.Parts(PartsSamples.Piece());
        var root = Read(plan.Sheets[0]);
        (root.Attribute("width")!.Value, root.Attribute("height")!.Value, root.Attribute("viewBox")!.Value).ShouldBe(("600mm", "300mm", "0 0 600 300"));

        var sizes = root.Descendants(Svg + "path").ToDictionary(p => p.Attribute("id")!.Value, Size);
        sizes.Keys.Order(StringComparer.Ordinal).ShouldBe(["cover-1", "ends-1", "ends-2", "front-and-back-1", "front-and-back-2"]);
        Same(sizes["front-and-back-2"], (80, 41));
        Same(sizes["ends-1"], (54, 41));
        Same(sizes["cover-1"], (102, 82));
    }

    [Fact]
    public void Holes_are_circles_inside_their_part_with_names_of_their_own()
    {
        var root = Read(PieceBook.Parts(PartsSamples.Piece()).Sheets[0]);
        var circles = root.Descendants(Svg + "circle").ToList();
        circles.Count.ShouldBe(4);
        circles.ShouldAllBe(c => c.Attribute("r")!.Value == "1.75");
        root.Descendants().Attributes("id").Select(a => a.Value).ShouldBeUnique();
        var cover = Points(root.Descendants(Svg + "path").Single(p => p.Attribute("id")!.Value == "cover-1"));
        var left = circles.Single(c => c.Attribute("id")!.Value == "cover-1-front-left");
        // 7 mm in from the left, and 7 mm up from the lower edge, where SVG counts downwards
        (Number(left, "cx") - cover.Min(p => p.X)).ShouldBe(7, 1e-9);
        (cover.Max(p => p.Y) - Number(left, "cy")).ShouldBe(7, 1e-9);
    }

    [Fact]
    public void A_name_with_angle_brackets_stays_words()
    {
        var use = PieceBook.Parts(PartsSamples.Piece()).Sheets[0];
        var root = XDocument.Load(new MemoryStream(PartsSvg.Sheet(use, 0, "<script>\u0001 & Co", 1))).Root!;
        root.Element(Svg + "title")!.Value.ShouldBe("<script> & Co");
        root.Descendants(Svg + "script").ShouldBeEmpty();
    }

    private static XElement Read(Engine.Parts.SheetUse use) => XDocument.Load(new MemoryStream(PartsSvg.Sheet(use, 0, "Whistle pyramid", 1))).Root!;

    private static (double W, double H) Size(XElement path)
    {
        var points = Points(path);
        path.Attribute("d")!.Value.ShouldEndWith("Z");
        return (points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y));
    }

    private static List<(double X, double Y)> Points(XElement path) =>
        [.. path.Attribute("d")!.Value.Trim('M', 'Z', ' ').Split(" L").Select(p => p.Split(' ')).Select(p => (double.Parse(p[0], CultureInfo.InvariantCulture), double.Parse(p[1], CultureInfo.InvariantCulture)))];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    // the cover may lie turned
    private static void Same((double W, double H) found, (double W, double H) part) =>
        new[] { found.W, found.H }.Order().Zip(new[] { part.W, part.H }.Order()).ShouldAllBe(p => Math.Abs(p.First - p.Second) < 1e-3);
}
