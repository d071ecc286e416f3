using CsCheck;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Parts;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.Parts;

/// <summary>The four sides with butt joints. Worked by hand unless another source stands beside the check.</summary>
public sealed class BoxPartsTests
{
    private static readonly Gen<(FormerSpec Former, CutSpec Cut)> Boxes = Gen.Select(
        Gen.Double[20, 80], Gen.Double[20, 80], Gen.Double[90, 140], Gen.Double[1, 9], Gen.Bool, Gen.Double[0, 1],
        (w, d, from, t, width, floor) => (
            new FormerSpec { OuterWidthMm = w, OuterDepthMm = d, FromMm = from, WallMm = t, FloorMm = from + (floor * (150 - from)) },
            new CutSpec { ProudMm = 0, Through = width ? Through.Width : Through.Depth }));

    [Theory]
    [InlineData(Through.Width, 80, 54)] // 60 − 2 × 3
    [InlineData(Through.Depth, 74, 60)] // 80 − 2 × 3
    public void The_pair_that_runs_through_is_as_long_as_the_box(string through, double front, double ends)
    {
        var plan = PartsCalculation.Run(Box.Input(new CutSpec { ProudMm = 1, Through = through }));
        (plan.Part("front-and-back").WidthMm, plan.Part("front-and-back").Count).ShouldBe((front, 2));
        (plan.Part("ends").WidthMm, plan.Part("ends").Count).ShouldBe((ends, 2));
        plan.Parts.ShouldAllBe(p => p.HeightMm == 41); // 150 − 110, and 1 mm to plane off
    }

    [Fact]
    public void Assembled_the_parts_are_the_box_and_their_volume_is_what_the_layers_leave_out() => Boxes.Sample(b =>
    {
        var plan = PartsCalculation.Run(new PartsInput { Mould = Box.Pyramid(), Former = b.Former, Cut = b.Cut });
        var (front, ends, t) = (plan.Part("front-and-back"), plan.Part("ends"), b.Former.WallMm!.Value);
        var (width, depth) = b.Cut.Through == Through.Width ? (front.WidthMm, ends.WidthMm + (2 * t)) : (front.WidthMm + (2 * t), ends.WidthMm);
        width.ShouldBe(b.Former.OuterWidthMm, 1e-12);
        depth.ShouldBe(b.Former.OuterDepthMm, 1e-12);

        var cut = 2 * t * ((front.WidthMm * front.HeightMm) + (ends.WidthMm * ends.HeightMm)) / 1000;
        cut.ShouldBe(plan.Box!.WallMl, 1e-9);
        DisplacedByWallsMl(b.Former).ShouldBe(cut, 1e-9);
    });

    [Fact]
    public void The_floor_plate_is_the_inside_of_the_box() =>
        (PartsCalculation.Run(Box.Input(new CutSpec { FloorPlate = true })).Part("floor") is { WidthMm: 74, HeightMm: 54, Count: 1 }).ShouldBeTrue();

    [Fact]
    public void Another_sheet_than_the_wall_is_pointed_at_and_cut_by_its_own_thickness()
    {
        var plan = PartsCalculation.Run(Box.Input(new CutSpec { SheetMm = 4 }));
        plan.Part("ends").WidthMm.ShouldBe(52);
        plan.Codes().ShouldContain("sheet-not-wall");
    }

    [Fact]
    public void A_box_that_is_open_below_says_what_it_must_stand_on()
    {
        PartsCalculation.Run(Box.Input()).Codes().ShouldContain("box-open-below");
        PartsCalculation.Run(Box.Input(new CutSpec { FloorPlate = true })).Codes().ShouldBeEmpty();
    }

    [Fact]
    public void Diagonals_of_a_square_box_are_pythagoras()
    {
        // 3-4-5: 60 by 80 gives 100
        PartsCalculation.Run(Box.Input()).Box!.DiagonalMm.ShouldBe(100, 1e-12);
    }

