using Studio.Engine.Film;

namespace Studio.Engine.Tests.Film;

public sealed class SheetFitTests
{
    private const string Cube = "widthMm=100 depthMm=100 heightMm=100";
    private const string Tip = "baseMm=120 heightMm=90";

    [Fact]
    public void Margin_is_kept_to_wall_and_floor_but_not_to_the_open_side()
    {
        var fit = Fit("cuboid", Cube, new() { MarginMm = 2, TabMm = 0 });
        fit.Box.WidthMm.ShouldBeNear((100 * Math.Sqrt(2)) - 4);
        fit.Box.BottomMm.ShouldBeNear(2);
        fit.Box.TopMm.ShouldBeNear(100);
    }

    [Fact]
    public void Margin_is_square_to_a_slanting_wall_and_corners_stay_sharp()
    {
        // a triangle set in by m on its two slanting sides: similar, with its tip m / sin(half angle) higher
        var fit = Fit("pyramid", Tip, new() { MarginMm = 3, TabMm = 0 });
        var half = Math.Atan2(60 * Math.Sqrt(2), 90);
        fit.Box.BottomMm.ShouldBeNear(3 / Math.Sin(half));
        fit.Body.ShouldHaveSingleItem().Ring.Count.ShouldBe(3);
        fit.Body[0].Ring.Max(p => p.UMm).ShouldBeNear((90 - (3 / Math.Sin(half))) * Math.Tan(half));
    }

    [Fact]
    public void Holding_strip_stands_above_the_open_side_and_is_cut_away_along_it()
    {
        var fit = Fit("pyramid", Tip, new() { MarginMm = 1 });
        fit.FilmBox.TopMm.ShouldBeNear(100);
        fit.Box.TopMm.ShouldBeNear(90);
        var (from, to) = fit.CutAway.ShouldHaveSingleItem();
        (from.VMm, to.VMm).ShouldBe((90, 90));
        fit.Film.Sum(a => a.AreaMm2).ShouldBeNear(fit.AreaMm2 + (10 * fit.Box.WidthMm));
    }

    [Fact]
    public void Strip_of_a_sheet_that_is_turned_over_hangs_from_what_is_now_its_lower_edge()
    {
        var fit = Fit("pyramid", Tip, new() { MarginMm = 1, Over = true });
        fit.FilmBox.BottomMm.ShouldBeNear(-100);
        fit.FilmBox.TopMm.ShouldBe(fit.Box.TopMm);
    }

    [Fact]
    public void Strip_inside_a_closing_sphere_stays_inside_it()
    {
        var fit = Fit("sphere", "diameterMm=100 openingDiameterMm=20", new() { FromMm = 20, ToMm = 80, MarginMm = 1 });
        fit.Film.SelectMany(a => a.Ring).ShouldAllBe(p => (p.UMm * p.UMm) + ((p.VMm - 50) * (p.VMm - 50)) < 49.01 * 49.01);
    }

