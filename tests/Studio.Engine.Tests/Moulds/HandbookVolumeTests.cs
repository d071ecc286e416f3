using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Moulds;

public sealed class HandbookVolumeTests
{
    // source, then shape and dimensions with every length in mm for one handbook unit, then the volume in cubic handbook units.
    // MH31 = Machinery's Handbook, 31st ed. (2020), Volumes of Solids, pages 88 to 90; printed to 4 or 5 figures
    public static TheoryData<string, string, string, double, double> Cases => new()
    {
        { "MH31 p. 88: cube of side 9.5", "cuboid", "widthMm=9.5 depthMm=9.5 heightMm=9.5", 857.375, 1e-12 },
        { "MH31 p. 88: hexagonal prism, side 7.5, height 25", "prism", "sides=6 edgeMm=7.5 heightMm=25", 3653.5, 1e-4 },
        { "MH31 p. 88: square pyramid, side 3, height 5", "pyramid", "baseMm=3 heightMm=5", 15, 1e-12 },
        { "Moscow Mathematical Papyrus, problem 14: frustum 4 to 2, height 6", "pyramid", "baseMm=4 tipMm=2 heightMm=6", 56, 1e-12 },
        { "the same turned over: wide at the bottom", "pyramid", "baseMm=2 tipMm=4 heightMm=6", 56, 1e-12 },
        { "hackmath problem 2440: frustum 1.0 to 0.6, height 0.25, 49/300", "pyramid", "baseMm=1 tipMm=0.6 heightMm=0.25", 49.0 / 300, 1e-12 },
        { "MH31 p. 89: cylinder of diameter 2.5, length 20", "cone", "bottomDiameterMm=2.5 topDiameterMm=2.5 heightMm=20", 98.17, 1e-4 },
        { "MH31 p. 90: cone of diameter 6, height 4", "cone", "bottomDiameterMm=0 topDiameterMm=6 heightMm=4", 37.7, 1e-4 },
        { "MH31 p. 90, from memory: cut cone 8 to 4, height 5", "cone", "bottomDiameterMm=4 topDiameterMm=8 heightMm=5", 146.61, 1e-4 },
        { "MH31 p. 91: sphere of diameter 6.5, its pouring hole so small that nothing is missing", "sphere", "diameterMm=6.5 openingDiameterMm=0.000001", 143.79, 1e-4 },
        { "MH31 p. 91: half of that sphere", "dome", "diameterMm=6.5", 143.79 / 2, 1e-4 },
        { "MH31 p. 91: the sphere less the cap of height 50 and chord 125 (radius 64.0625)", "sphere", "diameterMm=128.125 openingDiameterMm=125", 1_101_286.4 - 372_247, 1e-5 },
        // ends 6 x 4 and 10 x 8 are not similar: h/6 (A1 + 4 Am + A2) = 2/6 (24 + 4 x 48 + 80), Building Trades Pocketbook, prismatoid
        { "prismatoid 6 x 4 to 10 x 8, height 2 (45 degrees)", "cuboid", "widthMm=6 depthMm=4 heightMm=2 draftDegrees=45", 296.0 / 3, 1e-12 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Volume_agrees_with_the_handbook(string source, string shape, string dimensions, double volume, double relative) =>
        (Mould(shape, dimensions).CapacityMl * 1000).ShouldBe(volume, volume * relative, source);

    [Fact]
    public void Half_full_inverted_pyramid_holds_an_eighth() // similarity: volume goes with the cube of the depth
    {
        var mould = Mould("pyramid", "baseMm=100 heightMm=100");
        mould.CapacityMl.ShouldBeNear(1000.0 / 3);
        mould.VolumeMl(50).ShouldBeNear(1000.0 / 24);
    }

    [Fact]
    public void Centroid_of_a_frustum_follows_the_handbook_formula() // h/4 (A1 + 2 sqrt(A1 A2) + 3 A2)/(A1 + sqrt(A1 A2) + A2) = 33/14 from the 4 x 4 end
    {
        var mould = Mould("pyramid", "baseMm=2 tipMm=4 heightMm=6");
        (mould.MomentMlMm(6) / mould.CapacityMl).ShouldBeNear(33.0 / 14);
    }

    [Theory] // lateral area = perimeter at half height x slant: MH31 p. 90 gives 47.124 for a cone of diameter 6 and height 4, so the slant is 5
    [InlineData("cone", "bottomDiameterMm=0 topDiameterMm=6 heightMm=4", 5)]
    [InlineData("pyramid", "baseMm=6 heightMm=4", 5)] // 3-4-5 along the middle of a face
    [InlineData("pyramid", "baseMm=10 tipMm=4 heightMm=4", 5)]
    [InlineData("pyramid", "sides=6 baseMm=3.4641016151377544 heightMm=4", 5)] // hexagon of apothem 3
    [InlineData("pyramid", "sides=3 baseMm=10.392304845413264 heightMm=4", 5)] // triangle of apothem 3
    [InlineData("cuboid", "widthMm=9 depthMm=9 heightMm=4 draftDegrees=36.86989764584402", 5)]
    [InlineData("prism", "sides=5 edgeMm=9 heightMm=4", 4)]
    public void Face_mark_at_the_rim_is_the_slant_height(string shape, string dimensions, double slantMm) =>
        Mould(shape, dimensions).FaceMarkMm(4).ShouldBeNear(slantMm);

    [Theory]
    // a 4 wide box at the rim of a 10 wide pyramid: 3 mm in plan, times cos of the face's lean (3-4-5: lean 5/4 per mm)
    [InlineData("pyramid", "baseMm=6 heightMm=4", 2, 2, 4, 2 * 0.8)]
    [InlineData("cuboid", "widthMm=10 depthMm=6 heightMm=4", 8, 2, 0, 1)]
    [InlineData("cuboid", "widthMm=10 depthMm=6 heightMm=4", 2, 8, 0, -1)]
    [InlineData("cone", "bottomDiameterMm=0 topDiameterMm=6 heightMm=4", 2.4, 3.2, 4, (3 - 2) * 0.8)]
    [InlineData("prism", "sides=6 edgeMm=10 heightMm=4", 2, 2, 2, 7.2942286340599476)] // apothem 8.660..; the corner leans on the slanted face: cos 30 + sin 30
    public void Clearance_is_square_to_the_wall(string shape, string dimensions, double widthMm, double depthMm, double zMm, double clearanceMm) =>
        Mould(shape, dimensions).ClearanceMm(widthMm, depthMm, zMm).ShouldBeNear(clearanceMm);

    internal static MouldBody Mould(string shape, string dimensions) => MouldShapes.Make(new MouldSpec(
        shape,
        dimensions.Split(' ').Select(d => d.Split('=')).ToDictionary(p => p[0], p => double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture)))).Value;
}
