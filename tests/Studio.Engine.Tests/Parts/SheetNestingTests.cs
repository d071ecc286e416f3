using CsCheck;
using Studio.Engine.Parts;

namespace Studio.Engine.Tests.Parts;

public sealed class SheetNestingTests
{
    [Fact]
    public void Two_parts_and_the_kerf_between_them_just_fill_a_row()
    {
        // 100 + 2 + 98 = 200
        var use = SheetNesting.Lay([Part("a", 100, 50), Part("b", 98, 50)], 200, 50, 2);
        use.Sheets.Count.ShouldBe(1);
        use.Sheets[0].Select(p => p.XMm).ShouldBe([0, 102]);
        use.UsedPercent.ShouldBe(99, 1e-9); // 198 · 50 of 200 · 50

        SheetNesting.Lay([Part("a", 100, 50), Part("b", 98, 50)], 199.9, 50, 2).Sheets.Count.ShouldBe(2);
    }

    [Fact]
    public void A_grain_that_runs_one_way_keeps_parts_unturned()
    {
        SheetNesting.Lay([Part("a", 50, 100)], 100, 50, 1).Sheets[0][0].Turned.ShouldBeTrue();
        var use = SheetNesting.Lay([Part("a", 50, 100)], 100, 50, 1, mayTurn: false);
        use.Sheets.ShouldBeEmpty();
        use.TooLarge.ShouldHaveSingleItem();
    }

    [Fact]
    public void No_two_parts_lie_nearer_than_the_kerf_and_none_is_lost() =>
        Gen.Select(Gen.Double[5, 120], Gen.Double[5, 120], Gen.Int[1, 3]).Array[1, 8].Select(Gen.Double[0, 4]).Sample((parts, kerf) =>
        {
            var use = SheetNesting.Lay([.. parts.Select((p, i) => Part($"{i}", p.Item1, p.Item2) with { Count = p.Item3 })], 200, 150, kerf);
            use.Sheets.Sum(s => s.Count).ShouldBe(parts.Sum(p => p.Item3));
            foreach (var sheet in use.Sheets)
            {
                sheet.ShouldAllBe(p => p.XMm >= 0 && p.YMm >= 0 && p.XMm + p.WidthMm < 200.001 && p.YMm + p.HeightMm < 150.001);
                for (var i = 0; i < sheet.Count; i++)
                {
                    sheet.Take(i).ShouldAllBe(p => Apart(p, sheet[i]) >= kerf - 1e-5);
                }
            }
        });

    private static double Apart(PlacedPart a, PlacedPart b) => new[]
    {
        b.XMm - a.XMm - a.WidthMm, a.XMm - b.XMm - b.WidthMm, b.YMm - a.YMm - a.HeightMm, a.YMm - b.YMm - b.HeightMm,
    }.Max();

    private static SheetPart Part(string key, double width, double height) => new(key, key, 1, width, height, 3, []);
}
