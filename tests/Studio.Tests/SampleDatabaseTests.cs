using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Settings;

namespace Studio.Tests;

/// <summary>A database of every released schema opens in today's studio, with nothing lost on the way.</summary>
public sealed class SampleDatabaseTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-sample-").FullName;

    public static TheoryData<string> Samples => [.. Directory.GetFiles(Path.Combine(Sources.Root(), "db", "samples"), "*.db").Select(f => Path.GetFileName(f))];

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task A_released_database_opens(string sample)
    {
        var file = Path.Combine(folder, "studio.db");
        File.Copy(Path.Combine(Sources.Root(), "db", "samples", sample), file);
        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, file);
        await using var db = new SqliteStudioDb(options.Options);
        await db.Database.MigrateAsync(TestContext.Current.CancellationToken);
        var pieces = await db.Set<Piece>().Include(p => p.Layers).ThenInclude(l => l.Resin).Include(p => p.Mould).AsNoTracking().ToListAsync(TestContext.Current.CancellationToken);
        pieces.Count.ShouldBe(13);
        pieces.Where(p => p.Layers.Count > 0).ShouldAllBe(p => Engine.Layers.LayersCalculation.Run(PieceBook.Design(p)).Ok);
        (await db.Set<Keepsake>().CountAsync(TestContext.Current.CancellationToken)).ShouldBe(14);
        var agreed = await db.Set<Quote>().AsNoTracking().Where(q => q.State == QuoteState.Accepted).ToListAsync(TestContext.Current.CancellationToken);
        agreed.ShouldNotBeEmpty();
        agreed.ShouldAllBe(q => q.Result!.Deposit + q.Result.Balance == q.Result.Total);
        var own = await db.Set<StudioSettings>().AsNoTracking().SingleAsync(TestContext.Current.CancellationToken);
        new SettingsValidator().Validate(own).Errors.ShouldBeEmpty("figures that came later begin with their usual values");
        (own.WorkDays, own.ReserveDays).ShouldSatisfyAllConditions(o => o.WorkDays.ShouldBe(WorkWeek.Usual), o => o.ReserveDays.ShouldBe(WorkWeek.UsualReserveDays));
    }
}
