using Studio.Engine.Cure;
using static Studio.Engine.Tests.Cure.Resins;
using static Studio.Engine.Tests.Cure.Sheets;

namespace Studio.Engine.Tests.Cure;

public sealed class KineticClockTests
{
    private const double Exact = 1e-9;

    // m = 1, n = 2 without vitrification: k·t = [ln((κ + α)/κ) − ln(1 − α)]/(1 + κ)² + [1/(1 − α) − 1]/(1 + κ), by partial fractions
    private static double ClosedForm(double kappa, double a) =>
        ((Math.Log((kappa + a) / kappa) - Math.Log(1 - a)) / Math.Pow(1 + kappa, 2)) + (((1 / (1 - a)) - 1) / (1 + kappa));

    // values of the cure study for α = 0.577 and 0.80, to their digits
    [Theory]
    [InlineData(0.02, 5.43, 9.04)]
    [InlineData(0.03, 4.97, 8.53)]
    [InlineData(0.04, 4.64, 8.15)]
    [InlineData(0.05, 4.37, 7.84)]
    [InlineData(0.08, 3.81, 7.14)]
    public void Steady_room_agrees_with_the_closed_form(double kappa, double atGel, double atFourFifths)
    {
        ClosedForm(kappa, 0.577).ShouldBe(atGel, 0.005);
        ClosedForm(kappa, 0.80).ShouldBe(atFourFifths, 0.005);
        var clock = Clock(NeverGlassy with { Kappa = kappa }, new RoomReading(0, 23));
        clock.Gel.AtHours!.Value.ShouldBe(ClosedForm(kappa, 0.577) / 1.2e-4 / 3600, Exact);
        foreach (var a in (double[])[0.01, 0.2, 0.577, 0.8, 0.95, 0.99])
        {
            clock.ConversionAt(ClosedForm(kappa, a) / 1.2e-4 / 3600).ShouldBe(a, Exact);
        }
    }

    // with a temperature that changes, k·t becomes the integral of k(T(t)): here by Simpson's rule on 20 000 steps a stretch
    [Fact]
    public void Day_and_night_agree_with_the_closed_form_of_the_equivalent_age()
    {
        RoomReading[] room = [.. Enumerable.Range(0, 13).Select(i => new RoomReading(6 * i, i % 2 == 0 ? 17.5 : 24))];
        var age = room.Zip(room.Skip(1)).Sum(p => Simpson(h => 3600 * NeverGlassy.RatePerS(p.First.Celsius + ((p.Second.Celsius - p.First.Celsius) * (h - p.First.Hours) / 6)), p.First.Hours, p.Second.Hours));
        var conversion = Clock(NeverGlassy, room).ConversionAt(72);
        ClosedForm(0.04, conversion).ShouldBe(age, 1e-7);
        conversion.ShouldBe(Solve(age), Exact);
    }

    // Flory and Stockmayer: 1/√((f − 1)(g − 1)) for a hardener with f = 4 hydrogens and a resin with g = 2 epoxides
    [Fact]
    public void Gel_conversion_is_that_of_Flory_and_Stockmayer() =>
        Standard.GelConversion.ShouldBe(1 / Math.Sqrt((4 - 1) * (2 - 1)), 0.0005);

    // Arrhenius: in a steady room every time without vitrification goes by the rate constants' ratio
    [Fact]
    public void Colder_room_is_later_by_the_ratio_of_the_rate_constants()
    {
        var ratio = Math.Exp(55_000 / 8.314462618 * ((1 / 286.15) - (1 / 296.15)));
        Clock(NeverGlassy, new RoomReading(0, 13)).Gel.AtHours!.Value.ShouldBe(Clock(NeverGlassy, new RoomReading(0, 23)).Gel.AtHours!.Value * ratio, 1e-8);
    }

    [Fact]
    public void Window_closes_when_the_surface_turns_glassy()
    {
        var clock = Clock(Standard, new RoomReading(0, 23));
        clock.At(clock.NextPourUntil.AtHours!.Value).GlassTransitionC.ShouldBe(23, 1e-6);
        clock.NextPourUntil.AtHours!.Value.ShouldBeGreaterThan(clock.Gel.AtHours!.Value);
        clock.NextPourUntil.AtHours!.Value.ShouldBeLessThan(clock.Demould.AtHours!.Value);
    }

    [Fact]
    public void Without_a_sheet_demould_waits_for_five_kelvin_above_the_room()
    {
        var clock = Clock(Standard, new RoomReading(0, 23));
        clock.At(clock.Demould.AtHours!.Value).GlassTransitionC.ShouldBe(28, 1e-6);
        var cold = Clock(Standard, new RoomReading(0, 8));
        cold.ConversionAt(cold.Demould.AtHours!.Value).ShouldBe(0.78, Exact);
    }

    [Theory]
    [InlineData(18)]
    [InlineData(30)]
    public void Room_at_the_sheets_temperature_gives_the_printed_hours_with_kinetics_too(double printed)
    {
        var cure = With(Standard, One(23, demould: printed, full: 4 * printed), new RoomReading(0, 23));
        cure.Demould.AtHours!.Value.ShouldBe(printed, Exact);
        cure.FullCure.AtHours!.Value.ShouldBe(4 * printed, Exact);
    }