    [Fact]
    public void Plane_outside_the_mould_stops_and_says_by_how_much_and_where()
    {
        var fit = Fit("cuboid", Cube, new() { Placement = FilmPlacement.Parallel, DepthMm = 62.5 });
        fit.Stands.ShouldBeFalse();
        var stop = fit.Findings.ShouldHaveSingleItem();
        (stop.Code, stop.Severity, stop.Path).ShouldBe(("plane-outside", Severity.Stop, "sheet.depthMm"));
        stop.Message.ShouldContain("12.5 mm in front of the mould");
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Flat, HeightMm = 130 }).Findings.ShouldHaveSingleItem().Message.ShouldContain("30 mm above the mould");
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Free, OffsetMm = -70 }).Findings.ShouldHaveSingleItem().Message.ShouldContain("20 mm behind the mould");
    }

    [Fact]
    public void Heights_without_any_mould_on_the_plane_stop_as_well() =>
        Fit("pyramid", Tip, new() { Placement = FilmPlacement.Parallel, DepthMm = 40, FromMm = 5, ToMm = 50 }).Findings.ShouldHaveSingleItem().Code.ShouldBe("plane-outside");

    [Fact]
    public void Margin_wider_than_the_sheet_is_said()
    {
        var stop = Fit("pyramid", Tip, new() { ToMm = 10, MarginMm = 20 }).Findings.ShouldHaveSingleItem();
        (stop.Code, stop.Path).ShouldBe(("sheet-too-narrow", "sheet.marginMm"));
    }

    [Fact]
    public void Every_number_out_of_range_is_named_at_once()
    {
        var errors = FilmCut.Fit(FilmCutTests.Make("cuboid", Cube), new() { Placement = "sideways", Ink = "tea", FromMm = -1, ToMm = 101, MarginMm = double.NaN, TabMm = 1e9, LeanDegrees = 90 }, FilmSurroundings.Nothing, "sheets[2]").Errors;
        errors.Select(e => e.Path).Order(StringComparer.Ordinal).ShouldBe(
            ["sheets[2].fromMm", "sheets[2].ink", "sheets[2].leanDegrees", "sheets[2].marginMm", "sheets[2].placement", "sheets[2].tabMm", "sheets[2].toMm"]);
        FilmCut.Fit(FilmCutTests.Make("cuboid", Cube), new() { FromMm = 60, ToMm = 40 }, FilmSurroundings.Nothing).Errors.ShouldHaveSingleItem().Path.ShouldBe("sheet.toMm");
    }

    [Fact]
    public void Edges_say_what_carries_them()
    {
        var fit = Fit("cuboid", Cube, new() { FromMm = 20, ToMm = 60 }, [20]);
        fit.Edges.Select(e => e.Meets).Order().ShouldBe([EdgeMeets.Wall, EdgeMeets.Wall, EdgeMeets.Layer, EdgeMeets.Open]);
        Fit("cuboid", Cube, new() { FromMm = 20, ToMm = 60, MarginMm = 3 }).Edges.Select(e => e.Meets).Order().ShouldBe([EdgeMeets.Gap, EdgeMeets.Gap, EdgeMeets.Open, EdgeMeets.Nothing]);
        fit.Findings.ShouldNotContain(f => f.Code == "sheet-unsupported");
    }

    [Fact]
    public void Sheet_that_touches_nothing_sags_unless_its_strip_holds_it()
    {
        Finding Of(FilmSpec spec, params double[] tops) => Fit("cuboid", Cube, spec, tops).Findings.Single(f => f.Code == "sheet-unsupported");
        Of(new() { FromMm = 20, MarginMm = 3, TabMm = 0 }).Severity.ShouldBe(Severity.Warn);
        Of(new() { FromMm = 20, MarginMm = 3, TabMm = 10 }).Severity.ShouldBe(Severity.Note);
        Of(new() { Placement = FilmPlacement.Flat, HeightMm = 40 }, 39, 60).Severity.ShouldBe(Severity.Warn);
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Flat, HeightMm = 40 }, [40]).Findings.ShouldNotContain(f => f.Code == "sheet-unsupported");
    }

    [Fact]
    public void Sheet_through_the_box_for_the_lights_stops_with_the_place()
    {
        var box = new FilmFormer(40, 40, 70);
        var stop = Fit("cuboid", Cube, new(), [], box).Findings.Single(f => f.Code == "sheet-meets-former");
        stop.Severity.ShouldBe(Severity.Stop);
        stop.Message.ShouldContain("between 70 mm and 100 mm");
        stop.Message.ShouldContain("over 56.6 mm"); // 40 √2, corner to corner of the box as well
        Fit("cuboid", Cube, new() { ToMm = 70 }, [], box).Findings.Where(f => f.Severity > Severity.Note).Select(f => f.Code).ShouldBe(["strip-meets-former"]);
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Parallel, DepthMm = 30 }, [], box).Findings.ShouldNotContain(f => f.Code.EndsWith("meets-former", StringComparison.Ordinal));
    }

    [Fact]
    public void Ink_that_must_be_sealed_takes_its_margin_from_the_picture()
    {
        var fit = Fit("cuboid", Cube, new() { Ink = "dye", MarginMm = 0 });
        FilmBox.Around(fit.Picture).WidthMm.ShouldBeNear(fit.Box.WidthMm - 10);
        FilmBox.Around(fit.Picture).HeightMm.ShouldBeNear(90);
        fit.Findings.ShouldContain(f => f.Code == "sheet-sealed");
        Fit("cuboid", Cube, new() { Ink = FilmInks.Toner }).Picture.ShouldBe(Fit("cuboid", Cube, new() { Ink = FilmInks.Toner }).Body, new ByArea());
        Fit("cuboid", "widthMm=9 depthMm=9 heightMm=9", new() { Ink = "pigment" }).Findings.Single(f => f.Severity == Severity.Stop).Code.ShouldBe("no-room-for-picture");
    }

    // apparent depth = depth / n for flat resin seen squarely (Snell's law for small angles)
    [Fact]
    public void Thirty_millimetres_of_resin_look_less_than_twenty_deep()
    {
        var look = Fit("cuboid", Cube, new() { Placement = FilmPlacement.Parallel, DepthFrom = "front", DepthMm = 30 }).Look.ShouldNotBeNull();
        look.ResinMm.ShouldBeNear(30);
        look.LooksMm.ShouldBe(30 / 1.52, 1e-9);
        (look.NearestMm, look.FarthestMm).ShouldBe((30 / 1.57, 30 / 1.50));
        look.LargerPercent.ShouldBe(1.97, 0.01); // 530 / (500 + 19.74)
        look.Flat.ShouldBeTrue();
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Corner }).Findings.ShouldContain(f => f.Code == "face-not-flat"); // it looks at an edge
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Flat, HeightMm = 40 }).Look!.ResinMm.ShouldBeNear(60);
        Fit("cuboid", Cube, new() { Placement = FilmPlacement.Flat, HeightMm = 40, Over = true }).Look!.ResinMm.ShouldBeNear(40); // seen from what was the bottom
    }

    [Fact]
    public void Picture_covers_the_room_for_it_and_says_what_falls_away()
    {
        IReadOnlyList<FilmArea> square = [new([new(0, 0), new(100, 0), new(100, 100), new(0, 100)], [])];
        var fit = PictureFit.Cover(square, 1500, 1000);
        (fit.WidthMm, fit.HeightMm).ShouldBe((150, 100));
        fit.PixelsPerInch.ShouldBeNear(254);
        fit.HiddenPercent.ShouldBeNear(100.0 / 3);
        fit.Words.ShouldBe("25 mm of the picture fall away at the left and as much at the right");
        fit.Findings("p").ShouldHaveSingleItem().Severity.ShouldBe(Severity.Note);
        PictureFit.Cover(square, 787, 787).Findings("p").ShouldHaveSingleItem().Severity.ShouldBe(Severity.Warn); // 199.9 an inch
        PictureFit.Cover(square, 1182, 1182).Findings("p").ShouldBeEmpty(); // 300.2
    }

    private static FilmFit Fit(string shape, string dimensions, FilmSpec spec, double[]? tops = null, FilmFormer? former = null) =>
        FilmCutTests.Cut(shape, dimensions, spec, new(former, tops ?? []));

    private sealed class ByArea : IEqualityComparer<FilmArea>
    {
        public bool Equals(FilmArea? x, FilmArea? y) => Math.Abs(x!.AreaMm2 - y!.AreaMm2) < 1e-9;

        public int GetHashCode(FilmArea obj) => 0;
    }
}
