using System.Text.RegularExpressions;

namespace Studio.Data.Files;

/// <summary>Where the store's files lie: two levels of folders by the hash's first digits, and one folder for files still coming in.</summary>
internal sealed partial class PhotoFolder(string root)
{
    private const string JpegEnding = ".jpg";
    private const string PngEnding = ".png";

    private string Incoming => Path.Combine(root, "incoming");

    internal static FileStream Create(string path) => new(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read, 81920);

    internal string NewIncoming()
    {
        Directory.CreateDirectory(Incoming);
        return Path.Combine(Incoming, Guid.NewGuid().ToString("n"));
    }

    /// <summary>Removes what a killed process left half received.</summary>
    internal void ClearIncoming()
    {
        if (Directory.Exists(Incoming))
        {
            Directory.Delete(Incoming, recursive: true);
        }
    }

    internal string Original(string hash, bool png) => Place(hash) + (png ? PngEnding : JpegEnding);

    internal string Smaller(string hash, PhotoSize size) =>
        Place(hash) + (size == PhotoSize.Small ? ".320" : ".1280") + JpegEnding;

    /// <summary>Path and type of a stored file; null when there is none, or the hash is none.</summary>
    internal (string Path, string ContentType)? Find(string hash, PhotoSize size)
    {
        if (!Hash().IsMatch(hash))
        {
            return null;
        }

        (string Path, string ContentType)[] places = size == PhotoSize.Original
            ? [(Original(hash, png: false), "image/jpeg"), (Original(hash, png: true), "image/png")]
            : [(Smaller(hash, size), "image/jpeg")];
        return places.Where(p => File.Exists(p.Path)).Select(p => ((string, string)?)p).FirstOrDefault();
    }

    /// <summary>Puts a finished file in its place in one step: it is there whole or not at all.</summary>
    internal static void Settle(string incoming, string place)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(place)!);
        File.Move(incoming, place, overwrite: true);
    }

    [GeneratedRegex("^[0-9a-f]{64}$", RegexOptions.NonBacktracking)]
    private static partial Regex Hash();

    private string Place(string hash) => Path.Combine(root, hash[..2], hash[2..4], hash);
}
