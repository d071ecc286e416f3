using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Settings;

/// <summary>One field before and after.</summary>
public sealed record ChangedField(string Field, string Before, string After);

/// <summary>One change of one record.</summary>
/// <param name="At">[UTC]</param>
/// <param name="Link">Where the record is shown; null where it has no page of its own.</param>
public sealed record ChangeLine(int Id, DateTime At, string By, string What, string? Link, bool Removed, IReadOnlyList<ChangedField> Fields);

/// <summary>A page of changes, newest first.</summary>
public sealed record ChangeList(IReadOnlyList<ChangeLine> Lines, bool More, TimeZoneInfo Zone);

/// <summary>Reads what was changed, by whom and when.</summary>
public sealed class AuditBook(IDbContextFactory<StudioDb> factory, SettingsBook settings)
{
    private const int Longest = 160;

    // what a record is called, and where it is shown; an entity without a line is called by its own name
    private static readonly Dictionary<string, (string Name, string? Link)> Known = new(StringComparer.Ordinal)
    {
        ["Commission"] = ("Commission", "/commissions/"),
        ["Customer"] = ("Customer", "/customers?edit="),
        ["Piece"] = ("Piece", "/pieces/"),
        ["Quote"] = ("Price", "/quotes/"),
        ["StudioSettings"] = ("Settings", null),
        ["StudioUser"] = ("Person", null),
        ["Keepsake"] = ("Keepsake", null),
        ["Pour"] = ("Pour", null),
    };

    /// <summary>The changes in which every typed word stands: who, what kind of record, which field, before or after.</summary>
    public async Task<ChangeList> ListAsync(string search, int take)
    {
        await using var db = await factory.CreateDbContextAsync();
        var found = db.Set<AuditEntry>().AsNoTracking().Where(a => a.Changes != "{}" || a.Act != "changed");
#pragma warning disable CA1304, CA1311, CA1862, MA0011 // lower() runs in the database, which has no culture
        foreach (var pattern in Matching.Patterns(search))
        {
            found = found.Where(a => EF.Functions.Like((a.By + " " + a.Entity + " " + a.Changes).ToLower(), pattern, Matching.Escape));
        }
#pragma warning restore CA1304, CA1311, CA1862, MA0011

        var entries = await found.OrderByDescending(a => a.Id).Take(take + 1).ToListAsync();
        return new ChangeList([.. entries.Take(take).Select(Line)], entries.Count > take, await settings.ZoneAsync());
    }

    private static ChangeLine Line(AuditEntry entry)
    {
        var (name, link) = Known.TryGetValue(entry.Entity, out var known) ? known : (entry.Entity, null);
        return new ChangeLine(entry.Id, entry.At, entry.By, name, link is null ? null : link + entry.EntityId, entry.Act == "removed", Fields(entry.Changes));
    }

    private static IReadOnlyList<ChangedField> Fields(string changes)
    {
        try
        {
            var fields = JsonSerializer.Deserialize<Dictionary<string, string?[]>>(changes.Length == 0 ? "{}" : changes) ?? [];
            return [.. fields.Where(f => f.Value.Length == 2).Select(f => new ChangedField(Spaced(f.Key), Short(f.Value[0]), Short(f.Value[1])))];
        }
        catch (JsonException)
        {
            return [];
        }
    }

    // "NeededBy" is read as "needed by"; what is words already stays as it is
    private static string Spaced(string property) => property.Contains(' ', StringComparison.Ordinal)
        ? property
        : string.Concat(property.Select((c, i) => i > 0 && char.IsUpper(c) && !char.IsUpper(property[i - 1]) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    private static string Short(string? value) => value switch
    {
        null or "" => "(empty)",
        { Length: > Longest } => value[..Longest] + "…",
        _ => value,
    };
}
