using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Clock;

/// <summary>Announces what the clock newly says. Pages never wait for it: they compute the same from the same pours and readings.</summary>
public sealed class ClockBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, SettingsBook settings)
{
    // nobody is signed in when it comes round
    private const string Name = "the clock";

    /// <summary>Compares every piece in the making with what was said of it last, and tells what changed. Safe twice at once, and late.</summary>
    /// <returns>How many pieces had something new.</returns>
    public async Task<int> AdvanceAsync()
    {
        var now = clock.GetUtcNow().UtcDateTime;
        var zone = await settings.ZoneAsync();
        List<(int Id, int CommissionId, string Name, string Said, ClockInput Input)> making;
        await using (var db = await factory.CreateDbContextAsync())
        {
            making = await MakingAsync(db);
        }

        var told = 0;
        foreach (var piece in making)
        {
            var next = PieceClock.Of(piece.Input, now, zone).Next;
            if (next.Key != piece.Said && await SayAsync(piece.Id, piece.CommissionId, piece.Name, piece.Said, next, now))
            {
                told++;
            }
        }

        return told;
    }

    /// <summary>What the clock says of one piece; null when there is no such piece.</summary>
    public async Task<PieceTimes?> OfPieceAsync(int pieceId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var found = await ReadAsync(db, db.Set<Piece>().Where(p => p.Id == pieceId));
        return found.Count == 0 ? null : PieceClock.Of(found[0].Input, clock.GetUtcNow().UtcDateTime, await settings.ZoneAsync());
    }

    /// <summary>What the clock says of each of these pieces at a moment, read in the caller's context.</summary>
    internal static async Task<IReadOnlyDictionary<int, PieceTimes>> TimesAsync(StudioDb db, IQueryable<Piece> which, DateTime now, TimeZoneInfo zone) =>
        (await ReadAsync(db, which)).ToDictionary(p => p.Id, p => PieceClock.Of(p.Input, now, zone));

    /// <summary>The readings of a piece's place that a clock started at <paramref name="from"/> can rest on: those since then and the last one before.</summary>
    internal static async Task<ClockRoom> RoomAsync(StudioDb db, string place, DateTime? from) => new(await RoomReadings.OfAsync(db, place, from), place);

    /// <summary>As <see cref="RoomAsync(StudioDb, string, DateTime?)"/>, read once for each place.</summary>
    internal static async Task<IReadOnlyDictionary<string, ClockRoom>> RoomsAsync(StudioDb db, IEnumerable<string> places, DateTime? from)
    {
        var rooms = new Dictionary<string, ClockRoom>(StringComparer.Ordinal);
        foreach (var place in places.Distinct(StringComparer.Ordinal))
        {
            rooms[place] = await RoomAsync(db, place, from);
        }

        return rooms;
    }

    private static Task<List<(int Id, int CommissionId, string Name, string Said, ClockInput Input)>> MakingAsync(StudioDb db) =>
        ReadAsync(db, db.Set<Piece>().Where(p => (p.Stage == Making.Casting || p.Stage == Making.Demoulded) && !Standing.Ended.Contains(p.Commission!.Stands)));

    private static async Task<List<(int Id, int CommissionId, string Name, string Said, ClockInput Input)>> ReadAsync(StudioDb db, IQueryable<Piece> which)
    {
        var pieces = await which.AsNoTracking().Select(p => new { p.Id, p.CommissionId, p.Name, p.Stage, p.ClockSaid, p.DemouldedAt, p.StandsIn }).ToListAsync();
        var layers = (await which.SelectMany(p => p.Layers).Select(l => new { l.PieceId, l.Order, l.Name }).ToListAsync()).ToLookup(l => l.PieceId);
        var wants = await LayerWants.OfAsync(db, which);
        var pours = await db.Set<Pour>().AsNoTracking().Where(o => !o.Withdrawn && which.Any(p => p.Id == o.PieceId))
            .Select(o => new { o.PieceId, o.Id, o.LayerOrder, o.LayerName, o.StartedAt, o.Sheet, o.Kinetics, o.ResinId, o.ResinLot, o.Foretold }).ToListAsync();
        var cures = await LotCures.OfAsync(db, pours.Select(o => (o.ResinId, o.ResinLot)));
        var byPiece = pours.ToLookup(o => o.PieceId, o => cures.Told(new(o.Id, o.LayerOrder, o.LayerName, o.StartedAt, o.Sheet) { Kinetics = o.Kinetics }, o.ResinId, o.ResinLot, o.Foretold));
        var rooms = await RoomsAsync(db, pieces.Select(p => p.StandsIn), pours.Select(o => (DateTime?)o.StartedAt).Min());
        return pieces.ConvertAll(p => (p.Id, p.CommissionId, p.Name, p.ClockSaid,
            new ClockInput { Stage = p.Stage, Layers = [.. layers[p.Id].Select(l => new ClockLayer(l.Order, l.Name) { Wants = [.. wants[(p.Id, l.Order)]] })], Pours = [.. byPiece[p.Id]], Room = rooms[p.StandsIn], DemouldedAt = p.DemouldedAt }));
    }

    private async Task<bool> SayAsync(int pieceId, int commissionId, string name, string said, NextAct next, DateTime now)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.WriteAs(Name);
        await using var whole = await db.Database.BeginTransactionAsync();
        var since = next.Since ?? now;

        // only the one whose update meets the old words goes on; the piece's version stays, for no person edited it
        var won = await db.Set<Piece>().Where(p => p.Id == pieceId && p.ClockSaid == said)
            .ExecuteUpdateAsync(s => s.SetProperty(p => p.ClockSaid, next.Key).SetProperty(p => p.ClockSaidAt, since));
        if (won == 0)
        {
            return false;
        }

        var about = string.Create(CultureInfo.InvariantCulture, $"clock/{pieceId}/{next.Key}/{since:O}");
        if (Story(name, next) is { } words && !await db.Set<CommissionEvent>().AnyAsync(e => e.CommissionId == commissionId && e.About == about))
        {
            db.Add(new CommissionEvent { CommissionId = commissionId, At = since, By = Name, Kind = "piece", Words = words, About = about });
            await db.SaveChangesAsync();
        }

        await whole.CommitAsync();
        news.Tell(News.Piece, pieceId);
        return true;
    }

    // a pour and a demoulding tell their own story; the clock tells only what came by time
    private static string? Story(string name, NextAct next) => next.Kind switch
    {
        ActKind.PourNext => $"{name}: the window for {next.LayerName} opened.",
        ActKind.WindowClosed => $"{name}: the window for {next.LayerName} closed before it was poured.",
        ActKind.Demould => $"{name} may be taken out of its mould.",
        ActKind.Finish => $"{name} is fully cured and may be finished.",
        _ => null,
    };
}
