using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>The section a page draws: its shape is the mould's own, its temperatures are those of the run.</summary>
public sealed class HeatSectionTests
{
    private static readonly Kinetics Resin = new() { RateAt23CPerS = 4e-5, Kappa = 0.04, ActivationJPerMol = 57_000, HeatJPerKg = 380_000, GlassEndC = 55 };

    [Theory]
    [InlineData(false, 4, 75)] // the apothem
    [InlineData(true, 4, 82.5)] // the preview's cone: 1.10 x the half width (the study)
    [InlineData(false, 6, 75)]
    public void Section_runs_from_the_middle_to_the_outer_face(bool preview, double sides, double half)
    {
        var section = Run(preview, sides, [1]).Section.ShouldNotBeNull();
        section.XMm.Length.ShouldBe(section.Across * section.Up);
        section.ZMm.Length.ShouldBe(section.XMm.Length);
        section.CellLayer.Length.ShouldBe((section.Across - 1) * (section.Up - 1));
        for (var row = 0; row < section.Up; row++)
        {
            section.XMm[row * section.Across].ShouldBe(0);
            section.ZMm.Skip(row * section.Across).Take(section.Across).Distinct().ShouldHaveSingleItem();
        }

        section.ZMm[0].ShouldBe(-10, 1e-9);
        section.ZMm[^1].ShouldBe(150, 1e-9);
        section.XMm[^1].ShouldBe(half + 10, 0.1);
    }

    [Fact]
    public void Cells_say_what_fills_them()
    {
        var section = Run(false, 4, [1]).Section.ShouldNotBeNull();
        int Cell(double x, double z) => Enumerable.Range(0, section.CellLayer.Length).Where(c => Holds(section, c, x, z)).Select(c => section.CellLayer[c]).First();
        Cell(1, -5).ShouldBe(-1); // floor
        Cell(1, 20).ShouldBe(0);
        Cell(1, 60).ShouldBe(1);
        Cell(1, 120).ShouldBe(-2); // never filled
        Cell(70, 140).ShouldBe(-2);
        Cell(78, 145).ShouldBe(-1); // wall above the fill
    }

    [Fact]
    public void Pictures_come_in_order_and_leave_empty_what_is_not_poured()
    {
        var outcome = Run(false, 4, [12, 2, 0, 10, 15, 20, -1, 40, double.NaN]);
        outcome.Pictures.Select(p => p.AtHours).ShouldBe([0, 2, 10, 12, 15, 20]);
        var section = outcome.Section!;
        foreach (var picture in outcome.Pictures)
        {
            var poured = picture.AtHours >= 10 ? 80.0 : 40; // the picture at the pour shows what is poured
            for (var n = 0; n < section.XMm.Length; n++)
            {
                var onWall = section.XMm[n] >= Half(section.ZMm[n]) - 1e-6;
                float.IsNaN(picture.Celsius[n]).ShouldBe(!onWall && section.ZMm[n] > poured + 1e-6, $"{picture.AtHours} h at {section.XMm[n]}, {section.ZMm[n]}");
            }
        }

        outcome.Pictures[0].Celsius.Where(c => !float.IsNaN(c)).ShouldAllBe(c => c == 23);
    }

    [Fact]
    public void Hottest_of_a_picture_is_the_curves_hottest_at_that_hour()
    {
        var plain = Run(false, 4, []);
        var outcome = Run(false, 4, plain.Layers[1].Curve.Select(m => 10 + m.AfterHours));
        outcome.Layers[1].PeakCelsius.ShouldBe(plain.Layers[1].PeakCelsius); // pictures do not change the run
        plain.Section.ShouldBeNull();
        foreach (var (picture, moment) in outcome.Pictures.Zip(outcome.Layers[1].Curve))
        {
            // the hottest point of a pyramid is on its middle line; the curve looks at the second layer alone
            var layer = Enumerable.Range(0, outcome.Section!.ZMm.Length).Where(n => outcome.Section.ZMm[n] > 40 - 1e-9 && !float.IsNaN(picture.Celsius[n]));
            ((double)layer.Max(n => picture.Celsius[n])).ShouldBe(moment.HottestC, 2e-4);
        }
    }

    [Fact]
    public void Run_that_nobody_waits_for_ends()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var (input, mould) = Input(4, []);
        Should.Throw<OperationCanceledException>(() => HeatRun.Run(input, mould, stop: stop.Token));
    }

    private static double Half(double z) => 5 + (70 * Math.Max(0, z) / 150);

    private static bool Holds(HeatSection section, int cell, double x, double z)
    {
        var (row, i) = (cell / (section.Across - 1), cell % (section.Across - 1));
        var a = (row * section.Across) + i;
        var b = a + section.Across;
        var up = (z - section.ZMm[a]) / (section.ZMm[b] - section.ZMm[a]);
        double Line(int k) => section.XMm[a + k] + (up * (section.XMm[b + k] - section.XMm[a + k]));
        return up is >= 0 and < 1 && x >= Line(0) && x < Line(1);
    }

    private static HeatOutcome Run(bool preview, double sides, IEnumerable<double> hours)
    {
        var (input, mould) = Input(sides, hours);
        return HeatRun.Run(input, mould, new HeatFineness(4, 4, 2), preview, stop: TestContext.Current.CancellationToken);
    }

    private static (HeatInput Input, MouldBody Mould) Input(double sides, IEnumerable<double> hours)
    {
        var spec = sides == 4
            ? new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 10 })
            : new MouldSpec("prism", new Dictionary<string, double> { ["sides"] = sides, ["edgeMm"] = 150 / Math.Sqrt(3), ["heightMm"] = 150 });
        return (new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10 },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, 23)],
            Layers = [new HeatLayer(Resin, 1100, 1900, 0.19, 0, 40, 0, 23), new HeatLayer(Resin, 1100, 1900, 0.19, 40, 80, 10, 23)],
            UntilHours = 20,
            PictureHours = [.. hours],
        }, MouldShapes.Make(spec).Value);
    }
}
