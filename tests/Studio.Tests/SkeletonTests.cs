namespace Studio.Tests;

public sealed class SkeletonTests
{
    [Fact]
    public void Runs() => true.ShouldBeTrue();
}
