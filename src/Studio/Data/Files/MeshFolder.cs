using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Studio.Engine;
using Studio.Engine.Meshes;

namespace Studio.Data.Files;

/// <summary>A mesh that is kept.</summary>
/// <param name="Stored">SHA-256 of the file, 64 small hexadecimal digits; its name in the folder.</param>
/// <param name="FileName">The name it came with, without folders; for people, never for a path.</param>
/// <param name="Bytes">Its length [bytes].</param>
public sealed record StoredMesh(string Stored, string FileName, long Bytes);

/// <summary>Either a kept mesh, or a sentence that says why not and what to do. Then nothing was kept.</summary>
public sealed record MeshOutcome(StoredMesh? Mesh, string? Refusal)
{
    public bool Ok => Mesh is not null;
}

/// <summary>
/// Keeps the meshes of moulds as files beside the database, as they came and named by their content: the same mesh twice is one file. What
/// was read from them stays in memory for a while, so that a page that draws a mould does not read a large file again.
/// </summary>
/// <remarks>A file is put in its place whole, after it is on the disk. Files are never removed: a draft or an older version may name one.</remarks>
public sealed partial class MeshFolder(string root)
{
    /// <summary>Largest file taken in [bytes].</summary>
    public const long LargestBytes = 512L * 1024 * 1024;

    /// <summary>What is said of a file that is known to be too large before it is sent.</summary>
    public static MeshOutcome RefusedForSize { get; } = new(null, TooLarge);

    private const string TooLarge = "The file is larger than 512 MB. Save the mesh with fewer triangles, and choose it again.";
    private const string Empty = "The file is empty. Save the mesh again, and choose it again.";
    private const string Broken = "The mesh did not arrive whole: the connection broke off. Nothing was kept; send it again.";
    private const string DiskFull = "The mesh could not be kept because the disk is full. Nothing was lost: free some space and send it again.";
    private const string NotWritable = "The mesh could not be kept because the program may not write to its mesh folder. Ask whoever looks after this computer to allow it, and send it again.";
    private const string NotKept = "The mesh could not be written to the disk. Nothing was kept; look at the disk and send it again.";

    private readonly CavityCache cavities = new();

    private string Incoming => Path.Combine(root, "incoming");

    /// <summary>Takes in a mesh. All that is wrong with the transfer or the disk comes back as a sentence, and then nothing was kept.</summary>
    /// <param name="content">The file as it arrives; read once, not closed.</param>
    /// <param name="fileName">The name it came with.</param>
    /// <param name="arrived">Told how many bytes have arrived so far; may be null.</param>
    /// <param name="cancel">Stops the transfer; what had arrived is removed.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public async Task<MeshOutcome> AddAsync(Stream content, string fileName, Action<long>? arrived = null, CancellationToken cancel = default)
    {
        string? received = null;
        try
        {
            Directory.CreateDirectory(Incoming);
            received = Path.Combine(Incoming, Guid.NewGuid().ToString("n"));
            var (hash, bytes) = await ReceiveAsync(content, received, arrived, cancel);
            PhotoFolder.Settle(received, Place(hash));
            return new(new(hash, PlainName(fileName), bytes), null);
        }
        catch (MeshRefusedException refused)
        {
            return new(null, refused.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(null, Sentence(e));
        }
        finally
        {
            Remove(received);
        }
    }

    /// <summary>The cavity of a stored mesh, or everything that is wrong with it; a file that is gone is an error at <c>mould.file</c>.</summary>
    /// <param name="stored">Its name in the folder.</param>
    /// <param name="source">How it is read.</param>
    public Outcome<Cavity> Cavity(string stored, MeshSource source) => cavities.Get(stored, source, () => Read(stored));

    /// <summary>Removes what a killed process left half received; call once at the start, before anything comes in.</summary>
    public void ClearHalfReceived()
    {
        if (Directory.Exists(Incoming))
        {
            Directory.Delete(Incoming, recursive: true);
        }
    }

    internal static string Sentence(Exception e)
    {
        const int noSpaceUnix = 28, noSpaceWindows = unchecked((int)0x80070070);
        return e is UnauthorizedAccessException ? NotWritable
            : e.HResult is noSpaceUnix or noSpaceWindows ? DiskFull
            : NotKept;
    }

    private (byte[]? Bytes, string? Trouble) Read(string stored)
    {
        try
        {
            return Hash().IsMatch(stored) && File.Exists(Place(stored))
                ? (File.ReadAllBytes(Place(stored)), null)
                : (null, "The mesh file is no longer in the studio's mesh folder. Put the folder back from a backup, or choose the file again.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, $"The mesh file cannot be read from the disk: {e.Message}");
        }
    }

    private static async Task<(string Hash, long Bytes)> ReceiveAsync(Stream content, string path, Action<long>? arrived, CancellationToken cancel)
    {
        await using var file = PhotoFolder.Create(path);
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[81920];
        long total = 0;
        while (await ReadAsync(content, buffer, cancel) is var read and > 0)
        {
            total += read;
            if (total > LargestBytes)
            {
                throw new MeshRefusedException(TooLarge);
            }

            sum.AppendData(buffer, 0, read);
            await file.WriteAsync(buffer.AsMemory(0, read), cancel);
            arrived?.Invoke(total);
        }

        if (total == 0)
        {
            throw new MeshRefusedException(Empty);
        }

        file.Flush(flushToDisk: true);
        return (Convert.ToHexStringLower(sum.GetHashAndReset()), total);
    }

    // trouble with the sender, not with our disk
    private static async Task<int> ReadAsync(Stream content, byte[] buffer, CancellationToken cancel)
    {
        try
        {
            return await content.ReadAsync(buffer, cancel);
        }
        catch (Exception e) when (e is IOException or Microsoft.JSInterop.JSException or Microsoft.JSInterop.JSDisconnectedException or TimeoutException)
        {
            throw new MeshRefusedException(Broken);
        }
    }

    private static string PlainName(string fileName)
    {
        const int longest = 120;
        var last = fileName[(fileName.LastIndexOfAny(['/', '\\']) + 1)..];
        var plain = new string([.. last.Where(c => !char.IsControl(c))]).Trim();
        return plain.Length > longest ? plain[^longest..] : plain.Length == 0 ? "mesh" : plain;
    }

    private static void Remove(string? path)
    {
        try
        {
            if (path is not null)
            {
                File.Delete(path);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the next start clears the folder for incoming files
        }
    }

    private string Place(string hash) => Path.Combine(root, hash[..2], hash + ".mesh");

    [GeneratedRegex("^[0-9a-f]{64}$", RegexOptions.NonBacktracking)]
    private static partial Regex Hash();

    private sealed class MeshRefusedException(string sentence) : Exception(sentence);
}
