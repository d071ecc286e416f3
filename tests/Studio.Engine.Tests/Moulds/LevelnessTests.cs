using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

public sealed class LevelnessTests
{
    [Fact]
    public void A_degree_over_100_mm_runs_off_1_7455_mm() => Levelness.RunOffMm(100, 1).ShouldBe(1.7455, 5e-5); // tan 1° = 0.0174551, any table

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(12)]
    [InlineData(45)]
    public void A_tilt_reads_the_same_in_degrees_and_over_100_mm(double degrees) =>
        Levelness.TiltDegrees(Levelness.MmPer100Mm(degrees)).ShouldBeNear(degrees);

    // Machinery's Handbook 31, p. 89: cylinder cut at an angle, d 125, h1 100, h2 150: 0.3927 d² (h1 + h2) = 1 533 984 mm³ (7854 as π/4)
    [Fact]
    public void A_tilted_cylinder_holds_what_a_level_one_holds_at_its_middle()
    {
        var cylinder = HandbookVolumeTests.Mould("cone", "bottomDiameterMm=125 topDiameterMm=125 heightMm=160");
        var tilt = Levelness.TiltDegrees(100 * (150 - 100) / 125.0);
        Levelness.RunOffMm(Levelness.AcrossMm(cylinder, 125), tilt).ShouldBe(150 - 100, 0.01);
        (cylinder.VolumeMl((100 + 150) / 2.0) * 1000).ShouldBe(1_533_984, 1_533_984 * 1e-5);
    }

    [Theory]
    [InlineData("cuboid", "widthMm=30 depthMm=40 heightMm=10", 5, 50)] // 3-4-5
    [InlineData("pyramid", "baseMm=100 heightMm=100", 50, 70.710678118654755)] // half the edge, times the square root of 2
    [InlineData("pyramid", "baseMm=100 heightMm=100", 0, 0)]
    [InlineData("prism", "sides=6 edgeMm=20 heightMm=10", 10, 40)] // a hexagon is two edges wide
    [InlineData("dome", "diameterMm=80", 40, 80)]
    public void The_greatest_width_counts_whichever_way_it_lies(string shape, string dimensions, double zMm, double acrossMm) =>
        Levelness.AcrossMm(HandbookVolumeTests.Mould(shape, dimensions), zMm).ShouldBe(acrossMm, 1e-6);

    [Fact]
    public void The_tilt_allowed_keeps_the_line_just_within_what_is_visible()
    {
        Levelness.MostTiltDegrees(150).ShouldBe(0.19098, 1e-5); // atan(0.5/150)
        Levelness.RunOffMm(150, Levelness.MostTiltDegrees(150, 0.2)).ShouldBeNear(0.2);
        Levelness.MostTiltDegrees(0).ShouldBe(Levelness.SteepestDegrees);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(90)]
    [InlineData(double.NaN)]
    public void A_tilt_that_is_none_is_refused(double degrees) => Should.Throw<ArgumentOutOfRangeException>(() => Levelness.RunOffMm(100, degrees));
}
