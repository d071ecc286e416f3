using System.Runtime.InteropServices;
using System.Text;

namespace Studio.Commands;

/// <summary>A file that is only opened once it is known to be one: a pipe that nobody writes to would never open, a device never end.</summary>
internal static class OrdinaryFile
{
    private const int Mebibyte = 1024 * 1024;

    /// <summary>Why the file cannot be read, as the end of a sentence with what to do; null where it can be. Opens nothing.</summary>
    public static string? Trouble(string path, long mostBytes)
    {
        try
        {
            return path.Length == 0 || path.Contains('\0', StringComparison.Ordinal) ? "that is no name of a file. Give one." : Look(path, mostBytes);
        }
        catch (Exception failed) when (Expected(failed))
        {
            return Reason(failed);
        }
    }

    /// <summary>True where something is called so, be it a link that leads nowhere.</summary>
    public static bool Stands(string path)
    {
        try
        {
            return Path.Exists(path) || new FileInfo(path).LinkTarget is not null;
        }
        catch (Exception failed) when (Expected(failed))
        {
            return false;
        }
    }

    /// <summary>All bytes of a stream, or of as much as may be read and one more.</summary>
    /// <exception cref="InvalidDataException">There are more than <paramref name="mostBytes"/>.</exception>
    public static ArraySegment<byte> Read(Stream stream, long mostBytes)
    {
        var bytes = new MemoryStream();
        var buffer = new byte[81920];
        for (var read = stream.Read(buffer); read > 0; read = stream.Read(buffer))
        {
            if (bytes.Length + read > mostBytes)
            {
                throw new InvalidDataException($"longer than {mostBytes / Mebibyte} MB");
            }

            bytes.Write(buffer, 0, read);
        }

        return new(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    /// <summary>What a system says of a file that it will not open.</summary>
    public static bool Expected(Exception failed) => failed is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    /// <summary>The same for a person.</summary>
    public static string Reason(Exception failed) => failed switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is none of that name. Check the name and the folder.",
        UnauthorizedAccessException => "it is a folder, or this account may not read it.",
        _ => "the system refused. Check the name and the disk.",
    };

    private static string? Look(string path, long mostBytes)
    {
        var (exists, kind, bytes) = OperatingSystem.IsLinux() ? Stat.Of(path) : Portable(path);
        return kind switch
        {
            _ when !exists && new FileInfo(path).LinkTarget is { } target => $"it is a link to '{target}', which is not there. Name the file itself.",
            _ when !exists => Reason(new FileNotFoundException()),
            FileKind.Folder => "it is a folder. Name a file in it.",
            FileKind.Pipe => "it is a pipe, not a file. Save what it gives to a file and name that.",
            FileKind.Device => "it is a device, not a file. Save what it gives to a file and name that.",
            FileKind.Socket => "it is a socket, not a file. Save what it gives to a file and name that.",
            _ => bytes > mostBytes ? FormattableString.Invariant($"it is {bytes / Mebibyte} MB long, and at most {mostBytes / Mebibyte} MB can be read. Save less of it, or coarser.") : null,
        };
    }

    private static (bool Exists, FileKind Kind, long Bytes) Portable(string path)
    {
        var info = new FileInfo(path);
        return Directory.Exists(path) ? (true, FileKind.Folder, 0) : info.Exists ? (true, FileKind.File, info.Length) : default;
    }

    // the framework tells a folder from a file and nothing more; statx lays its answer out alike on every processor (man 2 statx)
    private static class Stat
    {
        private const int Here = -100;
        private const uint TypeAndSize = 0x201;
        private const int ModeAt = 28;
        private const int SizeAt = 40;
        private const int TypeBits = 0xF000;

        public static (bool Exists, FileKind Kind, long Bytes) Of(string path)
        {
            var answer = new byte[256];
            if (Statx(Here, Encoding.UTF8.GetBytes(path + "\0"), 0, TypeAndSize, answer) != 0)
            {
                return default;
            }

            var kind = (BitConverter.ToUInt16(answer, ModeAt) & TypeBits) switch
            {
                0x4000 => FileKind.Folder,
                0x1000 => FileKind.Pipe,
                0xC000 => FileKind.Socket,
                0x2000 or 0x6000 => FileKind.Device,
                _ => FileKind.File,
            };
            return (true, kind, BitConverter.ToInt64(answer, SizeAt));
        }

        [DllImport("libc", EntryPoint = "statx")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern int Statx(int folder, byte[] path, int flags, uint mask, byte[] answer);
    }

    private enum FileKind
    {
        File,
        Folder,
        Pipe,
        Device,
        Socket,
    }
}
