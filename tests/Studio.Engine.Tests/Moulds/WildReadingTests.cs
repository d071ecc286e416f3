using CsCheck;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

public sealed class WildReadingTests
{
    public static TheoryData<string, string> Moulds => new()
    {
        { "pyramid", "baseMm=150 heightMm=125" },
        { "pyramid", "baseMm=60 tipMm=140 heightMm=90" },
        { "cone", "bottomDiameterMm=80 topDiameterMm=80 heightMm=120" },
        { "dome", "diameterMm=160" },
        { "sphere", "diameterMm=120 openingDiameterMm=30" },
        { "cuboid", "widthMm=80 depthMm=60 heightMm=50 draftDegrees=4" },
    };

    [Theory]
    [MemberData(nameof(Moulds))]
    public void Honest_fills_are_left_alone_even_read_to_a_millimetre(string shape, string dimensions)
    {
        var mould = HandbookVolumeTests.Mould(shape, dimensions);
        Gen.Double[-1, 1].Array[10].Sample(slips => WildReadings.Find(Fill(mould, i => slips[i])).ShouldBeEmpty(), iter: 300);
    }

    [Theory]
    [MemberData(nameof(Moulds))]
    public void A_cup_miscounted_at_one_mark_is_pointed_at_and_no_other(string shape, string dimensions)
    {
        var mould = HandbookVolumeTests.Mould(shape, dimensions);
        var fill = Fill(mould, _ => 0).ToList();
        for (var i = 2; i < fill.Count - 1; i++)
        {
            // a fifth of what stands between this mark and the next but one too much, and twelve times what a millimetre holds at the least
            var slip = Math.Max(12 * mould.AreaMm2(fill[i].HeightMm) / 1000, 0);
            var wild = fill.ToList();
            wild[i] = fill[i] with { VolumeMl = fill[i].VolumeMl - slip };
            WildReadings.Find(wild).Select(f => f.Path).ShouldBe([FormattableString.Invariant($"readings[{i}]")], $"{shape}, reading {i}");
        }
    }

    [Fact]
    public void It_says_what_the_others_suggest() // a straight beaker, 5 ml a millimetre: 300 ml at 60 mm
    {
        List<FillReading> fill = [.. Enumerable.Range(1, 8).Select(i => new FillReading(15 * i, 75 * i))];
        fill[3] = fill[3] with { VolumeMl = 340 };
        WildReadings.Find(fill).ShouldHaveSingleItem().Message.ShouldContain("340 ml, where they suggest about 300 ml");
    }

    [Fact]
    public void Two_wild_readings_are_both_found()
    {
        List<FillReading> fill = [.. Enumerable.Range(1, 14).Select(i => new FillReading(10 * i, 50 * i))];
        fill[3] = fill[3] with { VolumeMl = 240 };
        fill[10] = fill[10] with { VolumeMl = 590 };
        WildReadings.Find(fill).Select(f => f.Path).ShouldBe(["readings[3]", "readings[10]"]);
    }

    [Fact]
    public void Few_readings_are_not_doubted() => WildReadings.Find([new(10, 50), new(20, 400), new(30, 410), new(40, 420)]).ShouldBeEmpty();

    // readings between a tenth of the height and the rim, each misread by so many millimetres of height
    private static IReadOnlyList<FillReading> Fill(MouldBody mould, Func<int, double> slipMm) =>
        [.. Enumerable.Range(1, 10).Select(i => mould.HeightMm * i / 10).Select((z, i) => new FillReading(z, mould.VolumeMl(Math.Clamp(z + slipMm(i), 0, mould.HeightMm))))];
}
