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

        var file = files is [var named] && named != "-" ? named : null;
        if (file is not null && OrdinaryFile.Trouble(file, MostBytes) is { } trouble)
        {
            return Answer.Refused("", $"The file '{file}' cannot be read: {trouble}");
        }

        return Guarded(() => Answered(what, file, standardInput));
    }

    /// <summary>Whatever an input brings about, the answer is a document: what nobody foresaw is no reason to print anything else.</summary>
    internal static Answer Guarded(Func<Answer> answer)
    {
        try
        {
            return answer();
        }
        catch (Exception unforeseen)
        {
            return Answer.Refused("", $"No answer can be given for this input; the calculation ended in a fault of its own ({unforeseen.GetType().Name}). Look for a number that is far too small or too large, and keep the input: the makers of Studio want to see it.");
        }
    }

    private static Answer Answered(string what, string? file, Func<Stream> standardInput)
    {
        ArraySegment<byte> bytes;
        try
        {
            using var input = file is null ? standardInput() : File.OpenRead(file);
            bytes = OrdinaryFile.Read(input, MostBytes);
        }
        catch (InvalidDataException)
        {
            return Answer.Refused("", $"The input is longer than {MostBytes / (1024 * 1024)} MB; no calculation needs that much.");
        }
        catch (Exception failed) when (OrdinaryFile.Expected(failed))
        {
            return Answer.Refused("", $"The file '{file ?? "standard input"}' cannot be read: {OrdinaryFile.Reason(failed)}");
        }

        return Utf8(bytes) is { } text
            ? Calculations.Run(what, text, name => Mesh(name, file is null ? null : Path.GetDirectoryName(file)))
            : Answer.Refused("", "The input is not UTF-8 text. Save it as UTF-8 and try again.");
    }

    // beside the input file if it lies there, else where the command was called
    private static (byte[]? Bytes, string? Trouble) Mesh(string name, string? folder)
    {
        var beside = Path.Join(folder ?? "", name);
        var path = Path.IsPathRooted(name) || !OrdinaryFile.Stands(beside) ? name : beside;
        if (OrdinaryFile.Trouble(path, MostMeshBytes) is { } trouble)
        {
            return (null, $"The mesh '{name}' cannot be read: {trouble}");
        }

        try
        {
            using var mesh = File.OpenRead(path);
            return ([.. OrdinaryFile.Read(mesh, MostMeshBytes)], null);
        }
        catch (InvalidDataException)
        {
            return (null, $"The mesh '{name}' is larger than {MostMeshBytes / (1024 * 1024)} MB. Save it coarser.");
        }
        catch (Exception failed) when (OrdinaryFile.Expected(failed))
        {
            return (null, $"The mesh '{name}' cannot be read: {OrdinaryFile.Reason(failed)}");
        }
    }

    // with or without a mark at its beginning; null where it is another encoding: every second byte of English in UTF-16 is zero, which stands in no JSON
    private static string? Utf8(ArraySegment<byte> bytes)
    {
        try
        {
            return bytes.AsSpan().Contains((byte)0) ? null : StrictUtf8.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
