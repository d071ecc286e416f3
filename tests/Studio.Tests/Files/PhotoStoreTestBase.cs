using SkiaSharp;
using Studio.Data.Files;

namespace Studio.Tests.Files;

/// <summary>A store in a folder of its own, removed afterwards.</summary>
public abstract class PhotoStoreTestBase : IDisposable
{
    protected PhotoStoreTestBase()
    {
        Root = Directory.CreateTempSubdirectory("photos-").FullName;
        Store = new(Root);
    }

    protected string Root { get; }

    protected PhotoStore Store { get; }

    public void Dispose()
    {
        Store.Dispose();
        Directory.Delete(Root, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected async Task<StoredPhoto> Keep(byte[] file, string name = "heather.jpg")
    {
        var outcome = await Store.AddAsync(new MemoryStream(file), name, TestContext.Current.CancellationToken);
        outcome.Refusal.ShouldBeNull();
        return outcome.Photo!;
    }

    protected async Task<string> Refused(byte[] file, string name = "heather.jpg")
    {
        var outcome = await Store.AddAsync(new MemoryStream(file), name, TestContext.Current.CancellationToken);
        outcome.Photo.ShouldBeNull();
        Files().ShouldBeEmpty();
        return outcome.Refusal!;
    }

    protected byte[] Read(StoredPhoto photo, PhotoSize size)
    {
        using var content = Store.Open(photo.Hash, size)!.Content;
        using var copy = new MemoryStream();
        content.CopyTo(copy);
        return copy.ToArray();
    }

    protected SKBitmap Picture(StoredPhoto photo, PhotoSize size) => SKBitmap.Decode(Read(photo, size));

    protected string[] Files() => Directory.GetFiles(Root, "*", SearchOption.AllDirectories);
}
