using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Studio.Customers;
using Studio.Data;
using Studio.Data.Files;

namespace Studio.Tests.Disk;

/// <summary>A lost, damaged or full disk: words that say what to do, and nothing that was kept before is touched.</summary>
public sealed class DiskTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-disk-").FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Photographs_without_a_database_are_a_loss_and_not_a_beginning()
    {
        var photo = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "photos")).FullName, "one");
        await File.WriteAllTextAsync(photo, "kept", TestContext.Current.CancellationToken);
        var opened = await OpenAsync();
        opened.Ok.ShouldBeFalse();
        opened.Words.ShouldContain("restore a backup");
        File.Exists(DataSetup.DatabaseFile(folder)).ShouldBeFalse("an empty database would hide the loss");
        (await OpenAsync(("new-database", "true"))).Ok.ShouldBeTrue();
        File.Exists(photo).ShouldBeTrue();
    }

    [Fact]
    public async Task A_damaged_database_is_refused_and_left_as_it_is()
    {
        var damaged = new byte[8192];
        new Random(1).NextBytes(damaged);
        await File.WriteAllBytesAsync(DataSetup.DatabaseFile(folder), damaged, TestContext.Current.CancellationToken);
        var opened = await OpenAsync();
        opened.Ok.ShouldBeFalse();
        opened.Words.ShouldContain("cannot be opened");
        (await File.ReadAllBytesAsync(DataSetup.DatabaseFile(folder), TestContext.Current.CancellationToken)).ShouldBe(damaged);
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_said_with_the_way_out()
    {
        var file = Path.Combine(folder, "not-a-folder");
        await File.WriteAllTextAsync(file, "", TestContext.Current.CancellationToken);
        var opened = await OpenAsync(("DataDir", Path.Combine(file, "studio")));
        opened.Ok.ShouldBeFalse();
        opened.Words.ShouldContain("--data FOLDER");
    }

    [Fact]
    public async Task A_full_disk_is_said_in_words_and_what_was_kept_before_stays()
    {
        (await OpenAsync()).Ok.ShouldBeTrue();
        await using var services = Services([]);
        var factory = services.GetRequiredService<IDbContextFactory<StudioDb>>();
        await using var db = await factory.CreateDbContextAsync(TestContext.Current.CancellationToken);
        db.Add(new Customer { Name = "Kept before", CreatedAt = db.Now });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);

        // SQLite refuses to grow past this many pages with the very code a full disk gives
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await db.Database.ExecuteSqlRawAsync("pragma max_page_count = 1", TestContext.Current.CancellationToken);
        var saved = await Saved.TryAsync(async () =>
        {
            db.Add(new Customer { Name = "Too much", Notes = new string('x', 3_000_000), CreatedAt = db.Now });
            await db.SaveChangesAsync();
            return Saved.Done();
        });
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldBe(Saved.DiskFull);
        await using var after = await factory.CreateDbContextAsync(TestContext.Current.CancellationToken);
        (await after.Set<Customer>().Select(c => c.Name).ToListAsync(TestContext.Current.CancellationToken)).ShouldBe(["Kept before"]);
    }

    [Fact]
    public async Task A_database_lost_while_open_is_said_in_words()
    {
        (await OpenAsync()).Ok.ShouldBeTrue();
        await using var services = Services([]);
        var factory = services.GetRequiredService<IDbContextFactory<StudioDb>>();
        SqliteConnection.ClearAllPools();
        foreach (var file in Directory.GetFiles(folder, "studio.db*"))
        {
            File.Delete(file);
        }

        var saved = await Saved.TryAsync(async () =>
        {
            await using var db = await factory.CreateDbContextAsync();
            db.Add(new Customer { Name = "Nowhere to go", CreatedAt = db.Now });
            await db.SaveChangesAsync();
            return Saved.Done();
        });
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldBe(Saved.NoDatabase);
    }

    [Theory]
    [InlineData("foreign_keys", "1")]
    [InlineData("synchronous", "2")] // FULL, sqlite.org/pragma.html
    [InlineData("journal_mode", "wal")]
    public async Task The_database_is_as_safe_as_it_is_meant_to_be(string pragma, string value)
    {
        (await OpenAsync()).Ok.ShouldBeTrue();
        await using var services = Services([]);
        await using var db = await services.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = "pragma " + pragma;
        Convert.ToString(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken), System.Globalization.CultureInfo.InvariantCulture).ShouldBe(value);
    }

    private async Task<Saved> OpenAsync(params (string Key, string Value)[] settings)
    {
        await using var services = Services(settings);
        return await DataOpening.OpenAsync(services, Configuration(settings));
    }

    private ServiceProvider Services((string Key, string Value)[] settings) =>
        new ServiceCollection().AddSingleton<IWriter>(new OwnName("test")).AddSingleton(TimeProvider.System).AddSingleton(new PhotoStore(Path.Combine(folder, "photos"))).AddSingleton(new PaperFolder(Path.Combine(folder, "papers"))).AddStudioData(Configuration(settings)).BuildServiceProvider();

    private IConfigurationRoot Configuration((string Key, string Value)[] settings) => new ConfigurationBuilder()
        .AddInMemoryCollection(new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase) { ["DataDir"] = folder })
        .AddInMemoryCollection(settings.Select(s => new KeyValuePair<string, string?>(s.Key, s.Value)))
        .Build();
}
