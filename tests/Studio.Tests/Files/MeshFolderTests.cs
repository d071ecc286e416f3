using System.Security.Cryptography;
using Studio.Data.Files;
using Studio.Engine.Meshes;
using TestContext = Xunit.TestContext;

namespace Studio.Tests.Files;

public sealed class MeshFolderTests : IDisposable
{
    private readonly string root = Path.Combine(Directory.CreateTempSubdirectory("studio-mesh-").FullName, "meshes");
    private readonly MeshFolder folder;

    public MeshFolderTests() => folder = new(root);

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(root)!, recursive: true);

    [Fact]
    public async Task A_file_is_kept_byte_for_byte_under_its_own_hash_and_once()
    {
        var bytes = RandomNumberGenerator.GetBytes(200_000);
        var outcome = await AddAsync(new MemoryStream(bytes), "C:\\drawings\\vase.stl");
        outcome.Mesh.ShouldBe(new StoredMesh(Convert.ToHexStringLower(SHA256.HashData(bytes)), "vase.stl", bytes.Length));
        await AddAsync(new MemoryStream(bytes), "the same.stl");
        var kept = Directory.GetFiles(root, "*", SearchOption.AllDirectories).ShouldHaveSingleItem();
        (await File.ReadAllBytesAsync(kept, TestContext.Current.CancellationToken)).ShouldBe(bytes);
    }

    [Fact]
    public async Task Progress_is_told_up_to_the_last_byte()
    {
        var told = new List<long>();
        await AddAsync(new MemoryStream(new byte[200_000]), "a.stl", told.Add);
        told.ShouldBe(told.Order());
        told[^1].ShouldBe(200_000);
    }

    [Fact]
    public async Task An_empty_file_is_refused() => (await AddAsync(Stream.Null, "a.stl")).Refusal!.ShouldContain("empty");

    [Fact]
    public async Task A_file_that_is_too_large_is_refused_and_leaves_nothing()
    {
        (await AddAsync(new Endless(MeshFolder.LargestBytes + 1), "a.stl")).Refusal!.ShouldContain("512 MB");
        Directory.GetFiles(root, "*", SearchOption.AllDirectories).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_transfer_that_breaks_off_leaves_nothing()
    {
        (await AddAsync(new Breaking(), "a.stl")).Refusal!.ShouldContain("did not arrive whole");
        Directory.GetFiles(root, "*", SearchOption.AllDirectories).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_said_in_words()
    {
        var inTheWay = Path.Combine(Path.GetDirectoryName(root)!, "file");
        await File.WriteAllTextAsync(inTheWay, "x", TestContext.Current.CancellationToken);
        (await new MeshFolder(inTheWay).AddAsync(new MemoryStream([1]), "a.stl", null, TestContext.Current.CancellationToken)).Refusal!.ShouldContain("could not be written");
    }

    [Theory]
    [InlineData(28, "disk is full")] // ENOSPC
    [InlineData(unchecked((int)0x80070070), "disk is full")] // ERROR_DISK_FULL
    [InlineData(5, "could not be written")]
    public void Trouble_with_the_disk_is_said_in_words(int hresult, string says) => MeshFolder.Sentence(new IOException("x", hresult)).ShouldContain(says);

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    public void A_file_that_is_not_there_is_an_error_and_not_an_exception(string stored) =>
        folder.Cavity(stored, new MeshSource("a.stl", "mm", "+z")).Errors.ShouldHaveSingleItem().Message.ShouldContain("no longer");

    [Fact]
    public async Task A_file_put_back_is_found_again()
    {
        var stored = (await AddAsync(new MemoryStream("not a mesh"u8.ToArray()), "a.stl")).Mesh!.Stored;
        var place = Directory.GetFiles(root, "*", SearchOption.AllDirectories).Single();
        File.Move(place, place + ".away");
        folder.Cavity(stored, new MeshSource("a.stl", "mm", "+z")).Errors[0].Message.ShouldContain("no longer");
        File.Move(place + ".away", place);
        folder.Cavity(stored, new MeshSource("a.stl", "mm", "+z")).Errors[0].Message.ShouldNotContain("no longer");
    }

    [Fact]
    public async Task What_a_killed_process_left_is_cleared_at_the_next_start()
    {
        Directory.CreateDirectory(Path.Combine(root, "incoming"));
        await File.WriteAllTextAsync(Path.Combine(root, "incoming", "half"), "x", TestContext.Current.CancellationToken);
        folder.ClearHalfReceived();
        Directory.GetFiles(root, "*", SearchOption.AllDirectories).ShouldBeEmpty();
    }

    private Task<MeshOutcome> AddAsync(Stream content, string name, Action<long>? arrived = null) => folder.AddAsync(content, name, arrived, TestContext.Current.CancellationToken);

    private sealed class Endless(long length) : MemoryStream
    {
        private long given;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var count = (int)Math.Min(buffer.Length, length - given);
            given += count;
            return ValueTask.FromResult(count);
        }
    }

    private sealed class Breaking : MemoryStream
    {
        private bool read;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            if (read)
            {
                throw new IOException("reset by peer");
            }

            read = true;
            return ValueTask.FromResult(Math.Min(buffer.Length, 1000));
        }
    }
}
