using CsCheck;
using Studio.Engine.Parts;

namespace Studio.Engine.Tests.Parts;

public sealed class BoxFitTests
{
    private static readonly CavityPlan Cavity = new(74, 54, 40);

    [Fact]
    public void Boxes_cut_from_a_block_go_back_into_it() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8], Gen.Int[0, 5], Gen.Shuffle(new[] { 0, 1, 2, 3 })).Sample((a, b, c, turn, order) =>
        {
            // guillotine cuts of 70 × 50 × 30: by x, then the left by y, then the back of it by z; turned at random and shuffled
            var (x, y, z) = (70 * a, 50 * b, 30 * c);
            BoxSize[] boxes = [new(70 - x, 50, 30), new(x, y, 30), new(x, 50 - y, z), new(x, 50 - y, 30 - z)];
            var places = BoxFit.Into([.. order.Select(i => Turned(boxes[i], turn))], new BoxSize(70, 50, 30));
            places.ShouldNotBeNull();
            Sound(places, new BoxSize(70, 50, 30));
        });

    [Fact]
    public void Three_sticks_that_interlock_are_found()
    {
        // three 1 × 1 × 2 sticks, mutually crosswise, in a cube of 2 with two free corners: full but for 2 of 8
        var places = BoxFit.Into([new(2, 1, 1), new(1, 2, 1), new(1, 1, 2)], new BoxSize(2, 2, 2));
        places.ShouldNotBeNull();
        Sound(places, new BoxSize(2, 2, 2));
        BoxFit.Into([new(2, 1, 1), new(1, 2, 1), new(1, 1, 2)], new BoxSize(2, 2, 1)).ShouldBeNull();
    }

    [Fact]
    public void What_is_short_is_said_in_millimetres()
    {
        // two of 50 × 40 × 25 and 1 mm all round are 52 × 42 × 27 each: on edge behind one another they are 52 wide, 54 deep and 42 high
        var fitting = new FittingSpec { Name = "Holder", WidthMm = 50, DepthMm = 40, HeightMm = 25 };
        var plan = PartsCalculation.Run(Box.Input() with { Fittings = [fitting, fitting] });
        plan.Fit!.Fits.ShouldBeFalse();
        plan.Findings.Single(f => f.Code == "fittings-do-not-fit").Message.ShouldContain("2 mm higher, or 10 mm wider"); // 42 − 40; 2 × 42 − 74
        BoxFit.Least([new(52, 42, 27), new(52, 42, 27)], new BoxSize(74, 54, 40), 2).ShouldBe(42);
    }

    [Fact]
    public void One_that_is_too_large_however_it_is_turned_is_named()
    {
        var plan = PartsCalculation.Run(Box.Input() with { Fittings = [new FittingSpec { Name = "Long holder", WidthMm = 30, DepthMm = 20, HeightMm = 90 }] });
        var finding = plan.Findings.Single(f => f.Code == "fitting-too-large");
        finding.Path.ShouldBe("parts.fittings[0]");
        finding.Message.ShouldContain("18 mm too large"); // 92 − 74
    }

    [Fact]
    public void Each_stands_where_it_is_said_with_its_clearance()
    {
        var plan = PartsCalculation.Run(Box.Input() with { Fittings = [new FittingSpec { Name = "A", WidthMm = 40, DepthMm = 30, HeightMm = 20, ClearanceMm = 2 }] });
        plan.Cavity.ShouldBe(Cavity);
        plan.Fit!.Places.ShouldBe([new FittingPlace(0, "A", 2, 2, 2, 40, 30, 20)]);
    }

    [Fact]
    public void Four_boxes_that_almost_fit_are_answered_within_a_breath()
    {
        BoxSize[] boxes = [new(41, 27, 21), new(38, 29, 19), new(35, 26, 22), new(33, 31, 23)];
        var watch = System.Diagnostics.Stopwatch.StartNew();
        _ = BoxFit.Into(boxes, new BoxSize(74, 54, 40));
        for (var axis = 0; axis < 3; axis++)
        {
            _ = BoxFit.Least(boxes, new BoxSize(74, 54, 40), axis);
        }

        watch.Elapsed.TotalSeconds.ShouldBeLessThan(3);
        TestContext.Current.TestOutputHelper?.WriteLine($"{watch.ElapsedMilliseconds} ms");
    }

    private static BoxSize Turned(BoxSize s, int way) => way switch
    {
        0 => s,
        1 => new(s.YMm, s.XMm, s.ZMm),
        2 => new(s.XMm, s.ZMm, s.YMm),
        3 => new(s.ZMm, s.YMm, s.XMm),
        4 => new(s.YMm, s.ZMm, s.XMm),
        _ => new(s.ZMm, s.XMm, s.YMm),
    };

    private static void Sound(IReadOnlyList<BoxPlace> places, BoxSize room)
    {
        const double Slip = 1e-5;
        places.ShouldAllBe(p => p.XMm >= 0 && p.YMm >= 0 && p.ZMm >= 0 && p.XMm + p.Size.XMm <= room.XMm + Slip && p.YMm + p.Size.YMm <= room.YMm + Slip && p.ZMm + p.Size.ZMm <= room.ZMm + Slip);
        for (var i = 0; i < places.Count; i++)
        {
            var a = places[i];
            places.Take(i).ShouldAllBe(b => new[]
            {
                b.XMm - a.XMm - a.Size.XMm, a.XMm - b.XMm - b.Size.XMm, b.YMm - a.YMm - a.Size.YMm, a.YMm - b.YMm - b.Size.YMm, b.ZMm - a.ZMm - a.Size.ZMm, a.ZMm - b.ZMm - b.Size.ZMm,
            }.Max() >= -Slip);
        }
    }
}
