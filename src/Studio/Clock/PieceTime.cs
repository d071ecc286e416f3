using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Time;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>When pieces can be with their families at the earliest: what is designed, what was done, and the studio's hours, put to <c>calc time</c>.</summary>
public sealed class PieceTimeBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settings, IPromises promises)
{
    private const int LastFinished = 5;

    /// <summary>The answer for one piece; null when there is none, or when it is home or let go.</summary>
    public async Task<TimeResult?> OfPieceAsync(int id) => (await OfPiecesAsync([id])).GetValueOrDefault(id);

    /// <summary>The answers for many pieces at once, in a handful of queries; those that are home or let go have none.</summary>
    public async Task<IReadOnlyDictionary<int, TimeResult>> OfPiecesAsync(IReadOnlyCollection<int> pieceIds)
    {
        if (pieceIds.Count == 0)
        {
            return new Dictionary<int, TimeResult>();
        }

        await using var db = await factory.CreateDbContextAsync();
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var now = await NowAsync();
        var pieces = await TimePieces.ReadAsync(db, db.Set<Piece>().Where(p => pieceIds.Contains(p.Id) && p.Stage != Making.Home && p.Stage != Making.LetGo && p.Stage != Making.Failed));
        var promised = await promises.OfAsync(db, [.. pieces.Select(p => p.CommissionId).Distinct()]);
        pieces = pieces.ConvertAll(p => promised.TryGetValue(p.CommissionId, out var day) ? p with { PromisedOn = day } : p);
        var drying = await PieceDrying.OfAsync(db, pieces);
        var rooms = await UsualRooms.OfAsync(db, pieces, now);
        var resins = await ResinsAsync(db, pieces.SelectMany(p => p.Layers).Select(l => l.ResinId));
        return pieces.ToDictionary(p => p.Id, p => PieceTimePlan.Of(p, drying[p.Id], rooms.Of(p.StandsIn), resins, now));
    }

    /// <summary>
    /// The answer for a piece that is not drawn yet, as for an enquiry: as the studio's own last finished pieces were, else as a new one begins.
    /// <see cref="TimeResult.RestsOn"/> says which.
    /// </summary>
    /// <param name="neededBy">The day the family names, if any.</param>
    /// <param name="delivered">True where it is sent to them.</param>
    public async Task<TimeResult> OfTypicalAsync(DateOnly? neededBy = null, bool delivered = false)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var now = await NowAsync();
        var (piece, drying, words) = await LastAsync(db) is { } last ? last : await FirstAsync(db);
        if (piece is null)
        {
            return TimeResult.NotKnown(words);
        }

        piece = piece with { Stage = Making.Drawn, NeededBy = neededBy, Delivered = delivered, StandsIn = "", DemouldedAt = null, FinishedAt = null };
        var rooms = await UsualRooms.OfAsync(db, [piece], now);
        var result = PieceTimePlan.Of(piece, drying, rooms.Of(""), await ResinsAsync(db, piece.Layers.Select(l => l.ResinId)), now);
        return result with { RestsOn = $"{words} {result.RestsOn}" };
    }

    // of the last few finished pieces the one with the middle number of layers, the larger where two are in the middle; of several the newest
    private static async Task<(TimePiece? Piece, IReadOnlyList<Drying> Drying, string Words)?> LastAsync(StudioDb db)
    {
        var finished = (await TimePieces.ReadAsync(db, db.Set<Piece>()
                .Where(p => (p.Stage == Making.Finished || p.Stage == Making.Home) && p.Layers.Count > 0 && p.FinishedAt != null)
                .OrderByDescending(p => p.FinishedAt).ThenByDescending(p => p.Id).Take(LastFinished)))
            .OrderByDescending(p => p.FinishedAt).ThenByDescending(p => p.Id).ToList();
        if (finished.Count == 0)
        {
            return null;
        }

        var middle = finished.Select(p => p.Layers.Count).Order().ElementAt(finished.Count / 2);
        var piece = finished.Find(p => p.Layers.Count == middle)!;
        var drying = await PieceDrying.AsItWasAsync(db, piece);
        return (piece with { Pours = [] }, drying, $"Reckoned as “{piece.Name}” was made, with {Layers(middle)}: the middle of your last {finished.Count} finished piece{(finished.Count == 1 ? "" : "s")}.");
    }

    private static async Task<(TimePiece? Piece, IReadOnlyList<Drying> Drying, string Words)> FirstAsync(StudioDb db)
    {
        var resins = await db.Set<Resin>().Where(r => !r.Retired).OrderBy(r => r.Id).ToListAsync();
        foreach (var mould in await db.Set<Mould>().Where(m => !m.Retired).OrderBy(m => m.Id).ToListAsync())
        {
            if (PieceStart.Layers(PieceStart.Colours, mould.Spec, resins) is { Count: > 0 } layers)
            {
                var start = PieceStart.All.First(s => s.Key == PieceStart.Colours).Label;
                return (new TimePiece { Name = start, Layers = [.. layers.Select(l => new TimeDesignLayer(0, l.Order, l.Name, l.ResinId, l.WaitHours, []))] }, [],
                    $"No piece is finished yet, so it is reckoned as a new one begins: “{start}” in {mould.Name}, {Layers(layers.Count)}.");
            }
        }

        return (null, [], "No piece is finished yet, and there is no mould with a resin to reckon a new one with. Enter a mould and a resin in the stores.");
    }

    private static string Layers(int count) => count == 1 ? "1 layer" : FormattableString.Invariant($"{count} layers");

    // as each would be poured today: its sheet, and how it cures where a person took that over
    private static async Task<IReadOnlyDictionary<int, TimeResin>> ResinsAsync(StudioDb db, IEnumerable<int> ids)
    {
        var wanted = ids.Distinct().ToList();
        var cures = await KnownCures.OfAsync(db, wanted.Select(id => (id, "")).ToHashSet());
        return (await db.Set<Resin>().Where(r => wanted.Contains(r.Id)).ToListAsync())
            .ToDictionary(r => r.Id, r => new TimeResin(r.Sheet, cures[(r.Id, "")].Row?.State.Best().Kinetics) { Likely = KnownCures.Likely(cures[(r.Id, "")]) });
    }

    private async Task<TimeNow> NowAsync()
    {
        var own = await settings.ReadAsync();
        var zone = TimeZoneInfo.TryFindSystemTimeZoneById(own.TimeZone, out var found) ? found : TimeZoneInfo.Utc;
        return new(clock.GetUtcNow().UtcDateTime, zone, own);
    }
}

/// <summary>The moment it is asked, on the studio's clock.</summary>
/// <param name="Utc">[UTC].</param>
/// <param name="Zone">Where the studio is.</param>
/// <param name="Settings">Its hours.</param>
internal sealed record TimeNow(DateTime Utc, TimeZoneInfo Zone, StudioSettings Settings)
{
    /// <summary>From when hands can work: the next whole minute.</summary>
    internal DateTime Start => Wall(Utc);

    /// <summary>An instant on the wall clock, rounded up to the minute: later, never earlier.</summary>
    internal DateTime Wall(DateTime utc)
    {
        var local = Say.Local(utc, Zone);
        var over = local.Ticks % TimeSpan.TicksPerMinute;
        return DateTime.SpecifyKind(over == 0 ? local : local.AddTicks(TimeSpan.TicksPerMinute - over), DateTimeKind.Unspecified);
    }
}
