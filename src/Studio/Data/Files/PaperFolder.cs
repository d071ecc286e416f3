using System.Security.Cryptography;

namespace Studio.Data.Files;

/// <summary>
/// Keeps papers that left the studio, as the bytes they left with, named by their content under <c>papers/</c> beside the database.
/// </summary>
/// <remarks>A file is put in its place whole, after it is on the disk, before the record that names it is saved. Files are never removed.</remarks>
public sealed class PaperFolder(string root)
{
    private string Incoming => Path.Combine(root, "incoming");

    /// <summary>Keeps the bytes; the same bytes twice are one file.</summary>
    /// <returns>SHA-256, 64 small hexadecimal digits.</returns>
    /// <exception cref="IOException">The disk is full or cannot be written.</exception>
    public async Task<string> AddAsync(byte[] content)
    {
        ArgumentNullException.ThrowIfNull(content);
        Directory.CreateDirectory(Incoming);
        var received = Path.Combine(Incoming, Guid.NewGuid().ToString("n"));
        try
        {
            await using (var file = new FileStream(received, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                await file.WriteAsync(content);
                file.Flush(flushToDisk: true);
            }

            var hash = Convert.ToHexStringLower(SHA256.HashData(content));
            PhotoFolder.Settle(received, Place(hash));
            return hash;
        }
        finally
        {
            File.Delete(received);
        }
    }

    /// <summary>The bytes of a hash, whole and unchanged; null when the file is missing or is not what was kept.</summary>
    public async Task<byte[]?> ReadAsync(string hash)
    {
        ArgumentNullException.ThrowIfNull(hash);
        if (hash.Length != 64 || !hash.All(char.IsAsciiHexDigitLower) || !File.Exists(Place(hash)))
        {
            return null;
        }

        var content = await File.ReadAllBytesAsync(Place(hash));
        return Convert.ToHexStringLower(SHA256.HashData(content)) == hash ? content : null;
    }

    /// <summary>Files of a process that was killed while writing.</summary>
    public void ClearHalfReceived()
    {
        if (Directory.Exists(Incoming))
        {
            foreach (var file in Directory.EnumerateFiles(Incoming))
            {
                File.Delete(file);
            }
        }
    }

    private string Place(string hash) => Path.Combine(root, hash[..2], hash + ".pdf");
}
