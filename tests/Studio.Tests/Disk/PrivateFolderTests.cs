using Microsoft.Extensions.DependencyInjection;
using Studio.Data;
using Studio.Data.Files;
using Studio.Tests.SignIn;

namespace Studio.Tests.Disk;

/// <summary>On Unix the data folder is 0700 and every file in it 0600: whoever else uses the computer reads no name and no key.</summary>
public sealed class PrivateFolderTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task Whatever_a_studio_writes_is_its_own()
    {
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        var png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");
        (await studio.Services.GetRequiredService<PhotoStore>().AddAsync(new MemoryStream(png), "a.png", TestContext.Current.CancellationToken)).Refusal.ShouldBeNull();

        Open(studio.DataFolder).ShouldBeEmpty();
        Files(studio.DataFolder).Select(Path.GetFileName).ShouldContain("studio.db");
        Files(Path.Combine(studio.DataFolder, "keys")).ShouldNotBeEmpty();
        Files(Path.Combine(studio.DataFolder, "photos")).ShouldNotBeEmpty();
    }

    [Fact]
    public void What_an_earlier_version_left_open_is_shut_and_what_is_not_the_studios_stays()
    {
        var folder = Directory.CreateTempSubdirectory("studio-open-").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "photos", "ab"));
        foreach (var name in new[] { "studio.db", "studio.db-wal", "jobs.db", "photos/ab/one.jpg", "notes.sh" })
        {
            File.WriteAllText(Path.Combine(folder, name), "");
            Set(Path.Combine(folder, name), (UnixFileMode)0b111_101_101);
        }

        Set(folder, (UnixFileMode)0b111_101_101);
        PrivateFolder.Shut(folder).ShouldBeEmpty();

        Open(folder).ShouldBe(OperatingSystem.IsWindows() ? [] : ["notes.sh"]);
        Directory.Delete(folder, recursive: true);
    }

    // those that anybody else may do anything with; on Windows there are no such rights to look at
    private static List<string> Open(string folder) => OperatingSystem.IsWindows() ? [] :
        [.. Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories).Append(folder).Where(f => Mode(f) is { } mode && mode != (Directory.Exists(f) ? PrivateFolder.Folder : PrivateFolder.File)).Select(f => Path.GetRelativePath(folder, f))];

    private static string[] Files(string folder) => Directory.GetFiles(folder, "*", SearchOption.AllDirectories);

    // null where it went away meanwhile: a database lets its side files go when nobody reads it any more
    private static UnixFileMode? Mode(string path)
    {
        try
        {
            return OperatingSystem.IsWindows() ? UnixFileMode.None : File.GetUnixFileMode(path);
        }
        catch (FileNotFoundException)
        {
            return null;
        }
    }

    private static void Set(string path, UnixFileMode mode)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, mode);
        }
    }
}
