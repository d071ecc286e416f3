using Studio.Engine.Cure;

namespace Studio.Engine.Tests.Cure;

public sealed class BlushTests
{
    // calcipedia.org/calculators/dew-point-calculator: Magnus with 17.625 and 243.04 °C, recomputed
    [Fact]
    public void Dew_point_of_half_damp_air_at_25_degrees() => DewPoint.Celsius(25, 50).ShouldBe(13.86, 0.02);

    // assignmentexpert 86009: Magnus with 17.27 and 237.7 °C
    [Fact]
    public void Dew_point_by_the_older_coefficients() => DewPoint.OlderMagnus.Of(22, 78).ShouldBe(17.98, 0.02);

    [Fact]
    public void Saturated_air_is_at_its_dew_point() => DewPoint.Celsius(18.5, 100).ShouldBe(18.5, 1e-12);

    [Fact]
    public void Dew_point_outside_its_range_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => DewPoint.Celsius(20, 0));
        Should.Throw<ArgumentOutOfRangeException>(() => DewPoint.Celsius(20, 101));
        Should.Throw<ArgumentOutOfRangeException>(() => DewPoint.Celsius(double.NaN, 50));
    }

    // 3 K: coating practice, ISO 8502-4. 25 °C at 50 % has its dew point at 13.86 °C
    [Theory]
    [InlineData(16.8, true)]
    [InlineData(16.9, false)]
    public void Cold_surface_near_the_dew_point_is_warned_of(double surfaceC, bool warned) =>
        Blush.Doubts(25, 50, surfaceC).Select(f => f.Code).Contains("near-dew-point").ShouldBe(warned);

    [Fact]
    public void Air_damper_than_the_sheet_allows_is_warned_of()
    {
        Blush.Doubts(22, 71, maxHumidityPercent: 70).Single().Code.ShouldBe("too-damp");
        Blush.Doubts(22, 70, maxHumidityPercent: 70).ShouldBeEmpty();
        Blush.Doubts(22, 70).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(20, -1)]
    [InlineData(20, 0)]
    [InlineData(20, 140)]
    [InlineData(20, double.NaN)]
    [InlineData(85, 50)]
    public void Reading_that_cannot_be_is_said_and_not_used(double airC, double percent) =>
        Blush.Doubts(airC, percent, maxHumidityPercent: 60).Single().Code.ShouldBe("humidity-implausible");
}
