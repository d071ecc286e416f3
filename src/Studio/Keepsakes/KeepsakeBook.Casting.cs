using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Keepsakes;

/// <content>What the bench writes into a chain of custody, inside its own save.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>Appends that a keepsake was cast with a layer. Nothing is saved here; the caller's save keeps it together with the pour.</summary>
    /// <param name="db">The caller's open context.</param>
    /// <param name="id">The keepsake.</param>
    /// <param name="piece">The piece it went into, by name.</param>
    /// <param name="massG">How much of it, by the design [g]; counts only where a part is cast.</param>
    /// <param name="moreLater">True when another layer of the piece takes more of it.</param>
    /// <param name="by">Who poured.</param>
    /// <returns>Why it was not written, in a sentence for the person; null when it was.</returns>
    public static async Task<string?> CastAsync(StudioDb db, int id, string piece, double? massG, bool moreLater, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        if (await db.Set<Keepsake>().SingleOrDefaultAsync(k => k.Id == id) is not { } keepsake)
        {
            return "A keepsake of this layer is not in the ledger any more.";
        }

        var events = await EventsAsync(db, id);
        var now = CustodyChain.Now(events);
        var part = moreLater || keepsake.Permits == Permission.EmbedPart;
        var form = new ActForm
        {
            Act = keepsake.Permits == Permission.CopyReturn ? CustodyLink.CopyCast : CustodyLink.Embedded,
            Whither = piece,
            LeftOver = part,
            MassG = part ? massG : now.InHandG,
        };
        if (form.Act == CustodyLink.Embedded && CustodyRules.MassRefusal(now, form.MassG) is not null)
        {
            form.MassG = null; // the casting is a fact; the figure waits for the scale
        }

        if (CustodyRules.Refusal(form.Act, keepsake.Kind, keepsake.Permits, now) is { } refusal)
        {
            return $"{keepsake.EntryNumber} was not written down as cast: {refusal}";
        }

        Append(db, keepsake, events, ActWriting.Write(form, keepsake, now, db.Now, by));
        return null;
    }

    /// <summary>Takes back that a keepsake was cast into a piece, where that is the newest thing that happened to it.</summary>
    /// <returns>Why not, in a sentence for the person; null when it was, or was never written.</returns>
    public static async Task<string?> UncastAsync(StudioDb db, int id, string piece, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        if (await db.Set<Keepsake>().SingleOrDefaultAsync(k => k.Id == id) is not { } keepsake)
        {
            return null;
        }

        var events = await EventsAsync(db, id);
        var link = CustodyChain.Standing(events).LastOrDefault(e => e.Kind is CustodyLink.Embedded or CustodyLink.CopyCast && e.Words.Contains("into " + piece, StringComparison.Ordinal));
        if (link is null)
        {
            return null;
        }

        if (CustodyChain.Now(events).UndoId != link.Id)
        {
            return $"{keepsake.EntryNumber} still says that it was cast: something else was done with it since. Look at its page.";
        }

        Append(db, keepsake, events, new KeepsakeEvent { KeepsakeId = id, At = db.Now, By = by, Kind = CustodyLink.Undoes(link.Id), Words = $"Taken back with its pour: “{link.Words}”" });
        return null;
    }

    private static Task<List<KeepsakeEvent>> EventsAsync(StudioDb db, int id) =>
        db.Set<KeepsakeEvent>().AsNoTracking().Where(e => e.KeepsakeId == id).OrderBy(e => e.Id).ToListAsync();

    private static void Append(StudioDb db, Keepsake keepsake, List<KeepsakeEvent> events, KeepsakeEvent link)
    {
        db.Add(link);
        var now = CustodyChain.Now([.. events, link]);
        (keepsake.Place, keepsake.Custody, keepsake.MassG) = (now.Place, now.Custody, now.MassG);
        db.Entry(keepsake).State = EntityState.Modified; // even a note raises the version: two people never append unseen
        Tell(db, keepsake, link);
    }
}
