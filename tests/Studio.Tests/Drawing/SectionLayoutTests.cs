using CsCheck;
using Studio.Drawing;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

public sealed class SectionLayoutTests
{
    [Fact]
    public void Names_never_cover_each_other_however_thin_the_layers()
    {
        Gen.Select(Gen.Double[0.5, 40].Array[1, 24], Gen.Double[300, 1200]).Sample((depths, width) =>
        {
            var height = depths.Sum();
            var heights = depths.Select((d, i) => (depths.Take(i).Sum(), depths.Take(i).Sum() + d)).ToArray();
            var sheet = new SectionLayout(SectionViewTests.View(SectionViewTests.Pyramid(150, height), heights), large: true, width, 560, "metric");
            foreach (var (upper, lower) in sheet.LabelList.Zip(sheet.LabelList.Skip(1)))
            {
                lower.Y.ShouldBeGreaterThanOrEqualTo(upper.Y + upper.Height);
            }

            sheet.LabelList.Min(l => l.Y).ShouldBeGreaterThanOrEqualTo(0);
            sheet.LabelList.Max(l => l.Y + l.Height).ShouldBeLessThanOrEqualTo(sheet.Height);
        });
    }

    // boxes as the drawing reserves them: names at 15, details at 13 units, a little too wide rather than too narrow
    [Fact]
    public void No_two_labels_cover_each_other_and_none_leaves_the_drawing_on_a_narrow_phone_either()
    {
        var word = Gen.OneOf("heather", "hive nails", "Wharf brass", "W", "mother-of-pearl buttons", "of", "clear", "MMMMMMMMMMMMMMMMMMMM");
        var layer = Gen.Select(Gen.Double[0.2, 40], word.Array[1, 4], Gen.Int[0, 3], Gen.OneOf("", "412 g", "now 12 000.5 g of resin"));
        Gen.Select(layer.Array[1, 12], Gen.Double[340, 1200], Gen.Bool, Gen.OneOf("metric", "inch"), Gen.Int[0, 2]).Sample((stack, width, asStands, units, sheets) =>
        {
            var height = stack.Sum(l => l.Item1);
            var layers = stack.Select((l, i) => new SectionLayer(string.Join(' ', l.Item2), stack.Take(i).Sum(k => k.Item1), stack.Take(i + 1).Sum(k => k.Item1), "#7d6a94", (LayerState)l.Item3, l.Item4));
            var films = Enumerable.Range(0, sheets).Select(i => new DrawnFilm($"Photograph {i}", [[new(i, -5, 0), new(i, 5, 0), new(i, 5, height / 2), new(i, -5, height / 2)]]));
            var former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 40, FromMm = height * 0.7, WallMm = 3 };
            var sheet = new SectionLayout(SectionView.For(MouldShapes.Make(SectionViewTests.Pyramid(150, height)).Value, layers, former, asStands, films), large: true, width, 560, units);
            var labels = sheet.LabelList;
            labels.Count.ShouldBe(stack.Length + sheets + 1);
            foreach (var l in labels)
            {
                l.X.ShouldBeGreaterThanOrEqualTo(sheet.RightX);
                (l.X + l.Width).ShouldBeLessThanOrEqualTo(sheet.Width);
                l.Y.ShouldBeGreaterThanOrEqualTo(0);
                (l.Y + l.Height).ShouldBeLessThanOrEqualTo(sheet.Height);
            }

            foreach (var (upper, lower) in labels.Zip(labels.Skip(1)))
            {
                lower.Y.ShouldBeGreaterThanOrEqualTo(upper.Y + upper.Height);
            }

            // figures of the dimension lines, each on the line it belongs to
            var figures = sheet.Dimensions.Where(d => d.Upright && d.X1 > 20 && d.Text.Length > 0).Select(d => ((d.Y1 + d.Y2) / 2, Half: LetterWidth.Of(d.Text, 12) / 2)).OrderBy(f => f.Item1).ToList();
            foreach (var (upper, lower) in figures.Zip(figures.Skip(1)))
            {
                (upper.Item1 + upper.Half).ShouldBeLessThanOrEqualTo(lower.Item1 - lower.Half + 1);
            }
        }, iter: 400);
    }

    [Fact]
    public void One_scale_serves_both_directions_and_the_drawing_keeps_to_its_room()
    {
        var sheet = new SectionLayout(SectionViewTests.View(SectionViewTests.Pyramid(150, 100), [(0, 100)]), large: true, 700, 560, "metric");
        (sheet.X(75) - sheet.X(-75)).ShouldBe(150 * sheet.Scale, 1e-9);
        (sheet.Y(0) - sheet.Y(100)).ShouldBe(100 * sheet.Scale, 1e-9);
        sheet.LeftX.ShouldBeGreaterThan(0);
        sheet.RightX.ShouldBeLessThan(700);
    }

    [Fact]
    public void The_dimensions_say_height_layers_and_width()
    {
        var sheet = new SectionLayout(SectionViewTests.View(SectionViewTests.Pyramid(150, 120), [(0, 40), (40, 120)]), large: true, 700, 560, "metric");
        sheet.Dimensions.Select(d => d.Text).ShouldBe(["120 mm", "40", "80", "150 mm"]);
    }

    [Fact]
    public void A_studio_that_thinks_in_inches_reads_inches()
    {
        var sheet = new SectionLayout(SectionViewTests.View(SectionViewTests.Pyramid(152.4, 152.4), [(0, 152.4)]), large: true, 700, 560, "inch");
        sheet.Dimensions.Select(d => d.Text).ShouldBe(["6 in", "6", "6 in"]);
    }
}
