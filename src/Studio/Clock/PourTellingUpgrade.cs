using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>
/// Gives what versions before 0.4 told of pours in words the references that are kept now: which line of a commission's story tells of which
/// pour, and which trace is of a stop that was passed. Words are read here once, and never again.
/// </summary>
internal sealed class PourTellingUpgrade : IUpgrade
{
    private const string OldPassed = "poured all the same";

    public async Task UpgradeAsync(StudioDb db)
    {
        var passed = await db.Set<PourCorrection>().Where(c => c.Now == OldPassed && !c.Passed).ToListAsync();
        passed.ForEach(c => (c.Now, c.Passed) = ("", true));
        var tellings = await db.Set<CommissionEvent>().Where(e => e.Kind == "piece" && e.About == "" && e.Words.Contains(" poured with ")).ToListAsync();
        if (tellings.Count > 0)
        {
            var commissions = tellings.Select(t => t.CommissionId).Distinct().ToList();
            var poured = await db.Set<Pour>().Join(db.Set<Piece>().Where(p => commissions.Contains(p.CommissionId)), o => o.PieceId, p => p.Id, (o, p) => new { Pour = o, Piece = p }).ToListAsync();
            foreach (var one in poured.OrderBy(p => p.Pour.Id))
            {
                var words = string.Create(CultureInfo.InvariantCulture, $"{one.Piece.Name}: layer {one.Pour.LayerOrder + 1}, {one.Pour.LayerName}, poured with ");
                if (tellings.Find(t => t.About.Length == 0 && t.CommissionId == one.Piece.CommissionId && t.Words.StartsWith(words, StringComparison.Ordinal)) is { } telling)
                {
                    telling.About = one.Pour.About;
                }
            }
        }

        if (passed.Count > 0 || tellings.Exists(t => t.About.Length > 0))
        {
            await db.SaveChangesAsync();
        }
    }
}
