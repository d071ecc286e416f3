using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Story;

/// <summary>
/// Reads what the pages about commissions show. It looks into every feature's tables, so it lives beside them and none of them knows it;
/// what is written goes through each feature's own book.
/// </summary>
public sealed partial class StoryBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settings, KeepsakeBook keepsakeBook, PieceTimeBook times)
{

    /// <summary>Today on the studio's wall.</summary>
    public async Task<DateOnly> TodayAsync() => DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(clock.GetUtcNow().UtcDateTime, await settings.ZoneAsync()));

    /// <summary>The list: searched by number, customer, whom it remembers and what is asked for.</summary>
    public async Task<CommissionList> ListAsync(CommissionQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        await using var db = await factory.CreateDbContextAsync();
        var found = Matches(db, question.Search);
        var asked = question.Stands.Count > 0 ? found.Where(c => question.Stands.Contains(c.Stands)) : question.Finished ? found : found.Where(c => !Standing.Ended.Contains(c.Stands));
        var lines = await asked
            .OrderBy(c => Standing.Ended.Contains(c.Stands))
            .ThenBy(c => !Standing.Ended.Contains(c.Stands) && c.NeededBy == null)
            .ThenBy(c => Standing.Ended.Contains(c.Stands) ? null : c.NeededBy)
            .ThenByDescending(c => c.Id)
            .Take(question.Take + 1)
            .Select(c => new CommissionLine(
                c.Id, c.Number, c.Title, c.Remembers, c.Customer!.Name, c.Stands, c.NeededBy,
                db.Set<Piece>().Count(p => p.CommissionId == c.Id),
                db.Set<Keepsake>().Count(k => k.CommissionId == c.Id)))
            .ToListAsync();
        var openOnly = question.Stands.Count == 0 && !question.Finished;
        var also = openOnly && question.Search.Trim().Length > 0 && await found.AnyAsync(c => Standing.Ended.Contains(c.Stands));
        return new CommissionList([.. lines.Take(question.Take)], lines.Count > question.Take, also, lines.Count > 0 || await db.Set<Commission>().AnyAsync());
    }

#pragma warning disable CA1304, CA1311, CA1862, MA0011 // lower() runs in the database, which has no culture
    private static IQueryable<Commission> Matches(StudioDb db, string search)
    {
        var found = db.Set<Commission>().AsNoTracking();
        foreach (var pattern in Matching.Patterns(search))
        {
            found = found.Where(c => EF.Functions.Like((c.Number + " " + c.Title + " " + c.Remembers + " " + c.Customer!.Name).ToLower(), pattern, Matching.Escape));
        }

        return found;
    }
#pragma warning restore CA1304, CA1311, CA1862, MA0011
}