    [Fact]
    public void A_leaning_box_leans_by_what_its_diagonals_say()
    {
        // a parallelogram on a base of 80 whose far side is pushed 3 mm aside: diagonals from its corners
        var (one, other) = (Math.Sqrt((83 * 83) + (60 * 60)), Math.Sqrt((77 * 77) + (60 * 60)));
        Squareness.LeanMm(80, one, other).ShouldBe(3, 1e-12);
        Squareness.LeanMm(80, 100, 100).ShouldBe(0);

        // for 1 mm between the diagonals: 100 · 1 / (2 · 80) = 0.625 mm
        PartsCalculation.Run(Box.Input()).Box!.LeanPerMm.ShouldBe(0.625, 1e-12);
    }

    [Theory]
    [InlineData(100.4, 99.6, "square")] // 0.8 · 0.625 = 0.5 mm
    [InlineData(101, 99, "out-of-square")] // 2 · 0.625 = 1.25 mm
    [InlineData(102, 102, "diagonal-astray")]
    public void Measured_diagonals_are_told_apart(double one, double other, string code) =>
        PartsCalculation.Run(Box.Input(new CutSpec { OneDiagonalMm = one, OtherDiagonalMm = other })).Codes()[0].ShouldBe(code);

    [Fact]
    public void A_box_that_pokes_through_a_face_is_refused_with_the_place()
    {
        var plan = PartsCalculation.Run(Box.Input() with { Former = Box.Former with { OuterWidthMm = 130 } });
        plan.Box.ShouldBeNull();
        plan.Parts.ShouldBeEmpty();
        plan.Errors.ShouldHaveSingleItem().Path.ShouldBe("former.outerWidthMm");
        plan.Errors[0].Message.ShouldContain("pokes through");
    }

    [Fact]
    public void A_solid_former_is_not_cut_from_sheet_but_its_hollow_can_be_covered()
    {
        var plan = PartsCalculation.Run(Box.Input(cover: new CoverSpec { SheetMm = 4 }) with { Former = Box.Former with { Solid = true, WallMm = null } });
        plan.Box.ShouldBeNull();
        plan.Parts.ShouldHaveSingleItem().Key.ShouldBe("cover");
        (plan.Cover!.OpeningWidthMm, plan.Cover.OpeningDepthMm).ShouldBe((80, 60));
        plan.Cavity.ShouldBe(new CavityPlan(80, 60, 40));
    }

    [Fact]
    public void Every_field_that_cannot_be_used_is_named_and_the_rest_stands()
    {
        var plan = PartsCalculation.Run(Box.Input(new CutSpec { KerfMm = -1, SheetWidthMm = 0 }, new CoverSpec { PilotMm = double.NaN }));
        plan.Errors.Select(e => e.Path).ShouldBe(["parts.cut.kerfMm", "parts.cut.sheetWidthMm", "parts.cover.pilotMm"]);
        plan.Box.ShouldNotBeNull();
        plan.Cover.ShouldBeNull();
        PartsCalculation.Run(new PartsInput()).Errors.ShouldBeEmpty();
    }

    // the layers' own figure for one layer from bottom to rim, less the room above the floor
    private static double DisplacedByWallsMl(FormerSpec former)
    {
        var result = LayersCalculation.Run(new LayersInput
        {
            Mould = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150 }),
            Resins = new Dictionary<string, ResinSpec> { ["r"] = new() { DensityGPerMl = 1.1, Mix = new MixSpec { PartsA = 2, PartsB = 1, By = "weight" } } },
            Layers = [new LayerSpec { Name = "all", Resin = "r", ToMm = 150 }],
            Former = former,
        }).Value;
        var room = (former.OuterWidthMm - (2 * former.WallMm!.Value)) * (former.OuterDepthMm - (2 * former.WallMm.Value)) * (150 - former.FloorMm!.Value) / 1000;
        return result.Layers[0].DisplacedMl - room;
    }
}
