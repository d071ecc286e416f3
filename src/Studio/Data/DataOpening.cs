using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Studio.Data.Files;

namespace Studio.Data;

/// <summary>Opens the data folder at start: makes what is new, brings an older schema up to date, and refuses what looks like a loss.</summary>
public static class DataOpening
{
    public static async Task<Saved> OpenAsync(IServiceProvider services, IConfiguration configuration)
    {
        var folder = DataSetup.Folder(configuration);
        try
        {
            PrivateFolder.NewFilesToo();
            Directory.CreateDirectory(folder);
            foreach (var open in PrivateFolder.Shut(folder))
            {
                services.GetService<ILoggerFactory>()?.CreateLogger("Studio.Data").LogWarning("{Path} belongs to another account of this computer, so it could not be made private. Give it to the account that runs the studio.", open);
            }

            if (Lost(folder, configuration))
            {
                return Saved.Refused($"The data folder {folder} holds photographs but no studio.db: the database is lost or was moved. Put the file back (or restore a backup). To begin an empty studio beside the photographs, start once with --new-database true.");
            }

            await using var scope = services.CreateAsyncScope();
            await using var db = await scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync();
            await db.Database.MigrateAsync();
            db.WriteAs("catalogue");
            foreach (var upgrade in services.GetServices<IUpgrade>())
            {
                await upgrade.UpgradeAsync(db);
            }

            services.GetRequiredService<PhotoStore>().ClearHalfReceived();
            services.GetRequiredService<PaperFolder>().ClearHalfReceived();
            services.GetRequiredService<MeshFolder>().ClearHalfReceived();
            foreach (var seed in services.GetServices<ISeed>())
            {
                await seed.PlantAsync(db);
            }

            return Saved.Done();
        }
        catch (SqliteException e) when (e.SqliteErrorCode is 8 or 10 or 11 or 13 or 14 or 26)
        {
            return Saved.Refused($"The database {DataSetup.DatabaseFile(folder)} cannot be opened ({e.Message}). Nothing was changed. Check the disk and the file's rights, or restore a backup.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Saved.Refused($"The data folder {folder} cannot be used: {e.Message} Choose another with --data FOLDER.");
        }
    }

    private static bool Lost(string folder, IConfiguration configuration) =>
        string.IsNullOrWhiteSpace(configuration["Database:Postgres"])
        && !configuration.GetValue("new-database", false)
        && !File.Exists(DataSetup.DatabaseFile(folder))
        && Directory.Exists(Path.Combine(folder, "photos"))
        && Directory.EnumerateFileSystemEntries(Path.Combine(folder, "photos")).Any();
}

/// <summary>Brings records of an older version into today's form, once the schema is today's; in one transaction, and safe to run at every start.</summary>
public interface IUpgrade
{
    Task UpgradeAsync(StudioDb db);
}

/// <summary>Puts the seed catalogue into a database that lacks it; safe to run at every start.</summary>
public interface ISeed
{
    Task PlantAsync(StudioDb db);
}
