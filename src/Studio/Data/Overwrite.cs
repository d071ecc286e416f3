using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>Saving what a form holds over what the database holds.</summary>
public static class Overwrite
{
    /// <summary>
    /// Loads the stored record, lays the edited one's fields over it and remembers the version the form started from,
    /// so that a save over somebody's newer version throws <see cref="DbUpdateConcurrencyException"/> and the audit sees each field's before and after.
    /// </summary>
    /// <exception cref="DbUpdateConcurrencyException">The record is gone.</exception>
    public static async Task<T> OverwriteAsync<T>(this StudioDb db, T edited)
        where T : class, IVersioned
    {
        var key = db.Model.FindEntityType(typeof(T))!.FindPrimaryKey()!.Properties.Select(p => p.PropertyInfo!.GetValue(edited)).ToArray();
        var stored = await db.Set<T>().FindAsync(key) ?? throw new DbUpdateConcurrencyException("The record is gone.");
        var entry = db.Entry(stored);
        entry.CurrentValues.SetValues(edited);
        entry.Property(nameof(IVersioned.Version)).OriginalValue = edited.Version;
        if (!db.ChangeTracker.HasChanges())
        {
            // nothing differs; still refuse when it was changed elsewhere meanwhile
            entry.Property(nameof(IVersioned.Version)).IsModified = true;
        }

        return stored;
    }
}
