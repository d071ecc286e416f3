using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using Studio.Data;
using Studio.Data.Files;

namespace Studio.Tests;

/// <summary>A real, migrated SQLite file of its own, gone with the test.</summary>
public sealed class StudioDatabase : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-test-").FullName;

    public StudioDatabase()
    {
        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, Path.Combine(folder, "studio.db"));
        Meshes = new MeshFolder(Path.Combine(folder, "meshes"));
        Factory = new StudioDbFactory<SqliteStudioDb>(new Plain(options.Options), Clock, Meshes, new OwnName("test"));
        using var db = Factory.CreateDbContext();
        db.Database.Migrate();
    }

    /// <summary>Stands at Monday 2 March 2026, 09:00 UTC until a test moves it.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    public News News { get; } = new();

    /// <summary>Beside the database, empty.</summary>
    public MeshFolder Meshes { get; }

    public IDbContextFactory<StudioDb> Factory { get; }

    /// <summary>A context of its own, for arranging and looking.</summary>
    public StudioDb Open() => Factory.CreateDbContext();

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private sealed class Plain(DbContextOptions<SqliteStudioDb> options) : IDbContextFactory<SqliteStudioDb>
    {
        public SqliteStudioDb CreateDbContext() => new(options);
    }
}
