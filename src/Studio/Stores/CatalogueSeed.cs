using System.Reflection;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Moulds;
using Studio.Resins;

namespace Studio.Stores;

/// <summary>A seed file: a note for whoever reads it, and the rows.</summary>
public sealed record CatalogueFile<T>(string Note, IReadOnlyList<T> Rows);

/// <summary>Plants the starting catalogue into stores that are wholly empty, so that the first piece can be drawn at once; never again after that.</summary>
public sealed class CatalogueSeed : ISeed
{
    /// <summary>Act of the history line that says a row came from the catalogue, its price invented.</summary>
    public const string Act = "from the catalogue";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>Rows of one seed file.</summary>
    /// <param name="name"><c>moulds</c>, <c>resins</c> or <c>materials</c>.</param>
    public static CatalogueFile<T> Read<T>(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"seed/{name}.json")
            ?? throw new InvalidOperationException($"The seed file {name}.json is not part of this program.");
        return JsonSerializer.Deserialize<CatalogueFile<T>>(stream, Options)!;
    }

    public async Task PlantAsync(StudioDb db)
    {
        if (await db.Set<Mould>().AnyAsync() || await db.Set<Resin>().AnyAsync() || await db.Set<Material>().AnyAsync())
        {
            return;
        }

        await using var together = await db.Database.BeginTransactionAsync();
        var materials = Read<Material>("materials").Rows;
        db.AddRange(Read<Mould>("moulds").Rows);
        db.AddRange(Read<Resin>("resins").Rows);
        db.AddRange(materials);
        await db.SaveChangesAsync();

        // a later edit of the price writes its own line, so the page knows which prices are still invented
        db.AddRange(materials.Where(m => m.PackPrice > 0).Select(m => new AuditEntry
        {
            At = db.Now,
            By = "catalogue",
            Entity = nameof(Material),
            EntityId = FormattableString.Invariant($"{m.Id}"),
            Act = Act,
            Changes = """{"PackPrice":[null,"invented"]}""",
        }));
        await db.SaveChangesAsync();
        await together.CommitAsync();
    }
}
