using CsCheck;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

/// <summary>What every shape in the list must keep to, whatever it is; a new shape is held to it without a word here.</summary>
public sealed class MouldContractTests
{
    public static TheoryData<string> Shapes => [.. MouldShapes.All.Where(s => s.Needs is not MouldNeeds.Mesh).Select(s => s.Key)];

    public static TheoryData<string> Sized => [.. MouldShapes.All.Where(s => s.Needs is MouldNeeds.Nothing).Select(s => s.Key)];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Volume_and_moment_are_the_integrals_of_the_area(string shape) => Any(shape).Sample(
        mould =>
        {
            for (var tenth = 1; tenth <= 10; tenth++)
            {
                var z = mould.HeightMm * tenth / 10;
                mould.VolumeMl(z).ShouldBe(Simpson(mould.AreaMm2, z, shape) / 1000, mould.CapacityMl * Exact(shape));
                mould.MomentMlMm(z).ShouldBe(Simpson(y => y * mould.AreaMm2(y), z, shape) / 1000, mould.CapacityMl * mould.HeightMm * Exact(shape));
            }
        },
        iter: 100);

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Volume_and_face_mark_rise_with_height(string shape) => Any(shape).Sample(
        mould =>
        {
            for (var step = 1; step <= 20; step++)
            {
                var (low, high) = (mould.HeightMm * (step - 1) / 20, mould.HeightMm * step / 20);
                mould.VolumeMl(high).ShouldBeGreaterThan(mould.VolumeMl(low));
                (mould.FaceMarkMm(high) - mould.FaceMarkMm(low)).ShouldBeGreaterThanOrEqualTo((high - low) * (1 - 1e-9));
            }

            mould.VolumeMl(0).ShouldBe(0);
            mould.FaceMarkMm(0).ShouldBe(0);
        },
        iter: 100);

    [Theory]
    [MemberData(nameof(Sized))]
    public void Twice_the_size_holds_eight_times_as_much(string shape) => Sizes(shape).Sample(
        sizes =>
        {
            var lengths = MouldShapes.Find(shape)!.Dimensions.Where(d => d.Unit == "mm").Select(d => d.Name).ToHashSet();
            var twice = sizes.ToDictionary(s => s.Key, s => lengths.Contains(s.Key) ? 2 * s.Value : s.Value);
            Make(shape, twice).CapacityMl.ShouldBeNear(8 * Make(shape, sizes).CapacityMl);
        },
        iter: 100);

    [Theory]
    [MemberData(nameof(Shapes))]
    public void The_plan_drawn_has_the_area_computed(string shape) => Any(shape).Sample(
        mould =>
        {
            var z = mould.HeightMm * 0.6;
            var plan = mould.Outline.PlanAt(z);
            var shoelace = plan.Zip(plan.Skip(1).Append(plan[0]), (a, b) => (a.XMm * b.YMm) - (b.XMm * a.YMm)).Sum() / 2;
            shoelace.ShouldBe(mould.AreaMm2(z), mould.AreaMm2(z) * 0.002); // a circle is drawn as a polygon of 180 sides
            mould.Outline.HalfWidthMm(z).ShouldBeInRange(0, plan.Max(p => Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm))) * (1 + 1e-12));
        },
        iter: 100);

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_box_drawn_inside_the_plan_has_clearance_and_one_outside_has_none(string shape) => Any(shape).Sample(
        mould =>
        {
            var z = mould.HeightMm / 2;
            var inner = Math.Sqrt(mould.AreaMm2(z)) / 100;
            mould.ClearanceMm(inner, inner, z).ShouldBeGreaterThan(0);
            mould.ClearanceMm(50_000, 50_000, z).ShouldBeLessThan(0);
        },
        iter: 100);

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Heights_outside_the_mould_are_a_programmers_mistake(string shape) => Any(shape).Sample(
        mould =>
        {
            Should.Throw<ArgumentOutOfRangeException>(() => mould.VolumeMl(-0.1));
            Should.Throw<ArgumentOutOfRangeException>(() => mould.VolumeMl(mould.HeightMm + 0.1));
            Should.Throw<ArgumentOutOfRangeException>(() => mould.AreaMm2(double.NaN));
        },
        iter: 5);

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Every_dimension_is_labelled_and_refuses_what_lies_outside_its_range(string shape)
    {
        var kind = MouldShapes.Find(shape)!;
        kind.DisplayName.ShouldNotBeNullOrWhiteSpace();
        foreach (var dimension in kind.Dimensions)
        {
            dimension.Label.ShouldNotBeNullOrWhiteSpace();
            foreach (var outside in new[] { dimension.Max * 1.01, -1, double.NaN, double.PositiveInfinity })
            {
                dimension.Complaint(outside).ShouldNotBeNull().ShouldContain(dimension.Label);
            }

            dimension.Complaint(dimension.Max).ShouldBeNull();
            (dimension.Complaint(dimension.Min) is null).ShouldBe(!dimension.AboveMin);
        }
    }

    // the sum below is exact within a piece of polynomial only, and a fill has its knots elsewhere
    private static double Exact(string shape) => shape == "measured" ? 2e-3 : 1e-11;

    private static Gen<MouldBody> Any(string shape) => shape switch
    {
        "measured" => Gen.Select(Gen.Double[1, 40], Gen.Double[1, 400]).Array[1, 12].Select(steps => MouldShapes.Make(new MouldSpec(shape, new Dictionary<string, double>())
        {
            Readings = [.. steps.Select((_, i) => new FillReading(steps.Take(i + 1).Sum(s => s.Item1), steps.Take(i + 1).Sum(s => s.Item2)))],
        }).Value),
        _ => Sizes(shape).Select(sizes => Make(shape, sizes)),
    };

    private static MouldBody Make(string shape, Dictionary<string, double> sizes) => MouldShapes.Make(new MouldSpec(shape, sizes)).Value;

    private static Gen<Dictionary<string, double>> Sizes(string shape)
    {
        var dimensions = MouldShapes.Find(shape)!.Dimensions;
        var numbers = dimensions.Select(d => d.Whole
            ? Gen.Int[(int)d.Min, (int)d.Max].Select(i => (double)i)
            : Gen.Double[Math.Max(d.Min, d.AboveMin ? 1 : 0), Math.Min(d.Max, 400)]);
        return numbers
            .Aggregate(Gen.Const(new List<double>()), (list, next) => list.SelectMany(l => next.Select(n => (List<double>)[.. l, n])))
            .Select(values => dimensions.Zip(values).ToDictionary(p => p.First.Name, p => p.Second))
            .Select(sizes => shape == "sphere" ? sizes.ToDictionary(s => s.Key, s => s.Key == "openingDiameterMm" ? Math.Min(s.Value, sizes["diameterMm"]) : s.Value) : sizes);
    }

    // exact for cubics, so for every area that is at most quadratic even with the moment's extra z
    private static double Simpson(Func<double, double> f, double to, string shape)
    {
        var pieces = shape == "measured" ? 2048 : 64;
        var h = to / pieces;
        return Enumerable.Range(0, pieces).Sum(i => h / 6 * (f(i * h) + (4 * f((i + 0.5) * h)) + f(Math.Min((i + 1) * h, to))));
    }
}
