using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

/// <summary>The outer size of a casting, by hand from its shape: a pyramid's edge grows evenly, a sphere is widest at its middle.</summary>
public sealed class CastingSizeTests
{
    // an edge of 150 mm at 125 mm: at 105 mm of pour 150 × 105 / 125 = 126 mm
    [Fact]
    public void A_part_filled_pyramid_stands_on_the_square_of_its_highest_layer()
    {
        var size = CastingSize.Of(Make("pyramid", ("baseMm", 150), ("heightMm", 125)), 105);
        size.Foot.ShouldBe(FootForm.Square);
        size.WidthMm.ShouldBe(126, 1e-9);
        size.HeightMm.ShouldBe(105);
        size.WidestMm.ShouldBe(126, 1e-9);
    }

    // a ball of 100 mm poured to 80 mm: its foot is the circle of radius √(50² − 30²) = 40 mm, its belly 100 mm
    [Fact]
    public void A_ball_is_wider_than_the_foot_it_stands_on()
    {
        var size = CastingSize.Of(Make("sphere", ("diameterMm", 100), ("openingDiameterMm", 20)), 80);
        size.Foot.ShouldBe(FootForm.Round);
        size.WidthMm.ShouldBe(80, 0.1);
        size.WidestMm.ShouldBe(100, 0.5);
    }

    [Fact]
    public void A_hexagon_is_said_by_its_sides_and_a_box_by_two_lengths()
    {
        var six = CastingSize.Of(Make("prism", ("sides", 6), ("edgeMm", 50), ("heightMm", 40)), 20);
        (six.Foot, six.Sides).ShouldBe((FootForm.Sided, 6));
        Math.Max(six.WidthMm, six.DepthMm).ShouldBe(100, 1e-6); // corner to corner: twice the edge
        CastingSize.Of(Make("cuboid", ("widthMm", 150), ("depthMm", 100), ("heightMm", 40)), 20).Foot.ShouldBe(FootForm.Oblong);
    }

    [Fact]
    public void A_mould_known_by_water_alone_has_a_height_and_no_outline()
    {
        var mould = MouldShapes.Make(new MouldSpec("measured", new Dictionary<string, double>()) { Readings = [new(20, 100), new(40, 260)] }).Value;
        CastingSize.Of(mould, 30).ShouldBe(new CastingSize(FootForm.Unknown, 0, 0, 0, 0, 30));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Nothing_poured_has_no_size(double top) =>
        Should.Throw<ArgumentOutOfRangeException>(() => CastingSize.Of(Make("sphere", ("diameterMm", 100), ("openingDiameterMm", 20)), top));

    private static MouldBody Make(string shape, params (string Name, double Value)[] sizes) =>
        MouldShapes.Make(new MouldSpec(shape, sizes.ToDictionary(s => s.Name, s => s.Value))).Value;
}
