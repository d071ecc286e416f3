using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Studio.Data.Files;

/// <summary>
/// Keeps photographs as files beside the database, named by their content: the same photograph twice is one file, and a file can be
/// checked against its name. The place where it was taken, and all other metadata, never reaches the store.
/// </summary>
/// <remarks>A file is put in its place whole, after it is on the disk; the original last, so that where it is, its smaller copies are.</remarks>
public sealed class PhotoStore(string root) : IDisposable
{
    /// <summary>Largest file taken in [bytes].</summary>
    public const long LargestBytes = 40L * 1024 * 1024;

    /// <summary>Most pixels opened [px].</summary>
    public const long MostPixels = 100_000_000;

    internal const int SmallPx = 320;
    internal const int LargePx = 1280;
    internal const string Damaged = "The picture is damaged and cannot be opened. Take it from where it was first saved, or photograph it again.";
    internal const string Truncated = "The picture ends before it is whole, as after a broken transfer. Send it again, or take it from where it was first saved.";
    internal const string Moving = "This is a moving picture. Save one still picture of it as a JPEG and choose that.";

    private const string TooLarge = "The file is larger than 40 MB. Save the picture smaller, or as a JPEG, and choose it again.";
    private const string Broken = "The photograph did not arrive whole: the connection broke off. Nothing was kept; send it again.";
    private const string DiskFull = "The photograph could not be kept because the disk is full. Nothing was lost: free some space and send it again.";
    private const string NotWritable = "The photograph could not be kept because the program may not write to its photograph folder. Ask whoever looks after this computer to allow it, and send it again.";
    private const string NotKept = "The photograph could not be written to the disk. Nothing was kept; look at the disk and send it again.";

    private readonly PhotoFolder folder = new(root);
    private readonly SemaphoreSlim oneAtATime = new(1); // a large picture takes up to 400 MB while it is open

    /// <summary>Takes in a photograph. All that is wrong with the file or the disk comes back as a sentence, and then nothing was kept.</summary>
    /// <param name="content">The file as it arrives; read once, not closed.</param>
    /// <param name="fileName">The name it came with.</param>
    /// <param name="cancel">Stops the transfer; what had arrived is removed.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public async Task<PhotoOutcome> AddAsync(Stream content, string fileName, CancellationToken cancel = default)
    {
        var temporary = new List<string>();
        try
        {
            var received = NewTemporary(temporary);
            await ReceiveAsync(content, received, cancel);
            await oneAtATime.WaitAsync(cancel);
            try
            {
                return new(await Task.Run(() => Keep(received, PlainName(fileName), temporary), cancel), null);
            }
            finally
            {
                oneAtATime.Release();
            }
        }
        catch (PhotoRefusedException refused)
        {
            return new(null, refused.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(null, Sentence(e));
        }
        finally
        {
            temporary.ForEach(Remove);
        }
    }

    /// <summary>Opens a stored file for reading; null when there is none, or <paramref name="hash"/> is not a hash.</summary>
    public PhotoFile? Open(string hash, PhotoSize size) =>
        folder.Find(hash, size) is var (path, type)
            ? new(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, 81920, useAsync: true), type)
            : null;

