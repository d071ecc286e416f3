using Studio.Data.Files;

namespace Studio.Tests.Files;

/// <summary>Measures memory, so it runs alone.</summary>
[Collection(nameof(LargePhotoTests))]
public sealed class LargePhotoTests : PhotoStoreTestBase
{
    [Fact]
    public async Task Photograph_of_thirty_megabytes_is_kept_without_copies_of_it_in_memory()
    {
        var file = Pictures.Noise(5400, 4050);
        file.Length.ShouldBeInRange(28_000_000, 40_000_000);
        using var content = new MemoryStream(file);
        var before = GC.GetTotalAllocatedBytes(precise: true);
        var outcome = await Store.AddAsync(content, "noise.jpg", TestContext.Current.CancellationToken);
        (GC.GetTotalAllocatedBytes(precise: true) - before).ShouldBeLessThan(8_000_000);
        outcome.Refusal.ShouldBeNull();
        outcome.Photo!.Bytes.ShouldBe(file.Length);
        using var large = Picture(outcome.Photo, PhotoSize.Large);
        (large.Width, large.Height).ShouldBe((1280, 960));
    }
}

[CollectionDefinition(nameof(LargePhotoTests), DisableParallelization = true)]
public sealed class LargePhotoCollection;
