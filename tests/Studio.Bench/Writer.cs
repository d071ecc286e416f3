using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Bench.Tools;

/// <summary>
/// Writes keepsakes and their histories through the real book for as long as it is let live, several at once, and says each thing aloud once
/// it is acknowledged: <c>IN number</c>, and <c>DO number entry</c>.
/// </summary>
internal static class Writer
{
    /// <summary>Histories under way at any moment.</summary>
    private const int AtOnce = 50;

    public static IDbContextFactory<StudioDb> Open(string folder)
    {
        Directory.CreateDirectory(folder);
        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, DataSetup.DatabaseFile(folder));
        return new StudioDbFactory<SqliteStudioDb>(new Plain(options.Options), TimeProvider.System, writer: new OwnName("bench"));
    }

    /// <summary>A fresh database with one commission and one piece to write to.</summary>
    public static async Task<int> MakeAsync(string folder)
    {
        await using var db = await Open(folder).CreateDbContextAsync();
        await db.Database.MigrateAsync();
        var commission = new Commission { Number = "26-001", Title = "Kill test", Customer = new Customer { Name = "Nobody", CreatedAt = db.Now }, CreatedAt = db.Now };
        db.Add(commission);
        await db.SaveChangesAsync();
        db.Add(new Piece { CommissionId = commission.Id, Name = "A pyramid", Mould = new Mould { Name = "Pyramid", Shape = "pyramid" }, CreatedAt = db.Now });
        await db.SaveChangesAsync();
        return 0;
    }

    public static async Task<int> RunAsync(string folder)
    {
        var factory = Open(folder);
        var news = new News();
        var book = new KeepsakeBook(factory, new SettingsBook(factory, news), news, new PieceNames(), new PourNames());
        await using var output = Console.OpenStandardOutput();
        using var mouth = new SemaphoreSlim(1, 1);

        // every history is begun before any goes on: the database is not fair, and some would not have begun at the kill
        var begun = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(i => Task.Run(() => BeginAsync(book, FormattableString.Invariant($"{i}.0"), SayAsync))));
        await Task.WhenAll(begun.Select((number, i) => Task.Run(() => LiveAsync(book, i, number, SayAsync))));
        return 0;

        // straight to the pipe, unbuffered: whatever the parent reads was acknowledged before the kill
        async Task SayAsync(string words)
        {
            await mouth.WaitAsync();
            try
            {
                await output.WriteAsync(System.Text.Encoding.UTF8.GetBytes(words + "\n"));
                await output.FlushAsync();
            }
            finally
            {
                mouth.Release();
            }
        }
    }

    // takes a keepsake in, and says its number once that is acknowledged
    private static async Task<string> BeginAsync(KeepsakeBook book, string name, Func<string, Task> say)
    {
        var taken = await book.TakeInAsync(1, new IntakeForm { Kind = "iron", Description = $"Hive nails {name}", Count = 6, MassG = 60, Permits = Permissions.EmbedAll, Place = "Drawer" }, "killer");
        if (!taken.Ok)
        {
            await Console.Error.WriteLineAsync(taken.Words);
            Environment.Exit(1);
        }

        await say("IN " + taken.EntryNumber);
        return taken.EntryNumber;
    }

#pragma warning disable CA5394 // a history that hands could make, not a secret
    private static async Task LiveAsync(KeepsakeBook book, int worker, string number, Func<string, Task> say)
    {
        var random = new Random(Environment.TickCount + (worker * 7919));
        for (var n = 1; ; n++)
        {
            for (var step = random.Next(3, 9); step > 0; step--)
            {
                await ActAsync(book, number, random, say);
            }

            number = await BeginAsync(book, FormattableString.Invariant($"{worker}.{n}"), say);
        }
    }

    private static async Task ActAsync(KeepsakeBook book, string number, Random random, Func<string, Task> say)
    {
        var view = (await book.ViewAsync(number))!;
        var grams = Math.Round(random.NextDouble() * 12, 1);
        var form = random.Next(8) switch
        {
            0 => new ActForm { Act = CustodyKind.Moved, Place = random.Next(2) == 0 ? "Bench" : "Safe", Words = "for the night" },
            1 => new ActForm { Act = CustodyKind.SetIn, PieceId = 1, Count = random.Next(0, 3), MassG = grams, Place = "Drawer" },
            2 => new ActForm { Act = CustodyKind.Returned, Count = random.Next(0, 3), MassG = grams, Whom = "Nobody" },
            3 => new ActForm { Act = CustodyKind.Returned, All = true, Whom = "Nobody" },
            4 => new ActForm { Act = CustodyKind.Divided, Count = 1, Words = "in two" },
            5 => new ActForm { Act = CustodyKind.Lost, Count = 1, Words = "fell" },
            6 => new ActForm { Act = CustodyKind.Weighed, MassG = Math.Max(0.1, (view.Now.Balance.Held.MassG ?? 10) - 0.1) },
            _ => null,
        };
        var saved = form is null
            ? view.Now.UndoId is { } undo ? await book.UndoAsync(view.Keepsake.Id, view.Keepsake.Version, undo, "killer") : Saved.Refused("")
            : await book.DoAsync(view.Keepsake.Id, view.Keepsake.Version, form, "killer");
        if (saved.Ok)
        {
            await say(string.Create(CultureInfo.InvariantCulture, $"DO {number} {saved.Id}"));
        }
    }
#pragma warning restore CA5394

    private sealed class Plain(DbContextOptions<SqliteStudioDb> options) : IDbContextFactory<SqliteStudioDb>
    {
        public SqliteStudioDb CreateDbContext() => new(options);
    }
}
