using System.CommandLine;
using System.Text;
using Studio.Engine;

namespace Studio.Commands;

/// <summary>
/// <c>studio calc WHAT [FILE]</c>: JSON in, JSON out, no host and no database. Nothing but JSON goes to standard output; exit 0 with a result,
/// 2 where the input cannot be used.
/// </summary>
internal static class CalcCommand
{
    private const long MostBytes = 16 * 1024 * 1024;
    private const long MostMeshBytes = 512L * 1024 * 1024;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The command, to be added to the root.</summary>
    public static Command Create()
    {
        // both are optional to the parser, so that leaving one out is answered in JSON as everything else is
        var what = new Argument<string?>("WHAT") { Description = string.Join(" | ", Calculations.All.Keys), Arity = ArgumentArity.ZeroOrOne };
        var files = new Argument<string[]>("FILE") { Description = "JSON file; standard input when left out", Arity = ArgumentArity.ZeroOrMore };
        var command = new Command("calc", "Answer a calculation: JSON in, JSON out") { what, files };
        command.SetAction(parsed =>
        {
            var answer = Run(parsed.GetValue(what), parsed.GetValue(files) ?? [], Console.OpenStandardInput);
            using var output = Console.OpenStandardOutput();
            output.Write(StrictUtf8.GetBytes(answer.Json + "\n"));
            return answer.ExitCode;
        });
        return command;
    }

    /// <summary>Finds the input and answers.</summary>
    internal static Answer Run(string? what, IReadOnlyList<string> files, Func<Stream> standardInput)
    {
        if (what is null || !Calculations.All.ContainsKey(what))
        {
            return Calculations.Run(what ?? "", "");
        }

        if (files.Count > 1)
        {
            return Answer.Refused("", $"One file at most can be read; {files.Count} were given.");
        }

        try
        {
            using var input = files is [var file] && file != "-" ? File.OpenRead(file) : standardInput();
            return Calculations.Run(what, Text(input), name => Mesh(name, files is [var beside] && beside != "-" ? Path.GetDirectoryName(beside) : null));
        }
        catch (DecoderFallbackException)
        {
            return Answer.Refused("", "The input is not UTF-8 text. Save it as UTF-8 and try again.");
        }
        catch (InvalidDataException tooLong)
        {
            return Answer.Refused("", tooLong.Message);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Answer.Refused("", $"The file '{(files.Count > 0 ? files[0] : "standard input")}' cannot be read: {Reason(failed)}");
        }
    }

    // beside the input file if it lies there, else where the command was called
    private static (byte[]? Bytes, string? Trouble) Mesh(string name, string? folder)
    {
        try
        {
            var beside = Path.Combine(folder ?? "", name);
            var info = new FileInfo(File.Exists(beside) ? beside : name);
            return info.Exists && info.Length > MostMeshBytes
                ? (null, $"The mesh '{name}' is larger than {MostMeshBytes / (1024 * 1024)} MB. Save it coarser.")
                : (File.ReadAllBytes(info.FullName), null);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, $"The mesh '{name}' cannot be read: {Reason(failed)}");
        }
    }

    private static string Reason(Exception failed) => failed switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is none of that name. Check the name and the folder.",
        UnauthorizedAccessException => "it is a folder, or this account may not read it.",
        _ => "the system refused. Check the name and the disk.",
    };

    private static string Text(Stream input)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        for (var read = input.Read(buffer); read > 0; read = input.Read(buffer))
        {
            bytes.Write(buffer, 0, read);
            if (bytes.Length > MostBytes)
            {
                throw new InvalidDataException($"The input is longer than {MostBytes / (1024 * 1024)} MB; no calculation needs that much.");
            }
        }

        return StrictUtf8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length).TrimStart('\uFEFF');
    }
}
