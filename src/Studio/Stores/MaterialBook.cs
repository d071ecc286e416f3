using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Resins;

namespace Studio.Stores;

/// <summary>One line of the ledger of materials.</summary>
/// <param name="UnitPrice">Price of one of its unit.</param>
/// <param name="PriceFor">1, or 100 where one costs so little that its price would be lost in the rounding.</param>
/// <param name="Price">Price of <paramref name="PriceFor"/> of its unit.</param>
/// <param name="PriceInvented">True while the price is the catalogue's example.</param>
public sealed record MaterialRow(
    int Id, string Name, string Kind, string Unit, double? DensityGPerMl, string DensitySource, double? PackingFraction,
    double PackSize, decimal PackPrice, decimal UnitPrice, int PriceFor, decimal Price, bool PriceInvented, bool Retired);

/// <summary>What follows from a material's figures.</summary>
/// <param name="SolidOf100MlBulk">Grams of it in 100 ml poured loose.</param>
public sealed record MaterialGlance(int PriceFor, decimal? Price, double? SolidOf100MlBulk, IReadOnlyList<Finding> Doubts);

/// <summary>Reads and writes materials.</summary>
public sealed class MaterialBook(IDbContextFactory<StudioDb> factory, News news)
{
    private const double TypicalResinGPerMl = 1.10;

    /// <summary>Every material by name, retired ones too if asked for.</summary>
    public async Task<IReadOnlyList<MaterialRow>> ListAsync(bool retired = false)
    {
        await using var db = await factory.CreateDbContextAsync();
        var invented = (await InventedPrices.OfAsync(db)).Materials;
        var all = await db.Set<Material>().AsNoTracking().Where(m => retired || !m.Retired).ToListAsync();
        return [.. all.OrderBy(m => m.Name, StringComparer.OrdinalIgnoreCase).Select(m => new MaterialRow(
            m.Id, m.Name, m.Kind, m.Unit, m.DensityGPerMl, m.DensitySource, m.PackingFraction, m.PackSize, m.PackPrice,
            PerUnit(m.PackPrice, m.PackSize), For(PerUnit(m.PackPrice, m.PackSize)), PerUnit(m.PackPrice, m.PackSize) * For(PerUnit(m.PackPrice, m.PackSize)), invented.Contains(m.Id), m.Retired))];
    }

    /// <summary>The form of one material, or null when there is none of that number.</summary>
    public async Task<MaterialForm?> FormAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Material>().AsNoTracking().SingleOrDefaultAsync(m => m.Id == id) is { } material ? MaterialForm.Of(material) : null;
    }

    /// <summary>True while the price is still the catalogue's invented one.</summary>
    public async Task<bool> PriceInventedAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return (await InventedPrices.OfAsync(db)).Materials.Contains(id);
    }

    /// <summary>Keeps a form that the validator has passed.</summary>
    public Task<Saved> SaveAsync(MaterialForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var material = form.ToMaterial();
        if (await TakenAsync(db, material))
        {
            return Saved.Refused($"There is a material called “{material.Name}” already. Open that one, or give this one a name of its own.");
        }

        var kept = material.Id == 0 ? db.Add(material).Entity : await db.OverwriteAsync(material);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, kept.Id);
        return Saved.Done(kept.Id);
    });

    /// <summary>Takes it out of the lists; pieces that use it keep it.</summary>
    public Task<Saved> RetireAsync(int id, string by) => SetRetiredAsync(id, retired: true, by);

    /// <summary>Puts it back into the lists.</summary>
    public Task<Saved> RestoreAsync(int id, string by) => SetRetiredAsync(id, retired: false, by);

    /// <summary>What the figures typed so far come to.</summary>
    public static MaterialGlance Glance(MaterialForm form)
    {
        decimal? one = form is { PackSize: > 1e-6 and <= 1e9, PackPrice: >= 0 and <= 1e6 } ? PerUnit((decimal)form.PackPrice.Value, form.PackSize.Value) : null;
        return new(For(one ?? 1), one * For(one ?? 1), 100 * form.DensityGPerMl * form.PackingFraction, [.. Doubts(form)]);
    }

    private static IEnumerable<Finding> Doubts(MaterialForm form)
    {
        if (MaterialKinds.UsualDensity(form.Kind) is var (low, high)
            && Slip.Doubt(form.DensityGPerMl, low, high, "g/ml", $"The density of “{MaterialKinds.Words(form.Kind)}”", Slip.PerCubicMetre, nameof(form.DensityGPerMl)) is { } slipped)
        {
            yield return slipped;
        }

        if (form.DensityGPerMl is { } d && d < TypicalResinGPerMl - 0.05)
        {
            yield return new("floats", Severity.Note, nameof(form.DensityGPerMl), "Lighter than resin, which is about 1.1 g/ml: it floats. Tack it down with a thin pour first.", "Archimedes; the margin of 0.05 g/ml is our choice");
        }
        else if (form.DensityGPerMl is { } near && near < TypicalResinGPerMl + 0.05)
        {
            yield return new("drifts", Severity.Note, nameof(form.DensityGPerMl), "About as heavy as resin: it may drift where it was put.", "Archimedes; the margin of 0.05 g/ml is our choice");
        }

        if (form.PackingFraction is > 0.741)
        {
            yield return new("packing-unusual", Severity.Warn, nameof(form.PackingFraction), "Equal spheres cannot fill more than 0.74 of a space; loose pieces fill 0.4 to 0.65. Check the figure.", "densest packing of equal spheres, 0.7405");
        }
    }

    private static int For(decimal unitPrice) => unitPrice < 0.5m ? 100 : 1;

    private static decimal PerUnit(decimal price, double size) => size > 0 ? price / (decimal)size : 0;

    private static async Task<bool> TakenAsync(StudioDb db, Material material) =>
        !material.Retired && (await db.Set<Material>().Where(m => !m.Retired && m.Id != material.Id).Select(m => m.Name).ToListAsync()).Contains(material.Name, StringComparer.OrdinalIgnoreCase);

    private Task<Saved> SetRetiredAsync(int id, bool retired, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Material>().FindAsync(id) is not { } material)
        {
            return Saved.Refused("This material is no longer in the stores.");
        }

        material.Retired = retired;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, id);
        return Saved.Done(id);
    });
}
