using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.Layers;

public sealed class PieceDoubtsTests
{
    [Fact]
    public void A_full_cube_topples_at_forty_five_degrees() // the centre over the edge: atan(a/2 : a/2)
    {
        var (input, result, mould) = Cast("cuboid", new() { ["widthMm"] = 80, ["depthMm"] = 80, ["heightMm"] = 80 }, 80);
        var standing = Stability.Of(mould, result).ShouldNotBeNull();
        standing.TiltDegrees.ShouldBeNear(45);
        standing.CentreUpMm.ShouldBeNear(40);
        PieceDoubts.Of(input, result, mould).ShouldBeEmpty();
    }

    [Fact]
    public void A_pyramid_stands_on_its_base_with_its_centre_a_quarter_up() // centroid of a pyramid: h/4 above the base (Machinery's Handbook, centre of gravity of solids)
    {
        var (_, result, mould) = Cast("pyramid", new() { ["baseMm"] = 150, ["heightMm"] = 150 }, 150);
        var standing = Stability.Of(mould, result).ShouldNotBeNull();
        standing.TurnedOver.ShouldBeTrue();
        standing.CentreUpMm.ShouldBeNear(37.5);
        standing.ReachMm.ShouldBeNear(75);
        standing.TiltDegrees.ShouldBeNear(Math.Atan(2) * 180 / Math.PI);
    }

    [Fact]
    public void A_flagpole_is_called_unsafe() // atan(5 : 100) = 2.86 degrees
    {
        var (input, result, mould) = Cast("prism", new() { ["sides"] = 4, ["edgeMm"] = 10, ["heightMm"] = 200 }, 200);
        var doubt = PieceDoubts.Of(input, result, mould).ShouldHaveSingleItem();
        doubt.Code.ShouldBe("topples");
        doubt.Message.ShouldContain("2.9°");
    }

    [Fact]
    public void A_ball_has_nothing_to_stand_on()
    {
        var (input, result, mould) = Cast("sphere", new() { ["diameterMm"] = 60, ["openingDiameterMm"] = 0.001 }, 60);
        PieceDoubts.Of(input, result, mould).Select(d => d.Code).ShouldBe(["topples"]);
        Stability.Of(mould, result)!.TiltDegrees.ShouldBeLessThan(0.01);
    }

    [Fact]
    public void Brass_in_the_second_layer_drops_through_a_soft_first() // 17 g of brass at 8.5 g/ml take 2 ml; in resin of 1.1 they press with 17 − 2.2 = 14.8 gf
    {
        var (input, result, mould) = Cast("cuboid", new() { ["widthMm"] = 80, ["depthMm"] = 80, ["heightMm"] = 80 }, 20, 60);
        input = input with { Layers = [input.Layers[0] with { Placed = [Nail] }, input.Layers[1] with { Placed = [Nail, new() { Name = "amber", MassG = 2, DensityGPerMl = 1.11 }] }] };
        var doubts = PieceDoubts.Of(input, result, mould);
        doubts.Select(d => (d.Code, d.Path)).ShouldBe([("drops", "layers[1].placed[0]"), ("drifts", "layers[1].placed[1]")]);
        doubts[0].Message.ShouldContain("14.8 gf");
    }

    [Fact]
    public void The_thinnest_wall_of_a_pyramid_is_where_the_former_starts()
    {
        var mould = MouldShapes.Make(new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 6, ["heightMm"] = 4 })).Value;
        var thinnest = PieceDoubts.Thinnest(new FormerSpec { OuterWidthMm = 2, OuterDepthMm = 2, FromMm = 2, WallMm = 0.1 }, mould).ShouldNotBeNull();
        thinnest.AtMm.ShouldBe(2);
        thinnest.WallMm.ShouldBeNear((1.5 - 1) * 0.8); // 3-4-5 along the middle of a face
    }

    [Fact]
    public void A_hollow_outline_carries_across_its_hull()
    {
        PlanPoint[] horseshoe = [new(-10, -10), new(10, -10), new(10, 10), new(5, 10), new(5, -5), new(-5, -5), new(-5, 10), new(-10, 10)];
        PlanShape.Reach(horseshoe, new(0, 0)).ShouldBeNear(10);
        PlanShape.Reach(horseshoe, new(30, 0)).ShouldBe(0);
        PlanShape.AreaMm2(horseshoe).ShouldBeNear(400 - 150);
    }

    private static PlacedSpec Nail => new() { Name = "hive nail", MassG = 17, DensityGPerMl = 8.5 };

    private static (LayersInput Input, LayersResult Result, MouldBody Mould) Cast(string shape, Dictionary<string, double> sizes, params double[] tops)
    {
        var spec = new MouldSpec(shape, sizes);
        var input = new LayersInput
        {
            Mould = spec,
            Resins = new Dictionary<string, ResinSpec> { ["clear"] = new() { DensityGPerMl = 1.1, Mix = new MixSpec { PartsA = 2, PartsB = 1, By = "weight" } } },
            Layers = [.. tops.Select((t, i) => new LayerSpec { Name = $"layer {i + 1}", Resin = "clear", ToMm = t })],
        };
        return (input, LayersCalculation.Run(input).Value, MouldShapes.Make(spec).Value);
    }
}