    // the rule above all: the model may only be stricter than the sheet
    [Fact]
    public void Later_of_model_and_sheet_for_what_must_be_waited_for_and_earlier_for_the_window()
    {
        var sheet = One(23, gel: 4, from: 6, until: 40, demould: 24, full: 72);
        foreach (var c in (double[])[10, 16, 23, 28, 35])
        {
            var (both, printed) = (With(Standard, sheet, new RoomReading(0, c)), Run(sheet, new RoomReading(0, c)));
            Times(both).Zip(Times(printed)).All(t => t.First is null || t.First >= t.Second).ShouldBeTrue($"{c} °C");
            (both.NextPourUntil.AtHours <= printed.NextPourUntil.AtHours || both.NextPourUntil.AtHours == both.NextPourFrom.AtHours).ShouldBeTrue();
        }
    }

    [Fact]
    public void Cold_room_stops_the_cure_short_and_the_reason_names_the_warmth_that_finishes_it()
    {
        var cure = With(Standard, One(23, demould: 24, full: 168), new RoomReading(0, 2));
        cure.FullCure.AtHours.ShouldBeNull();
        cure.FullCure.Reason!.ShouldStartWith("The cold stops the cure short: held at 2 °C the resin turns glassy first;");
        cure.Findings.Select(f => f.Code).ShouldContain("cure-stops-short");
        var warmth = double.Parse(cure.FullCure.Reason!.Split("Kept at ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);

        // the advice, taken, passes: 90 days in the cold, then three days in that warmth
        var warmed = With(Standard, One(23, demould: 24, full: 168), new RoomReading(0, 2), new RoomReading(2160, 2), new RoomReading(2160.01, warmth), new RoomReading(2232.01, warmth), new RoomReading(2232.02, 2));
        warmed.FullCure.AtHours!.Value.ShouldBeInRange(2160, 2233);
    }

    [Fact]
    public void Resin_too_soft_for_the_room_is_told_to_be_cooled_not_warmed()
    {
        var cure = With(Standard with { GlassEndC = 24 }, Silent, new RoomReading(0, 23));
        cure.Gel.AtHours.ShouldNotBeNull();
        cure.Demould.Reason!.ShouldContain("A cooler room is needed");
    }

    [Fact]
    public void Warming_a_glassy_layer_sets_its_cure_going_again()
    {
        var cold = Clock(Standard, new RoomReading(0, 5));
        var warmed = Clock(Standard, new(0, 5), new(400, 5), new(402, 30));
        warmed.ConversionAt(400).ShouldBe(cold.ConversionAt(400), Exact);
        (cold.ConversionAt(440) - cold.ConversionAt(400)).ShouldBeLessThan(0.01);
        (warmed.ConversionAt(440) - warmed.ConversionAt(400)).ShouldBeGreaterThan(0.06);
    }

    [Fact]
    public void Clock_counts_conversion_from_the_pour()
    {
        var clock = new KineticClock(Standard, Silent, new RoomLog([new(0, 23)]), 10);
        clock.ConversionAt(10).ShouldBe(0);
        clock.ConversionAt(3).ShouldBe(0);
        clock.Gel.AtHours!.Value.ShouldBe(10 + Clock(Standard, new RoomReading(0, 23)).Gel.AtHours!.Value, Exact);
        clock.Curve(5).ShouldBeEmpty();
        clock.Curve(34, 25).Select(p => p.Hours).ShouldBe(Enumerable.Range(10, 25).Select(h => (double)h), Exact);
    }

    [Fact]
    public void Kinetics_that_cannot_be_are_refused_by_field() =>
        Should.Throw<ArgumentException>(() => With(Standard with { Kappa = 0, GelConversion = 1 }, Silent, new RoomReading(0, 23)))
            .Message.ShouldSatisfyAllConditions(m => m.ShouldContain("kinetics.kappa"), m => m.ShouldContain("kinetics.gelConversion"));

    private static LayerCure With(Kinetics kinetics, CureSheet sheet, params RoomReading[] room) =>
        CureClock.Run([new("1", sheet, 0) { Kinetics = kinetics }], room, double.PositiveInfinity).Layers[0];

    private static double?[] Times(LayerCure cure) => [cure.Gel.AtHours, cure.NextPourFrom.AtHours, cure.Demould.AtHours, cure.FullCure.AtHours];

    private static double Solve(double age)
    {
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 200; i++)
        {
            var a = (low + high) / 2;
            (low, high) = ClosedForm(0.04, a) < age ? (a, high) : (low, a);
        }

        return low;
    }

    private static double Simpson(Func<double, double> f, double a, double b)
    {
        const int steps = 20_000;
        var h = (b - a) / steps;
        return h / 6 * Enumerable.Range(0, steps).Sum(i => f(a + (h * i)) + (4 * f(a + (h * (i + 0.5)))) + f(a + (h * (i + 1))));
    }
}
