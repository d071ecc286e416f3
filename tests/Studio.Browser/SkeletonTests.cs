namespace Studio.Browser;

public sealed class SkeletonTests
{
    [Fact]
    public void Runs() => true.ShouldBeTrue();
}
