using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Settings;

namespace Studio.Bench.Tools;

/// <summary>Writes keepsakes through the real book for as long as it is let live, and says each one aloud once it is acknowledged.</summary>
internal static class Writer
{
    public static IDbContextFactory<StudioDb> Open(string folder)
    {
        Directory.CreateDirectory(folder);
        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, DataSetup.DatabaseFile(folder));
        return new StudioDbFactory<SqliteStudioDb>(new Plain(options.Options), TimeProvider.System, writer: new OwnName("bench"));
    }

    /// <summary>A fresh database with one commission to write to.</summary>
    public static async Task<int> MakeAsync(string folder)
    {
        await using var db = await Open(folder).CreateDbContextAsync();
        await db.Database.MigrateAsync();
        db.Add(new Commission { Number = "26-001", Title = "Kill test", Customer = new Customer { Name = "Nobody", CreatedAt = db.Now }, CreatedAt = db.Now });
        await db.SaveChangesAsync();
        return 0;
    }

    public static async Task<int> RunAsync(string folder)
    {
        var factory = Open(folder);
        var news = new News();
        var book = new KeepsakeBook(factory, new SettingsBook(factory, news), news);
        await using var output = Console.OpenStandardOutput();
        for (var i = 0; ; i++)
        {
            var taken = await book.TakeInAsync(1, new IntakeForm { Kind = "iron", Description = $"Hive nail {i}", Permits = Permission.EmbedAll, Place = "Drawer" }, "killer");
            if (!taken.Ok)
            {
                await Console.Error.WriteLineAsync(taken.Words);
                return 1;
            }

            // straight to the pipe, unbuffered: whatever the parent reads was acknowledged before the kill
            await output.WriteAsync(System.Text.Encoding.UTF8.GetBytes(taken.EntryNumber + "\n"));
            await output.FlushAsync();
        }
    }

    private sealed class Plain(DbContextOptions<SqliteStudioDb> options) : IDbContextFactory<SqliteStudioDb>
    {
        public SqliteStudioDb CreateDbContext() => new(options);
    }
}
