using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

public sealed class MeasuredMouldTests
{
    // volume [ml], area [ml/mm] and moment [ml mm] by scipy 1.10.1 (Debian 12), PchipInterpolator with its derivative and integral
    [Theory]
    [InlineData("0:0 10:20 20:60", 7.4, 13.350586666666668, 2.4257333333333335, 55.90326711111113)]
    [InlineData("0:0 10:20 20:60", 20, 60, 5, 733.3333333333334)]
    [InlineData("0:0 4:1 10:30 25:31 26:90 60:95", 22.2, 30.625469758181858, 0.08689527152686388, 213.96410588609)]
    [InlineData("0:0 4:1 10:30 25:31 26:90 60:95", 30, 91.52072009049579, 0.3353154075943537, 1769.8469684920897)]
    [InlineData("0:0 5:50 9:51", 3.33, 42.37053745680629, 8.20714402268761, 63.88480522834753)]
    [InlineData("0:0 5:50 9:51", 7.29, 50.80519236272905, 0.22258257526177996, 98.70287718926929)]
    [InlineData("12:40", 4.44, 14.8, 3.3333333333333335, 32.856)] // two points are a straight line
    public void Between_readings_it_agrees_with_scipy(string fill, double z, double ml, double mlPerMm, double moment)
    {
        var mould = Made(fill);
        mould.VolumeMl(z).ShouldBe(ml, ml * 1e-12);
        (mould.AreaMm2(z) / 1000).ShouldBe(mlPerMm, mlPerMm * 1e-10);
        mould.MomentMlMm(z).ShouldBe(moment, moment * 1e-10);
    }

    [Fact]
    public void Every_reading_comes_back_as_it_was_taken()
    {
        var mould = Made("0:0 4:1 10:30 25:31 26:90 60:95");
        foreach (var (z, ml) in new[] { (4.0, 1.0), (10, 30), (25, 31), (26, 90), (60, 95) })
        {
            mould.VolumeMl(z).ShouldBeNear(ml);
            mould.HeightAtMl(ml).ShouldBe(z, 1e-5);
        }
    }

    [Theory]
    [InlineData("0:0", "readings")]
    [InlineData("", "readings")]
    [InlineData("0:5 10:20", "readings[0].volumeMl")]
    [InlineData("10:0 20:5", "readings[0].volumeMl")]
    [InlineData("10:20 10:30", "readings[1].heightMm")]
    [InlineData("10:20 20:19", "readings[1].volumeMl")]
    [InlineData("10:20 20:NaN", "readings[1].volumeMl")]
    public void A_fill_that_cannot_be_is_refused_at_its_reading(string fill, string path)
    {
        var made = MouldShapes.Make(Spec(fill));
        made.Ok.ShouldBeFalse();
        made.Errors.ShouldHaveSingleItem().Path.ShouldBe("mould." + path);
    }

    [Fact]
    public void Water_scales_every_volume_and_moves_no_line()
    {
        var drawn = MouldShapes.Make(new MouldSpec("cuboid", new Dictionary<string, double> { ["widthMm"] = 100, ["depthMm"] = 50, ["heightMm"] = 60 })).Value;
        var scaled = MouldShapes.Make(new MouldSpec("cuboid", new Dictionary<string, double> { ["widthMm"] = 100, ["depthMm"] = 50, ["heightMm"] = 60 }) { VolumeFactor = 1.03 }).Value;
        scaled.VolumeMl(20).ShouldBeNear(1.03 * drawn.VolumeMl(20));
        scaled.MomentMlMm(20).ShouldBeNear(1.03 * drawn.MomentMlMm(20));
        scaled.HeightAtMl(103).ShouldBe(20, 1e-9);
        (scaled.FaceMarkMm(20), scaled.HeightMm, scaled.ClearanceMm(90, 40, 20)).ShouldBe((20, 60, 5));
    }

    private static MouldBody Made(string fill) => MouldShapes.Make(Spec(fill)).Value;

    private static MouldSpec Spec(string fill) => new("measured", new Dictionary<string, double>())
    {
        Readings = [.. fill.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(r => r.Split(':'))
            .Select(r => new FillReading(double.Parse(r[0], System.Globalization.CultureInfo.InvariantCulture), double.Parse(r[1], System.Globalization.CultureInfo.InvariantCulture)))],
    };
}
