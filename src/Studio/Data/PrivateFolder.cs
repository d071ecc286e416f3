using System.Runtime.InteropServices;

namespace Studio.Data;

/// <summary>
/// Keeps the data folder to the account that runs the studio: names, photographs and the sign-in keys lie in it. On Windows the account's
/// own data folder is private already.
/// </summary>
internal static class PrivateFolder
{
    /// <summary>0700.</summary>
    public const UnixFileMode Folder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>0600.</summary>
    public const UnixFileMode File = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private const uint NobodyElse = 0b000_111_111;

    // only what is the studio's own: somebody may have named a folder in which other things lie
    private static readonly string[] Own = ["studio.db*", "jobs.db*", "photos", "meshes", "papers", "keys"];

    /// <summary>From now on every file and folder this process makes is private, whoever makes it: the databases, the keys, a half-received photograph.</summary>
    public static void NewFilesToo()
    {
        if (!OperatingSystem.IsWindows())
        {
            _ = SetMask(NobodyElse);
        }
    }

    /// <summary>Makes private what an earlier version, or a copy, left open.</summary>
    /// <returns>What belongs to another account and so stays as it is.</returns>
    public static IReadOnlyList<string> Shut(string folder) =>
        [.. Inside(folder).Prepend(folder).Where(path => !Set(path))];

    private static IEnumerable<string> Inside(string folder) => Own.SelectMany(o => Directory.EnumerateFileSystemEntries(folder, o))
        .SelectMany(entry => Directory.Exists(entry) ? Directory.EnumerateFileSystemEntries(entry, "*", SearchOption.AllDirectories).Append(entry) : [entry]);

    private static bool Set(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return true;
        }

        try
        {
            var mode = Directory.Exists(path) ? Folder : File;
            if (System.IO.File.GetUnixFileMode(path) != mode)
            {
                System.IO.File.SetUnixFileMode(path, mode);
            }

            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "umask")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern uint SetMask(uint mask);
}
