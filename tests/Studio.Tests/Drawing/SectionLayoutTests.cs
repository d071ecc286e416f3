using CsCheck;
using Studio.Drawing;

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
