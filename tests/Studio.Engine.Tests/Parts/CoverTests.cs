using Studio.Engine.Parts;

namespace Studio.Engine.Tests.Parts;

/// <summary>The opening is 74 by 54 mm in a base of 150 by 150 mm whose faces lean inwards by 1 in 2.</summary>
public sealed class CoverTests
{
    [Fact]
    public void A_plate_on_the_base_is_the_opening_and_the_overlap_twice()
    {
        var cover = Plan(new CoverSpec { OverlapMm = 16 }).Cover!;
        (cover.WidthMm, cover.DepthMm, cover.SheetMm).ShouldBe((106, 86, 3));
        cover.RecessWidthMm.ShouldBeNull();
    }

    [Fact]
    public void A_plate_in_a_recess_is_smaller_by_the_gap_and_takes_its_thickness_from_the_room()
    {
        var plan = Plan(new CoverSpec { OverlapMm = 16, Recessed = true, GapMm = 0.5 });
        (plan.Cover!.WidthMm, plan.Cover.RecessWidthMm).ShouldBe((105, 106));
        plan.Cavity!.HeightMm.ShouldBe(37); // 150 − 110 − 3
    }

    [Fact]
    public void Corner_screws_stand_in_the_middle_of_the_ledge_in_plate_and_base_alike()
    {
        var plan = Plan(new CoverSpec { OverlapMm = 16, ScrewHoleMm = 3.5 });
        plan.Cover!.Holds.Select(h => (h.XMm, h.YMm)).ShouldBe([(-45, -35), (45, -35), (-45, 35), (45, 35)]); // 106/2 − 8, 86/2 − 8
        plan.Part("cover").Holes.Select(h => (h.XMm, h.YMm, h.DiameterMm)).ShouldBe([(8, 8, 3.5), (98, 8, 3.5), (8, 78, 3.5), (98, 78, 3.5)]);
        plan.Cover.Holds[0].ToOpeningMm.ShouldBe(Math.Sqrt(128), 1e-9); // 8 mm aside both ways
        plan.Codes().ShouldNotContain("hole-near-edge");
    }

    [Fact]
    public void Room_to_the_face_is_square_to_it_and_smallest_at_the_hole_s_end()
    {
        // the face at the hole's end, 10 mm below the rim, stands 75 − 5 = 70 mm out; 70 − 45 = 25, square to a face leaning 1 in 2: 25 / √1.25
        Plan(new CoverSpec { OverlapMm = 16, PilotDepthMm = 10 }).Cover!.Holds[1].ToFaceMm.ShouldBe(25 / Math.Sqrt(1.25), 1e-9);
    }

    [Fact]
    public void A_narrow_overlap_says_which_one_gives_the_hole_its_edge()
    {
        var plan = Plan(new CoverSpec { OverlapMm = 12 });
        var finding = plan.Findings.Single(f => f.Code == "hole-near-edge");
        finding.Message.ShouldContain("6 mm from its edge");
        finding.Message.ShouldContain("14 mm"); // 2 × 2 × 3.5
        Plan(new CoverSpec { OverlapMm = 14 }).Codes().ShouldNotContain("hole-near-edge");
        Plan(new CoverSpec { OverlapMm = 4.9 }).Codes().ShouldContain("cover-overlap-thin");
    }

    [Fact]
    public void A_hole_that_would_break_through_a_face_cannot_stand()
    {
        // turn buttons 35 mm beside a plate of 90: 45 + 35 − … stands at 72, the face at the hole's end at 70
        var plan = Plan(new CoverSpec { OverlapMm = 8, HeldBy = HeldBy.Buttons, HolesAt = HolesAt.TwoSides, ButtonOffMm = 27 });
        plan.Cover!.Holds.ShouldAllBe(h => !h.Stands && Math.Abs(h.XMm) == 72 && h.ToFaceMm < 0);
        var finding = plan.Findings.Single(f => f.Code == "hole-cannot-stand");
        finding.Message.ShouldContain("left and right");
        finding.Message.ShouldContain("break through");
    }

    [Fact]
    public void A_pilot_keeps_twice_its_diameter_from_the_opening()
    {
        var plan = Plan(new CoverSpec { OverlapMm = 6, HolesAt = HolesAt.FourSides, PilotMm = 2 });
        plan.Cover!.Holds.ShouldAllBe(h => h.ToOpeningMm == 3 && !h.Stands); // half of 6, less than 4
        plan.Findings.Single(f => f.Code == "hole-cannot-stand").Message.ShouldContain("3 mm from the hole's middle to the opening");
        Plan(new CoverSpec { OverlapMm = 8, HolesAt = HolesAt.FourSides, PilotMm = 2 }).Cover!.Holds.ShouldAllBe(h => h.Stands);
    }

    [Fact]
    public void A_plate_that_hangs_over_the_base_says_by_how_much()
    {
        // 74 + 2 × 40 = 154 on 150
        var finding = Plan(new CoverSpec { OverlapMm = 40 }).Findings.Single(f => f.Code == "cover-off-base");
        finding.Message.ShouldContain("by 2 mm");
    }

    [Fact]
    public void Feet_stand_in_the_corners_by_their_inset()
    {
        var plan = Plan(null, new FeetSpec { DiameterMm = 10, InsetMm = 4 });
        plan.Feet.Count.ShouldBe(4);
        plan.Feet.ShouldAllBe(f => Math.Abs(Math.Abs(f.XMm) - 66) < 1e-9 && Math.Abs(Math.Abs(f.YMm) - 66) < 1e-9 && f.Stands); // 75 − 5 − 4
    }

    [Fact]
    public void Feet_and_a_cover_that_want_the_same_place_say_so()
    {
        // plate 74 + 2 × 35 = 144 by 124: its corner at 72, 62; a foot at 66 reaches from 61, so 1 mm in y… it needs 5 beyond 62
        var plan = Plan(new CoverSpec { OverlapMm = 35, HolesAt = HolesAt.TwoSides }, new FeetSpec());
        plan.Feet.ShouldAllBe(f => !f.Stands);
        var finding = plan.Findings.Single(f => f.Code == "foot-cannot-stand");
        finding.Message.ShouldStartWith("4 feet");
        finding.Message.ShouldContain("1 mm into the cover"); // 5 − (66 − 62)
    }

    [Fact]
    public void A_round_base_carries_four_feet()
    {
        var plan = PartsCalculation.Run(Box.Input(feet: new FeetSpec()) with { Mould = Box.Made("cone", ("bottomDiameterMm", 100), ("topDiameterMm", 160), ("heightMm", 150)) });
        plan.Feet.Count.ShouldBe(4);
        plan.Feet.ShouldAllBe(f => Math.Abs(Math.Sqrt((f.XMm * f.XMm) + (f.YMm * f.YMm)) - 71) < 0.3); // 80 − 5 − 4, on a fine polygon
    }

    private static PartsPlan Plan(CoverSpec? cover, FeetSpec? feet = null) => PartsCalculation.Run(Box.Input(cover: cover, feet: feet));
}
