using NetTopologySuite.Geometries;
using Studio.Engine.Film;

namespace Studio.Engine.Tests.Film;

public sealed class NestTests
{
    private static readonly IReadOnlyList<FilmArea> Triangle = [new([new(0, 0), new(60, 80), new(-60, 80)], [])];

    [Fact]
    public void Two_triangles_interlock_upside_down()
    {
        var plan = Nest.Lay([Triangle, Triangle], 190, 82, 4);
        plan.Pages.ShouldBe(1);
        plan.Places.Select(p => p.QuarterTurns).Order().ShouldBe([0, 2]); // side by side the same way up they would need 244 mm
        Apart(plan, [Triangle, Triangle], 4);
    }

    [Fact]
    public void Nothing_touches_and_nothing_leaves_the_page()
    {
        var round = (IReadOnlyList<FilmArea>)[new([.. Enumerable.Range(0, 180).Select(k => 2 * Math.PI * k / 180).Select(a => new FilmPoint(25 * Math.Cos(a), 25 * Math.Sin(a)))], [])];
        IReadOnlyList<IReadOnlyList<FilmArea>> prints = [.. Enumerable.Repeat(Triangle, 5), .. Enumerable.Repeat(round, 6)];
        var plan = Nest.Lay(prints, 180, 240, 4);
        plan.Places.Count.ShouldBe(11);
        Apart(plan, prints, 4);
        foreach (var place in plan.Places)
        {
            prints[place.Print].SelectMany(a => a.Ring).Select(place.On).ShouldAllBe(p => p.UMm >= -1e-3 && p.VMm >= -1e-3 && p.UMm <= 180 + 1e-3 && p.VMm <= 240 + 1e-3);
        }

        plan.UsedPercent.ShouldBe(100 * ((5 * 4800) + (6 * round[0].AreaMm2)) / (plan.Pages * 180 * 240), 1e-9);
    }

    [Fact]
    public void Print_wider_than_the_page_lies_across_it_and_one_larger_still_is_named()
    {
        var plan = Nest.Lay([Triangle, [new([new(0, 0), new(300, 0), new(300, 300)], [])]], 90, 130, 4);
        plan.Places.ShouldHaveSingleItem().QuarterTurns.ShouldBeOneOf(1, 3);
        plan.TooLarge.ShouldBe([1]);
    }

    [Fact]
    public void Fifty_round_prints_are_laid_in_no_time()
    {
        var round = (IReadOnlyList<FilmArea>)[new([.. Enumerable.Range(0, 180).Select(k => 2 * Math.PI * k / 180).Select(a => new FilmPoint(21 * Math.Cos(a), 21 * Math.Sin(a)))], [])];
        var start = System.Diagnostics.Stopwatch.GetTimestamp();
        var plan = Nest.Lay([.. Enumerable.Repeat(round, 50)], 180, 240, 4);
        System.Diagnostics.Stopwatch.GetElapsedTime(start).ShouldBeLessThan(TimeSpan.FromSeconds(5));
        plan.Places.Count.ShouldBe(50);
        plan.Pages.ShouldBeInRange(2, 3); // 3 or 4 across and 5 or 6 down
        Apart(plan, [.. Enumerable.Repeat(round, 50)], 4);
    }

    private static void Apart(NestPlan plan, IReadOnlyList<IReadOnlyList<FilmArea>> prints, double gap)
    {
        var shapes = plan.Places.Select(p => (p.Page, Shape: Polygon(prints[p.Print][0].Ring.Select(p.On)))).ToList();
        for (var i = 0; i < shapes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                (shapes[i].Page != shapes[j].Page || shapes[i].Shape.Distance(shapes[j].Shape) >= gap - 1e-3).ShouldBeTrue($"{i} and {j}");
            }
        }
    }

    private static Polygon Polygon(IEnumerable<FilmPoint> ring)
    {
        var points = ring.Select(p => new Coordinate(p.UMm, p.VMm)).ToList();
        return new Polygon(new LinearRing([.. points, points[0]]));
    }
}
