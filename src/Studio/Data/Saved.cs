using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>How a save ended: done, or a sentence that says what to do. What was typed stays with the page.</summary>
/// <param name="Ok">True when it is on disk.</param>
/// <param name="Words">Why not, for a person; empty when it is.</param>
/// <param name="Id">The record's id when there is one.</param>
/// <param name="Code">Stable kebab-case key of a refusal, for those who must tell one from another; the words are for people alone.</param>
public sealed record Saved(bool Ok, string Words, int Id = 0, string Code = "")
{
    /// <summary>Code of a save that met a newer version of its record.</summary>
    public const string StaleCode = "stale";

    public const string SomeoneElse = "Someone else changed this while you had it open. Nothing of yours is lost: copy what you need, then load the newest version and save again.";

    public const string DiskFull = "The disk is full, so this could not be kept. Nothing that was saved before is lost. Free some space, then save again; what you typed is still here.";

    public const string NoDatabase = "The studio's database cannot be reached or is damaged, so this could not be kept. What you typed is still here. Check that the data folder is where it was, then save again.";

    public static Saved Done(int id = 0) => new(true, "", id);

    public static Saved Refused(string words, string code = "") => new(false, words, Code: code);

    /// <summary>Somebody else saved meanwhile.</summary>
    public static Saved Stale() => Refused(SomeoneElse, StaleCode);

    /// <summary>True when somebody else saved a newer version meanwhile.</summary>
    public bool IsStale => Code == StaleCode;

    /// <summary>Runs a save and turns what can go wrong on disk or between two people into words.</summary>
    public static async Task<Saved> TryAsync(Func<Task<Saved>> save)
    {
        try
        {
            return await save();
        }
        catch (DbUpdateConcurrencyException)
        {
            return Stale();
        }
        catch (Exception e) when (Collided(e))
        {
            return Stale();
        }
        catch (DbUpdateException e) when (Fault(e) is { } words)
        {
            return Refused(words);
        }
        catch (Microsoft.Data.Sqlite.SqliteException e) when (Fault(e) is { } words)
        {
            return Refused(words);
        }
        catch (IOException e) when (e.HResult is unchecked((int)0x80070070) or 28)
        {
            return Refused(DiskFull);
        }
    }

    // PostgreSQL's Appendix A: 40001 serialization failure, 40P01 deadlock: two people acted on the same records in one moment, and this one is to look again
    private static bool Collided(Exception e) => Inner(e).Any(x => x is Npgsql.PostgresException { SqlState: "40001" or "40P01" });

    private static IEnumerable<Exception> Inner(Exception? e)
    {
        for (; e is not null; e = e.InnerException)
        {
            yield return e;
        }
    }

    // SQLite's primary result codes: 8 read-only, 10 I/O error, 11 corrupt, 13 full, 14 cannot open, 26 not a database (sqlite.org/rescode.html);
    // 1 is a missing table, which is what an emptied or replaced file looks like
    private static string? Fault(Exception e) => (e as Microsoft.Data.Sqlite.SqliteException ?? e.InnerException as Microsoft.Data.Sqlite.SqliteException)?.SqliteErrorCode switch
    {
        13 => DiskFull,
        1 or 8 or 10 or 11 or 14 or 26 => NoDatabase,
        5 or 6 => "The database is busy with something else. What you typed is still here: save again in a moment.",
        _ => null,
    };
}