    /// <summary>A picture made ready by a recipe, as a JPEG; null when it is not here or cannot be opened. The kept picture stays as it is.</summary>
    /// <param name="hash">Its name in the store.</param>
    /// <param name="recipe">What to do with it.</param>
    /// <param name="mostPx">Longer side of the outcome at most [px]; up to 1280 px of the whole picture the smaller copy serves.</param>
    /// <param name="cancel">Stops waiting.</param>
    public async Task<byte[]?> PrepareAsync(string hash, PictureRecipe recipe, int mostPx, CancellationToken cancel = default)
    {
        var size = mostPx <= LargePx ? PhotoSize.Large : PhotoSize.Original;
        if (folder.Find(hash, size) is not var (path, _))
        {
            return null;
        }

        await oneAtATime.WaitAsync(cancel);
        try
        {
            return await Task.Run(() => PreparedPicture.Make(() => File.OpenRead(path), recipe, mostPx), cancel);
        }
        catch (Exception e) when (e is PhotoRefusedException or IOException)
        {
            return null;
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>Removes what a killed process left half received; call once at the start, before anything comes in.</summary>
    public void ClearHalfReceived() => folder.ClearIncoming();

    public void Dispose() => oneAtATime.Dispose();

    private static async Task ReceiveAsync(Stream content, string path, CancellationToken cancel)
    {
        await using var file = PhotoFolder.Create(path);
        var buffer = new byte[81920];
        long total = 0;
        while (await ReadAsync(content, buffer, cancel) is var read and > 0)
        {
            total += read;
            if (total > LargestBytes)
            {
                throw new PhotoRefusedException(TooLarge);
            }

            await file.WriteAsync(buffer.AsMemory(0, read), cancel);
        }
    }

    // trouble with the sender, not with our disk
    private static async Task<int> ReadAsync(Stream content, byte[] buffer, CancellationToken cancel)
    {
        try
        {
            return await content.ReadAsync(buffer, cancel);
        }
        catch (IOException)
        {
            throw new PhotoRefusedException(Broken);
        }
    }

    private StoredPhoto Keep(string received, string fileName, List<string> temporary)
    {
        var kind = KindOf(received);
        var cleaned = NewTemporary(temporary);
        var facts = Clean(kind, received, cleaned);
        var (width, height) = PhotoPixels.Measure(cleaned);
        var (hash, bytes) = HashOf(cleaned);
        var png = kind == PhotoKind.Png;
        var wasHere = File.Exists(folder.Original(hash, png));
        if (!wasHere || folder.Find(hash, PhotoSize.Large) is null || folder.Find(hash, PhotoSize.Small) is null)
        {
            var (large, small) = (NewTemporary(temporary), NewTemporary(temporary));
            PhotoPixels.WriteSmaller(cleaned, facts.Orientation, large, small);
            PhotoFolder.Settle(large, folder.Smaller(hash, PhotoSize.Large));
            PhotoFolder.Settle(small, folder.Smaller(hash, PhotoSize.Small));
            PhotoFolder.Settle(cleaned, folder.Original(hash, png));
        }

        (width, height) = facts.Orientation >= 5 ? (height, width) : (width, height);
        return new(hash, png ? "image/png" : "image/jpeg", bytes, width, height, facts.TakenAt, fileName, wasHere);
    }

    private static PhotoKind KindOf(string received)
    {
        using var file = File.OpenRead(received);
        Span<byte> start = stackalloc byte[24];
        var read = file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        var kind = PhotoKinds.Of(start[..read]);
        if (kind == PhotoKind.Png && read == start.Length)
        {
            // the codec gives up on absurd headers; here they are refused by name
            PhotoPixels.RefuseSize(BinaryPrimitives.ReadUInt32BigEndian(start[16..]), BinaryPrimitives.ReadUInt32BigEndian(start[20..]));
        }

        return kind;
    }

    private static ExifFacts Clean(PhotoKind kind, string received, string cleaned)
    {
        using var from = File.OpenRead(received);
        if (kind == PhotoKind.Webp)
        {
            PhotoPixels.Measure(received);
            var found = WebpFacts.Read(from);
            PhotoPixels.WriteAsJpeg(received, found.Orientation, cleaned);
            return found with { Orientation = 1 }; // it was set upright as it was written anew
        }

        using var to = PhotoFolder.Create(cleaned);
        var facts = kind == PhotoKind.Jpeg ? JpegCleaner.Copy(from, to) : PngCleaner.Copy(from, to);
        to.Flush(flushToDisk: true);
        return facts;
    }

    private static (string Hash, long Bytes) HashOf(string path)
    {
        using var file = File.OpenRead(path);
        return (Convert.ToHexStringLower(SHA256.HashData(file)), file.Length);
    }

    private static string PlainName(string fileName)
    {
        const int longest = 120;
        var last = fileName[(fileName.LastIndexOfAny(['/', '\\']) + 1)..];
        var plain = new string([.. last.Where(c => !char.IsControl(c))]).Trim();
        return plain.Length > longest ? plain[..longest] : plain;
    }

    internal static string Sentence(Exception e)
    {
        const int noSpaceUnix = 28, noSpaceWindows = unchecked((int)0x80070070);
        return e is UnauthorizedAccessException ? NotWritable
            : e.HResult is noSpaceUnix or noSpaceWindows ? DiskFull
            : NotKept;
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the next start clears the folder for incoming files
        }
    }

    private string NewTemporary(List<string> temporary)
    {
        var path = folder.NewIncoming();
        temporary.Add(path);
        return path;
    }
}
