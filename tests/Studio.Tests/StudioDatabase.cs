using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using Studio.Data;
using Studio.Data.Files;

namespace Studio.Tests;

/// <summary>A real, migrated SQLite file of its own, gone with the test.</summary>
public sealed class StudioDatabase : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-test-").FullName;

    /// <summary>Begins empty, or as a released studio.</summary>
    /// <param name="sample">A released database to begin from, such as <c>studio-0.3.0.db</c>; null for an empty one.</param>
    public StudioDatabase(string? sample = null)
    {
        if (sample is not null)
        {
            File.Copy(Path.Combine(Sources.Root(), "db", "samples", sample), Path.Combine(folder, "studio.db"));
        }

        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, Path.Combine(folder, "studio.db"));
        Papers = new PaperFolder(Path.Combine(folder, "papers"));
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

    /// <summary>Beside the database, empty.</summary>
    public PaperFolder Papers { get; }

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
