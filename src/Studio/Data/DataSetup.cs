using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Studio.Data;

/// <summary>Where the studio's data lies, and the database wired up.</summary>
public static class DataSetup
{
    /// <summary>The data folder: <c>DataDir</c> (or <c>--data</c>), else the account's own data folder.</summary>
    public static string Folder(IConfiguration configuration)
    {
        var named = configuration["DataDir"];
        var folder = string.IsNullOrWhiteSpace(named)
            ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "studio")
            : named;
        return Path.GetFullPath(folder);
    }

    /// <summary>The SQLite file in the data folder.</summary>
    public static string DatabaseFile(string folder) => Path.Combine(folder, "studio.db");

    public static IServiceCollection AddStudioData(this IServiceCollection services, IConfiguration configuration)
    {
        var postgres = configuration["Database:Postgres"];
        if (!string.IsNullOrWhiteSpace(postgres))
        {
            services.AddDbContextFactory<PostgresStudioDb>(o => o.UseNpgsql(postgres).AddInterceptors(MeshGiver.Instance, WriteGate.Instance));
            services.AddScoped<IDbContextFactory<StudioDb>>(Factory<PostgresStudioDb>);
        }
        else
        {
            services.AddDbContextFactory<SqliteStudioDb>(o => UseStudioSqlite(o, DatabaseFile(Folder(configuration))));
            services.AddScoped<IDbContextFactory<StudioDb>>(Factory<SqliteStudioDb>);
        }

        services.AddScoped(s => s.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext());
        services.AddSingleton(_ => new Files.MeshFolder(Path.Combine(Folder(configuration), "meshes")));
        services.AddSingleton<News>();
        return services;
    }

    /// <summary>SQLite as the studio wants it: foreign keys on, WAL, every commit on disk before it is acknowledged.</summary>
    public static DbContextOptionsBuilder UseStudioSqlite(DbContextOptionsBuilder options, string file) =>
        options.UseSqlite(new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 15 }.ToString())
            .AddInterceptors(FullSync.Instance, MeshGiver.Instance, WriteGate.Instance);

    // one to each scope, which is an open page, a request or a job: what it makes knows who is at work there
    private static StudioDbFactory<T> Factory<T>(IServiceProvider services)
        where T : StudioDb =>
        new(services.GetRequiredService<IDbContextFactory<T>>(), services.GetRequiredService<TimeProvider>(), services.GetService<Files.MeshFolder>(), services.GetService<IWriter>());

    private sealed class FullSync : DbConnectionInterceptor
    {
        public static readonly FullSync Instance = new();

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Set(connection);

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            Set(connection);
            return Task.CompletedTask;
        }

        private static void Set(DbConnection connection)
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA synchronous=FULL;";
            command.ExecuteNonQuery();
        }
    }
}
