using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Studio.Data;

/// <summary>
/// The studio's records. It names no entity: each feature's tables come by assembly scan, so a new entity edits no shared file.
/// </summary>
public abstract class StudioDb(DbContextOptions options) : IdentityDbContext<StudioUser, IdentityRole, string>(options)
{
    /// <summary>Ten-thousandths: every ISO 4217 currency has at most four decimals, so any amount is a whole number of them.</summary>
    private const decimal MoneyScale = 10_000m;

    /// <summary>Who is writing, as the audit tells it; set by the book before it saves, else <see cref="Writer"/>'s name.</summary>
    public string By { get; set; } = "";

    /// <summary>Asked before every write; without one nobody may write. Set by the factory from whoever is at work in its scope.</summary>
    public IWriter? Writer { get; set; }

    /// <summary>When it is written [UTC]; set by the factory from the clock.</summary>
    public DateTime Now { get; set; }

    /// <summary>Where the meshes lie that records name; set by the factory.</summary>
    public Files.MeshFolder? Meshes { get; set; }

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(StudioDb).Assembly);
        foreach (var type in builder.Model.GetEntityTypes().Where(t => typeof(IVersioned).IsAssignableFrom(t.ClrType)))
        {
            builder.Entity(type.ClrType).Property(nameof(IVersioned.Version)).IsConcurrencyToken();
        }
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<decimal>().HaveConversion<MoneyConverter>();
        configurationBuilder.Properties<DateTime>().HaveConversion<UtcConverter>();
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<long>();
    }

    /// <summary>Writes under a name of its own what no signed-in person began. A page never asks for it; a test lists who does.</summary>
    public void WriteAs(string name) => (By, Writer) = (name, new OwnName(name));

    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        await AskAsync();
        Stamp();
        return await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        Ask();
        Stamp();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <summary>Asks whether anybody may write here.</summary>
    /// <exception cref="SignedOutException">Nobody may, or no longer.</exception>
    internal async Task AskAsync()
    {
        var name = await (Writer ?? throw new SignedOutException()).NameAsync();
        By = By.Length == 0 ? name : By;
    }

    /// <summary>As <see cref="AskAsync"/>, for the few who save without waiting; no page does.</summary>
    internal void Ask() => AskAsync().GetAwaiter().GetResult();

    /// <summary>Raises versions, and writes down what changed and by whom, in the same transaction as the change itself.</summary>
    private void Stamp()
    {
        foreach (var entry in ChangeTracker.Entries<IVersioned>().ToList())
        {
            if (entry.State is EntityState.Modified)
            {
                entry.Entity.Version++;
            }

            if (entry.State is EntityState.Modified or EntityState.Deleted)
            {
                Set<AuditEntry>().Add(Audit(entry));
            }
        }
    }

    private AuditEntry Audit(EntityEntry<IVersioned> entry) => new()
    {
        At = Now,
        By = By,
        Entity = entry.Metadata.ClrType.Name,
        EntityId = Convert.ToString(entry.Property("Id").CurrentValue, CultureInfo.InvariantCulture) ?? "",
        Act = entry.State is EntityState.Deleted ? "removed" : "changed",
        Changes = JsonSerializer.Serialize(entry.Properties
            .Where(p => p.IsModified && p.Metadata.Name is not nameof(IVersioned.Version) && !Equals(p.OriginalValue, p.CurrentValue))
            .ToDictionary(p => p.Metadata.Name, p => new[] { Text(p.OriginalValue), Text(p.CurrentValue) }, StringComparer.Ordinal)),
    };

    private static string? Text(object? value) => value switch
    {
        null => null,
        string s => s,
        IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
        _ => JsonSerializer.Serialize(value),
    };

    private sealed class MoneyConverter() : ValueConverter<decimal, long>(
        v => (long)Math.Round(v * MoneyScale, MidpointRounding.AwayFromZero),
        v => v / MoneyScale);

    private sealed class UtcConverter() : ValueConverter<DateTime, DateTime>(
        v => v.Kind == DateTimeKind.Local ? v.ToUniversalTime() : v,
        v => DateTime.SpecifyKind(v, DateTimeKind.Utc));
}

/// <summary>The default: one file beside the photographs.</summary>
public sealed class SqliteStudioDb(DbContextOptions<SqliteStudioDb> options) : StudioDb(options);

/// <summary>The option, by setting <c>Database:Postgres</c>.</summary>
public sealed class PostgresStudioDb(DbContextOptions<PostgresStudioDb> options) : StudioDb(options);
