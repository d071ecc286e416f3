using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Bench;

public sealed partial class BenchBook
{
    private const double MostG = 100_000;

    /// <summary>Sets a pour's entry right and keeps what it said, what it says and why, field by field.</summary>
    public Task<Saved> CorrectAsync(CorrectionForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Pour>().SingleOrDefaultAsync(p => p.Id == form.PourId) is not { Withdrawn: false } pour)
        {
            return Saved.Refused("That pour is not here any more, or was taken back. Load the page again.");
        }

        var neighbours = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pour.PieceId && !p.Withdrawn && p.Id != pour.Id).ToListAsync();
        if (Wrong(form, pour, neighbours) is { } wrong)
        {
            return Saved.Refused(wrong);
        }

        var zone = await settings.ZoneAsync();
        var changes = Changes(form, pour, zone, by).ToList();
        if (changes.Count == 0)
        {
            return Saved.Refused("Nothing was changed, so there is nothing to correct.");
        }

        await MoveReadingAsync(db, form, pour, by);
        db.Entry(pour).Property(p => p.Version).OriginalValue = form.Version;
        (pour.ActualAG, pour.ActualBG, pour.RoomC, pour.StartedAt, pour.ResinLot) = (form.ActualAG!.Value, form.ActualBG!.Value, form.RoomC, form.StartedAt!.Value, form.Lot.Trim());
        db.AddRange(changes);
        var piece = await db.Set<Piece>().AsNoTracking().SingleAsync(p => p.Id == pour.PieceId);
        CommissionBook.Append(db, piece.CommissionId, "piece", $"{piece.Name}: the entry of layer {pour.LayerOrder + 1}, {pour.LayerName}, was set right ({string.Join(", ", changes.Select(c => $"{c.Field} {c.Was} → {c.Now}"))}). {form.Why.Trim()}", by, pour.About);
        await db.SaveChangesAsync();
        news.Tell(News.Pour, pour.PieceId);
        news.Tell(News.Room);
        return Saved.Done(pour.Id);
    });

    /// <summary>What a pour holds of the family's things, by the log.</summary>
    public async Task<IReadOnlyList<string>> HeldAsync(int pourId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return [.. (await KeepsakeBook.HeldByPourAsync(db, pourId)).Select(h => $"{h.Keepsake.EntryNumber}, {h.Keepsake.Description}: {(h.Set.Copy ? "a copy" : CustodyWords.Amount(h.Set.Amount.Count, h.Set.Amount.MassG))}")];
    }

    /// <summary>Takes a pour back: it is kept with its reason and counts no longer; what it held is out again. Only the topmost can be.</summary>
    /// <param name="place">Where the keepsakes that it held lie now; needed where it held any.</param>
    public Task<Saved> WithdrawAsync(int pourId, string why, string place, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (why.Trim().Length < 3)
        {
            return Saved.Refused("Say why the pour is taken back; the reason is kept.");
        }

        if (await db.Set<Pour>().SingleOrDefaultAsync(p => p.Id == pourId) is not { Withdrawn: false } pour)
        {
            return Saved.Refused("That pour was taken back already.");
        }

        var others = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pour.PieceId && !p.Withdrawn && p.Id != pourId).Select(p => new { p.LayerOrder, p.LayerName }).ToListAsync();
        if (others.Find(o => o.LayerOrder > pour.LayerOrder) is { } above)
        {
            return Saved.Refused($"{above.LayerName} lies on this layer. Take that one back first.");
        }

        var piece = await db.Set<Piece>().SingleAsync(p => p.Id == pour.PieceId);
        if (piece.Stage is not (Making.Drawn or Making.Casting))
        {
            return Saved.Refused("The piece is out of its mould, so its pours stand as they are.");
        }

        pour.Withdrawn = true;
        piece.Stage = others.Count == 0 ? Making.Drawn : Making.Casting;
        (piece.ClockSaid, piece.ClockSaidAt) = ("", Now);
        db.Add(Trace(pour, Now, by, "pour", "counted", "taken back", why));
        if (place.Trim().Length == 0 && (await KeepsakeBook.HeldByPourAsync(db, pourId)).Any(h => !h.Set.Copy))
        {
            return Saved.Refused("Say where the keepsakes that this pour held lie now.", "place-missing");
        }

        await KeepsakeBook.TakeOutAsync(db, pourId, place, by);
        CommissionBook.Append(db, piece.CommissionId, "piece", $"{piece.Name}: the pour of layer {pour.LayerOrder + 1}, {pour.LayerName}, was taken back. {why.Trim()}", by, pour.About);
        await db.SaveChangesAsync();
        news.Tell(News.Pour, pour.PieceId);
        news.Tell(News.Keepsake);
        return Saved.Done(pour.Id);
    });

    private string? Wrong(CorrectionForm form, Pour pour, List<Pour> neighbours)
    {
        var start = form.StartedAt ?? DateTime.MinValue;
        var wrong = new List<string>();
        Complain(form.ActualAG is not (> 0 and <= MostG), "Grams of A must lie between 0 and 100 000 g.");
        Complain(form.ActualBG is not (> 0 and <= MostG), "Grams of B must lie between 0 and 100 000 g.");
        Complain(form.StartedAt is null, "Type when it was poured.");
        Complain(start > Now.AddMinutes(1), "The start lies in the future.");
        Complain(neighbours.Exists(p => p.LayerOrder < pour.LayerOrder && p.StartedAt > start), "The start lies before the layer under it was poured.");
        Complain(neighbours.Exists(p => p.LayerOrder > pour.LayerOrder && p.StartedAt < start), "The start lies after the layer on top of it was poured.");
        Complain(form.RoomC is { } c && RoomBook.Wrong(c) is not null, form.RoomC is { } again ? RoomBook.Wrong(again) ?? "" : "");
        Complain(form.Why.Trim().Length < 3, "Say why, in a few words; the reason is kept.");
        return wrong.Count == 0 ? null : string.Join(" ", wrong);

        void Complain(bool isSo, string words)
        {
            if (isSo)
            {
                wrong.Add(words);
            }
        }
    }

    private IEnumerable<PourCorrection> Changes(CorrectionForm form, Pour pour, TimeZoneInfo zone, string by)
    {
        if (!pour.ActualAG.Equals(form.ActualAG))
        {
            yield return Trace(pour, Now, by, "grams of A", Grams(pour.ActualAG), Grams(form.ActualAG!.Value), form.Why);
        }

        if (!pour.ActualBG.Equals(form.ActualBG))
        {
            yield return Trace(pour, Now, by, "grams of B", Grams(pour.ActualBG), Grams(form.ActualBG!.Value), form.Why);
        }

        if (!Nullable.Equals(pour.RoomC, form.RoomC))
        {
            yield return Trace(pour, Now, by, "room", Celsius(pour.RoomC), Celsius(form.RoomC), form.Why);
        }

        if (pour.StartedAt != form.StartedAt)
        {
            yield return Trace(pour, Now, by, "start", Stamp(pour.StartedAt, zone), Stamp(form.StartedAt!.Value, zone), form.Why);
        }

        if (pour.ResinLot != form.Lot.Trim())
        {
            yield return Trace(pour, Now, by, "lot", pour.ResinLot.Length > 0 ? pour.ResinLot : "none", form.Lot.Trim().Length > 0 ? form.Lot.Trim() : "none", form.Why);
        }
    }

    // the reading that came with the pour goes with it; others in the log are somebody else's
    private static async Task MoveReadingAsync(StudioDb db, CorrectionForm form, Pour pour, string by)
    {
        if (Nullable.Equals(pour.RoomC, form.RoomC) && pour.StartedAt == form.StartedAt)
        {
            return;
        }

        var old = await db.Set<Reading>().Where(r => !r.Withdrawn && r.At == pour.StartedAt).ToListAsync();
        var own = old.Find(r => r.Celsius.Equals(pour.RoomC));
        if (own is not null)
        {
            own.Withdrawn = true;
        }

        if (form.RoomC is { } celsius && (own is not null || !Nullable.Equals(pour.RoomC, form.RoomC)))
        {
            db.Add(new Reading { At = form.StartedAt!.Value, Celsius = celsius, Place = own?.Place ?? RoomBook.CastingRoom, By = by });
        }
    }

    private static string Celsius(double? c) => c is { } known ? Say.Celsius(known) : "none";

    private static string Stamp(DateTime utc, TimeZoneInfo zone) => Say.Local(utc, zone).ToString("d MMMM yyyy HH:mm", CultureInfo.GetCultureInfo("en-GB"));
}
