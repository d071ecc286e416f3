using System.Diagnostics;
using Microsoft.Data.Sqlite;

namespace Studio.Tests;

/// <summary>SIGKILL in the middle of writes: what was acknowledged is there, what was not is wholly absent, and the file checks clean.</summary>
public sealed class KillTests : IDisposable
{
    private const int Kills = 20;

    // as the writer has them under way
    private const int AtOnce = 50;

    private readonly string folder = Directory.CreateTempSubdirectory("studio-kill-").FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Fifty histories are under way at each kill, so that a thousand are killed and go on from what was kept.</summary>
    [Fact]
    [Trait("Slow", "kill")]
    public async Task A_thousand_histories_killed_and_restarted_add_up_and_lose_nothing_acknowledged()
    {
        (await RunAsync("make", _ => false)).ShouldBeEmpty();
        var random = new Random(7064);
        var acknowledged = new List<string>();
        var killedWhileWriting = 0;
        for (var i = 0; i < Kills; i++)
        {
            var wanted = random.Next(AtOnce, 2 * AtOnce);
            var extra = random.Next(0, 15);
            var heard = await RunAsync("write", h => h.Count >= wanted, extra);
            killedWhileWriting += heard.Count > 0 ? 1 : 0;
            acknowledged.AddRange(heard);
        }

        killedWhileWriting.ShouldBe(Kills);
        using var db = new SqliteConnection($"Data Source={Path.Combine(folder, "studio.db")}");
        db.Open();
        var kept = Column(db, "select EntryNumber from Keepsake").ToHashSet(StringComparer.Ordinal);
        var takenIn = acknowledged.Where(a => a.StartsWith("IN ", StringComparison.Ordinal)).Select(a => a[3..]).ToList();
        takenIn.Count.ShouldBeGreaterThanOrEqualTo(AtOnce * Kills);
        takenIn.Distinct(StringComparer.Ordinal).Count().ShouldBe(takenIn.Count);
        takenIn.Where(a => !kept.Contains(a)).ShouldBeEmpty();
        var entries = Column(db, "select k.EntryNumber || ' ' || e.Id from KeepsakeEvent e join Keepsake k on k.Id = e.KeepsakeId").ToHashSet(StringComparer.Ordinal);
        acknowledged.Where(a => a.StartsWith("DO ", StringComparison.Ordinal)).Select(a => a[3..]).Where(a => !entries.Contains(a)).ShouldBeEmpty();
        Column(db, "pragma integrity_check").ShouldBe(["ok"]);
        Column(db, "pragma foreign_key_check").ShouldBeEmpty();
        // all or nothing: a keepsake never without the first entry of its log, a number never given out past the counter
        Column(db, "select EntryNumber from Keepsake k where not exists (select 1 from KeepsakeEvent e where e.KeepsakeId = k.Id)").ShouldBeEmpty();
        Column(db, "select Last from EntryCounter").ShouldBe([kept.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)]);

        // and the program's own command finds that every balance adds up
        var (said, trouble) = (new StringWriter(), new StringWriter());
        (await Studio.Commands.CustodyCommand.CheckAsync(folder, said, trouble)).ShouldBe(0, said + trouble.ToString());
        said.ToString().ShouldContain($"{kept.Count} keepsakes: everything adds up.");
    }

    // starts the writer, listens until told enough, waits a moment longer and kills it without a warning
    private async Task<List<string>> RunAsync(string verb, Func<List<string>, bool> enough, int millisecondsMore = 0)
    {
        var start = new ProcessStartInfo(WriterPath(), [verb, folder]) { RedirectStandardOutput = true, UseShellExecute = false };
        // it lives three seconds: code that watches itself to be made faster later is a quarter of them
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_OSR_HitLimit"] = "1";
        using var process = Process.Start(start)!;
        var heard = new List<string>();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            heard.Add(line);
            if (enough(heard))
            {
                await Task.Delay(millisecondsMore);
                process.Kill();
                break;
            }
        }

        // what was in the pipe at the kill had been acknowledged too; a half line had not been heard
        var rest = await process.StandardOutput.ReadToEndAsync();
        heard.AddRange(rest.Split('\n').SkipLast(1));
        await process.WaitForExitAsync();
        return heard;
    }

    private static string WriterPath()
    {
        var own = new DirectoryInfo(AppContext.BaseDirectory);
        var tail = Path.GetRelativePath(Path.Combine(Sources.Root(), "tests", "Studio.Tests"), own.FullName);
        return Path.Combine(Sources.Root(), "tests", "Studio.Bench", tail, "Studio.Bench");
    }

    private static List<string> Column(SqliteConnection db, string sql)
    {
        using var command = db.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var values = new List<string>();
        while (reader.Read())
        {
            values.Add(Convert.ToString(reader.GetValue(0), System.Globalization.CultureInfo.InvariantCulture)!);
        }

        return values;
    }
}
