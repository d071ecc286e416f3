using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <content>Acts: each appends a link and lets the fields follow, in one transaction.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>Does an act, or says why it may not be done.</summary>
    /// <param name="id">The keepsake.</param>
    /// <param name="version">The version that the page showed; a newer one refuses.</param>
    /// <param name="form">The act, validated by <see cref="ActValidator"/>.</param>
    /// <param name="by">Who does it.</param>
    public Task<Saved> DoAsync(int id, int version, ActForm form, string by) => ChangeAsync(id, version, by, (db, keepsake, events) =>
    {
        var now = CustodyChain.Now(events);
        var refusal = CustodyRules.Refusal(form.Act, keepsake.Kind, keepsake.Permits, now)
            ?? (form.Act is CustodyLink.Embedded or CustodyLink.Returned ? CustodyRules.MassRefusal(now, form.MassG) : null);
        return (refusal, refusal is null ? ActWriting.Write(form, keepsake, now, db.Now, by) : null);
    });

    /// <summary>Takes the newest act back by appending that it was taken back; nothing is removed.</summary>
    public Task<Saved> UndoAsync(int id, int version, int eventId, string by) => ChangeAsync(id, version, by, (db, keepsake, events) =>
    {
        var last = CustodyChain.Now(events).UndoId;
        var taken = events.Find(e => e.Id == eventId);
        return taken is null || last != eventId
            ? ("Something else was done with it since, so this cannot be taken back. Do the newest act back first, or write down what is true now.", null)
            : (null, new KeepsakeEvent { KeepsakeId = keepsake.Id, At = db.Now, By = by, Kind = CustodyLink.Undoes(eventId), Words = $"Taken back: “{taken.Words}”" });
    });

    /// <summary>Corrects what was written down, with a link that says what was changed and why.</summary>
    public Task<Saved> CorrectAsync(int id, int version, IntakeForm form, string reason, string by) => ChangeAsync(id, version, by, (db, keepsake, events) =>
    {
        var now = CustodyChain.Now(events);
        if (string.IsNullOrWhiteSpace(reason))
        {
            return ("Say in a few words why it is corrected, and who said so where the family's word changes.", null);
        }

        if (form.MassG is null && keepsake.MassG is not null)
        {
            return ("A mass that was written down can be corrected but not emptied. Type the right one.", null);
        }

        if (form.Permits == Permission.ReturnUntouched && now.Custody == CustodyChain.InPiece)
        {
            return ("It is cast already, so it cannot go back untouched. If the casting was noted by mistake, take that back first.", null);
        }

        var changes = Differences(keepsake, form);
        if (changes.Count == 0)
        {
            return ("Nothing differs from what was written down.", null);
        }

        var mass = Nullable.Equals(form.MassG, keepsake.MassG) ? null : form.MassG;
        Fill(keepsake, form);
        return (null, new KeepsakeEvent { KeepsakeId = keepsake.Id, At = db.Now, By = by, Kind = CustodyLink.Corrected, MassG = mass, Words = $"Corrected: {string.Join("; ", changes)}. Why: {ActWriting.End(reason)}" });
    });

    private Task<Saved> ChangeAsync(int id, int version, string by, Func<StudioDb, Keepsake, List<KeepsakeEvent>, (string? Refusal, KeepsakeEvent? Link)> change) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var keepsake = await db.Set<Keepsake>().SingleOrDefaultAsync(k => k.Id == id);
        if (keepsake is null)
        {
            return Saved.Refused("This keepsake is not in the ledger.");
        }

        if (keepsake.Version != version)
        {
            return Saved.Refused(Saved.SomeoneElse);
        }

        var events = await EventsAsync(db, id);
        var (refusal, link) = change(db, keepsake, events);
        if (link is null)
        {
            return Saved.Refused(refusal ?? "");
        }

        Append(db, keepsake, events, link);
        await db.SaveChangesAsync();
        news.Tell(News.Keepsake, id);
        news.Tell(News.Commission, keepsake.CommissionId);
        return Saved.Done(link.Id);
    });

    // the commission's story hears of what leaves the studio's hands, not of every drawer
    private static void Tell(StudioDb db, Keepsake keepsake, KeepsakeEvent link)
    {
        if (link.Kind is CustodyLink.Embedded or CustodyLink.CopyCast or CustodyLink.Returned || CustodyLink.UndoneBy(link.Kind) is not null)
        {
            CommissionBook.Append(db, keepsake.CommissionId, "keepsake", $"{keepsake.EntryNumber}: {link.Words}", link.By);
        }
    }

    private static List<string> Differences(Keepsake k, IntakeForm f)
    {
        var changes = new List<string>();
        Compare("what it is made of", KeepsakeKinds.Label(k.Kind), KeepsakeKinds.Label(f.Kind));
        Compare("what it is", k.Description, f.Description);
        Compare("how many", k.Count.ToString(CultureInfo.InvariantCulture), (f.Count ?? 1).ToString(CultureInfo.InvariantCulture));
        Compare("mass", Mass(k.MassG), Mass(f.MassG));
        Compare("condition", string.Join(", ", k.ConditionWords), string.Join(", ", f.AllConditionWords));
        Compare("note on its condition", k.ConditionNote, f.ConditionNote);
        Compare("what the family permits", Permission.Label(k.Permits), Permission.Label(f.Permits));
        Compare("the family's wishes", k.Requirements, f.Requirements);
        Compare("how it came", k.Method, f.Method);
        Compare("who brought it", k.DepositorName, f.DepositorName);
        Compare("by what right", k.DepositorAuthority, f.DepositorAuthority);
        Compare("packing", k.Packing, f.Packing);
        Compare("to be returned by", Day(k.ReturnBy), Day(f.ReturnDay));
        return changes;

        void Compare(string name, string before, string after)
        {
            if (before.Trim() != after.Trim())
            {
                changes.Add($"{name} from {Quoted(before)} to {Quoted(after)}");
            }
        }

        static string Quoted(string text) => string.IsNullOrWhiteSpace(text) ? "nothing" : $"“{text.Trim()}”";
        static string Mass(double? g) => g is { } v ? Say.Grams(v) : "";
        static string Day(DateOnly? day) => day?.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")) ?? "";
    }
}
