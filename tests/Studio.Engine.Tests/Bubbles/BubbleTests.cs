using Studio.Engine.Bubbles;
using Studio.Engine.Cure;

namespace Studio.Engine.Tests.Bubbles;

public sealed class BubbleTests
{
    private const double Psi50 = 50 * Squeeze.BarPerPsi;

    // thoughtco.com/boyles-law-example-problem-607551
    [Fact]
    public void Two_litres_at_three_atmospheres_are_twelve_at_a_half() => Squeeze.Volume(2, 3, 0.5).ShouldBe(12, 1e-9);

    // ck12.org, Boyle's law: 425 ml at 387 kPa become 1.75 l at 93.99 kPa
    [Fact]
    public void Schoolbook_gas_at_its_lower_pressure() => Squeeze.Volume(425, 387, 93.99).ShouldBe(1750, 0.5);

    // Boyle with absolute pressures: 14.696/(14.696 + 50), recomputed; a gauge pressure taken for absolute would be the trap
    [Fact]
    public void Bubble_at_50_psi_gauge_keeps_under_a_quarter_of_its_volume()
    {
        Squeeze.VolumeRatio(Psi50).ShouldBe(0.2271547, 0.2271547 * 1e-5);
        Squeeze.DiameterRatio(Psi50).ShouldBe(0.6101556, 0.6101556 * 1e-5);
    }

    // penturners.org/threads 119665: about 20 % smaller for each doubling
    [Fact]
    public void Twice_the_absolute_pressure_leaves_four_fifths_of_the_diameter()
    {
        Squeeze.VolumeRatio(Squeeze.AtmosphereBar).ShouldBe(0.5, 1e-12);
        Squeeze.DiameterRatio(Squeeze.AtmosphereBar).ShouldBe(0.7937, 1e-4);
    }

    [Fact]
    public void Pressure_below_nothing_is_refused() => Should.Throw<ArgumentOutOfRangeException>(() => Squeeze.VolumeRatio(-1.1));

    // sarthaks.com/1574412: a bubble of 0.1 mm radius rises at 0.35 cm/s in a liquid of 6.22e-3 Pa s
    [Fact]
    public void Schoolbook_bubble_rises_by_Stokes()
    {
        Rise.StiffMmPerS(0.2, 0.00622, 1000, gravity: 9.8).ShouldBe(3.5, 3.5 * 1e-3);
        Rise.Reynolds(0.2, 3.5, 0.00622, 1000).ShouldBeLessThan(1);
    }

    // facts of the trade, recomputed: 0.5 mm in 500 mPa s and 1100 kg/m³ rises 0.30 (stiff) to 0.45 mm/s (clean, Hadamard and Rybczynski, calctool.org)
    [Fact]
    public void Half_millimetre_bubble_takes_two_to_three_minutes_for_50_mm()
    {
        var (stiff, clean) = (Rise.StiffMmPerS(0.5, 0.5, 1100), Rise.CleanMmPerS(0.5, 0.5, 1100));
        stiff.ShouldBe(0.30, 0.005);
        clean.ShouldBe(0.45, 0.005);
        (clean / stiff).ShouldBe(1.5, 1e-12);
        (50 / clean / 60).ShouldBe(1.9, 0.1);
        (50 / stiff / 60).ShouldBe(2.8, 0.1);
    }

    [Fact]
    public void Thicker_and_smaller_are_slower_by_viscosity_and_square()
    {
        (Rise.StiffMmPerS(0.5, 0.5, 1100) / Rise.StiffMmPerS(0.5, 5, 1100)).ShouldBe(10, 1e-9);
        (Rise.StiffMmPerS(0.5, 5, 1100) / Rise.StiffMmPerS(0.1, 5, 1100)).ShouldBe(25, 1e-9);
    }

    // by hand: 1 Pa s that doubles every hour for two hours: ∫ 2^(−t) dt = (1 − 1/4)/ln 2 = 1.08202 h = 3895.3 s
    [Fact]
    public void Fluidity_of_a_resin_that_doubles_its_viscosity_every_hour() =>
        Thickening.Doubling(1, 1, 2).FluidityPerPa.ShouldBe(3600 * 0.75 / Math.Log(2), 1e-9);

    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.05, false)]
    public void Bubble_leaves_a_layer_or_stays(double diameterMm, bool leaves)
    {
        var escape = Escape.Of(diameterMm, 20, 1100, Thickening.Doubling(0.5, 40.0 / 60, 4));
        escape.Leaves.ShouldBe(leaves);
        Escape.Of(escape.SmallestMm, 20, 1100, Thickening.Doubling(0.5, 40.0 / 60, 4)).RiseMm.ShouldBe(20, 1e-9);
        escape.Message.ShouldContain(leaves ? "leaves this layer" : "stays in this layer");
    }

    // steady thin liquid: depth = speed × time, by hand with 0.5 mm: 0.29962 mm/s × 100 s
    [Fact]
    public void Rise_of_a_liquid_that_does_not_thicken_is_speed_times_time() =>
        Escape.Of(0.5, 50, 1100, new Thickening(100 / 0.5, 100.0 / 3600)).RiseMm.ShouldBe(100 * Rise.StiffMmPerS(0.5, 0.5, 1100), 1e-9);

    // study: a pot life ends at a conversion of about 0.21, where Castro and Macosko's viscosity has doubled
    [Fact]
    public void Viscosity_has_doubled_at_the_end_of_the_pot_life() => Thickening.At(1, 0.21, 0.577).ShouldBe(2, 0.05);

    [Fact]
    public void Slower_cure_in_a_cold_room_lets_smaller_bubbles_out_at_the_same_viscosity()
    {
        var (warm, cold) = (Along(23), Along(13));
        warm.GelHours.ShouldBeLessThan(cold.GelHours);
        Escape.Of(0.1, 20, 1100, cold).SmallestMm.ShouldBeLessThan(Escape.Of(0.1, 20, 1100, warm).SmallestMm);
        static Thickening Along(double c) => Thickening.Along(0.5, new KineticClock(Cure.Resins.Standard, Cure.Resins.Silent, new RoomLog([new(0, c)]), 0)).ShouldNotBeNull();
    }
}
