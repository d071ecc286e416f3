using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using Studio.Commands;
using Studio.Engine;

namespace Studio.Tests.Commands;

/// <summary>Whatever lies where an input or a mesh should lie: a document that says what it is, at once.</summary>
public sealed class CalcBadFileTests : IDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("studio-bad-file-");

    private readonly Socket socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);

    public static TheoryData<string> Calculated => [.. Calculations.All.Keys];

    public void Dispose()
    {
        socket.Dispose();
        folder.Delete(recursive: true);
    }

    [Theory]
    [MemberData(nameof(Calculated))]
    public async Task What_is_no_regular_file_is_refused_before_it_is_opened(string what)
    {
        foreach (var (file, says) in Strange())
        {
            (await RefusalAsync(what, [file])).ShouldContain(says, customMessage: file);
        }
    }

    [Theory]
    [InlineData("layers")]
    [InlineData("heat")]
    public async Task A_mesh_that_is_no_regular_file_is_refused_before_it_is_opened(string what)
    {
        foreach (var (mesh, says) in Strange())
        {
            var input = Write("input.json", Encoding.UTF8.GetBytes($$"""
                {
                  "mould": { "shape": "mesh", "file": {{JsonSerializer.Serialize(mesh)}}, "unit": "mm", "wall": { "thicknessMm": 5 } }
                }
                """));
            var error = (await ErrorsAsync(what, [input])).Where(e => e.Path == "mould.file").ShouldHaveSingleItem();
            error.Message.ShouldContain(says, customMessage: mesh);
        }
    }

    [Fact]
    public async Task A_link_to_a_file_is_that_file()
    {
        var link = Path.Combine(folder.FullName, "link.json");
        File.CreateSymbolicLink(link, Write("price.json", """{ "currency": "EUR", "packaging": "12.50" }"""u8.ToArray()));
        (await RunAsync("price", [link], Stream.Null)).ExitCode.ShouldBe(0);
    }

    [Theory]
    [MemberData(nameof(Calculated))]
    public async Task What_a_file_holds_never_ends_in_an_exception(string what)
    {
        const string Good = """{ "currency": "EUR", "name": "é" }""";
        foreach (var (name, bytes, says) in new (string, byte[], string)[]
        {
            ("empty", [], "There is no input"),
            ("a mark and nothing else", [0xEF, 0xBB, 0xBF], "There is no input"),
            ("UTF-16, marked", [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Good)], "not UTF-8"),
            ("UTF-16, the other way round", [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(Good)], "not UTF-8"),
            ("UTF-16, unmarked", Encoding.Unicode.GetBytes(Good), "not UTF-8"),
            ("Latin-1", Encoding.Latin1.GetBytes(Good), "not UTF-8"),
            ("rubbish", Rubbish(100_000), "not UTF-8"),
            ("zeros", new byte[1_000_000], "not UTF-8"),
            ("brackets", Encoding.UTF8.GetBytes(new string('[', 100_000)), "brackets within brackets"),
            ("braces", Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("{\"a\":", 100_000))), "brackets within brackets"),
            ("brackets, closed", Encoding.UTF8.GetBytes("{\"room\":" + new string('[', 100_000) + new string(']', 100_000) + "}"), "brackets within brackets"),
            ("not a number", """{ "untilHours": NaN }"""u8.ToArray(), "not JSON"),
            ("infinite", """{ "untilHours": -Infinity }"""u8.ToArray(), "not JSON"),
            ("half a letter", [0x7B, 0xED, 0xA0, 0x80, 0x7D], "not UTF-8"),
            ("half a letter, escaped", """{ "\ud800": 1, "currency": "\ud800" }"""u8.ToArray(), "half of a character"),
            ("one of two", """{ "currency": "EUR", "currency": "GBP" }"""u8.ToArray(), "currency"),
            ("beyond any number", """{ "untilHours": 1e999, "abradeMinutes": 1e999, "packaging": 1e999, "mould": { "shape": "cone", "heightMm": 1e999 } }"""u8.ToArray(), "1e999"),
            ("a list", "[1]"u8.ToArray(), "one JSON object"),
        })
        {
            var answer = await RunAsync(what, [Write("input.json", bytes)], Stream.Null);
            answer.ExitCode.ShouldBe(2, $"{what}, {name}");
            var told = string.Join(' ', Errors(answer).Select(e => e.Message));
            told.ShouldContain(says, customMessage: $"{what}, {name}");
        }
    }

    [Theory]
    [MemberData(nameof(Calculated))]
    public async Task An_endless_input_ends_at_the_limit(string what) =>
        Errors(await RunAsync(what, [], new Endless())).ShouldHaveSingleItem().Message.ShouldContain("16 MB");

    [Fact]
    public void What_nobody_foresaw_is_answered_in_json() =>
        Errors(CalcCommand.Guarded(() => throw new InvalidOperationException("a fault"))).ShouldHaveSingleItem().Message.ShouldContain("No answer can be given");

    private static IReadOnlyList<InputError> Errors(Answer answer)
    {
        answer.ExitCode.ShouldBe(2, answer.Json);
        return [.. JsonElement.Parse(answer.Json).GetProperty("errors").EnumerateArray().Select(e => new InputError(e.GetProperty("path").GetString()!, e.GetProperty("message").GetString()!))];
    }

    private static byte[] Rubbish(int count)
    {
        var bytes = new byte[count];
        new Random(4711).NextBytes(bytes);
        return bytes;
    }

    // a pipe that nobody writes to would keep whoever opens it waiting for ever, so it runs beside the test
    private static Task<Answer> RunAsync(string what, string[] files, Stream input) => Task.Run(() => CalcCommand.Run(what, files, () => input)).WaitAsync(Longest);

    private async Task<IReadOnlyList<InputError>> ErrorsAsync(string what, string[] files) => Errors(await RunAsync(what, files, Stream.Null));

    private async Task<string> RefusalAsync(string what, string[] files) => (await ErrorsAsync(what, files)).ShouldHaveSingleItem().Message;

    private IEnumerable<(string File, string Says)> Strange()
    {
        string At(string name) => Path.Combine(folder.FullName, name);
        yield return (At("none"), "none of that name");
        yield return (folder.FullName, "a folder");
        yield return ("/dev/null", "a device");
        yield return ("/dev/zero", "a device");
        yield return (Pipe(At("pipe")), "a pipe");
        yield return (Bound(At("socket")), "a socket");
        yield return (Link(At("broken"), At("nowhere")), "is not there");
        yield return (Link(At("to-pipe"), At("pipe")), "a pipe");
        yield return (Link(At("round"), At("round")), "is not there");
        yield return (Sparse(At("two-gigabytes")), "2048 MB long");
        yield return ("a\0b", "no name of a file");
    }

    private static string Pipe(string path)
    {
        if (!File.Exists(path))
        {
            MakePipe(Encoding.UTF8.GetBytes(path + "\0"), 0x180).ShouldBe(0);
        }

        return path;
    }

    private string Bound(string path)
    {
        if (!File.Exists(path))
        {
            socket.Bind(new UnixDomainSocketEndPoint(path));
        }

        return path;
    }

    private static string Link(string path, string target)
    {
        if (new FileInfo(path).LinkTarget is null)
        {
            File.CreateSymbolicLink(path, target);
        }

        return path;
    }

    private static string Sparse(string path)
    {
        using var file = File.Create(path);
        file.SetLength(2L * 1024 * 1024 * 1024);
        return path;
    }

    [DllImport("libc", EntryPoint = "mkfifo")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int MakePipe(byte[] path, uint mode);

    private string Write(string name, byte[] bytes)
    {
        var path = Path.Combine(folder.FullName, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    // /dev/zero on standard input
    private sealed class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get; set; }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Clear(buffer, offset, count);
            return count;
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
