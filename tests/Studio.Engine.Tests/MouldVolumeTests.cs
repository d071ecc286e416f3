using Studio.Engine.Moulds;

namespace Studio.Engine.Tests;

public sealed class MouldVolumeTests
{
    [Fact]
    public void Half_full_inverted_pyramid_holds_an_eighth() // similarity: volume goes with the cube of the depth
    {
        var mould = MouldShapes.Make(new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 100, ["heightMm"] = 100 })).Value;
        mould.CapacityMl.ShouldBe(1000.0 / 3, 1e-9);
        mould.VolumeMl(50).ShouldBe(mould.CapacityMl / 8, 1e-9);
    }
}
