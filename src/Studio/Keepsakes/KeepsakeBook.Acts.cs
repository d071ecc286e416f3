using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <content>Acts: each appends an entry and lets the record follow, in one transaction.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>Does an act, or says why it may not be done.</summary>
    /// <param name="id">The keepsake.</param>
    /// <param name="version">The version that the page showed; a newer one refuses.</param>
    /// <param name="form">The act, validated by <see cref="ActValidator"/>.</param>
    /// <param name="by">Who does it.</param>
    public Task<Saved> DoAsync(int id, int version, ActForm form, string by) => ChangeAsync(id, version, by, async (db, keepsake, log) =>
    {
        var now = CustodyLog.Read(log);
        var act = form.Amounts(now);
        if (CustodyRules.Refusal(act, keepsake.Subject, now) is { } refusal)
        {
            return (refusal, null);
        }

        if (form.Act is CustodyKind.SetIn or CustodyKind.CopySetIn && (form.PieceId is not { } piece || (await pieces.OfCommissionAsync(db, keepsake.CommissionId)).All(p => p.Id != piece)))
        {
            return (new InputError("pieceId", "Choose the piece it went into, among those of its commission.", "piece-missing"), null);
        }

        return (null, form.Write(keepsake, act, db.Now, by));
    });

    /// <summary>Takes an act back by appending that it was taken back; nothing is removed. Refused where later entries rest on it, or where its pour stands.</summary>
    public Task<Saved> UndoAsync(int id, int version, int eventId, string by) => ChangeAsync(id, version, by, async (db, keepsake, log) =>
    {
        if (CustodyRules.UndoRefusal(CustodyLog.Entries(log), eventId, keepsake.Subject) is { } refusal)
        {
            return (refusal, null);
        }

        var taken = log.Find(e => e.Id == eventId)!;
        return taken.PourId is { } pour && (await pours.OfAsync(db, [pour])).GetValueOrDefault(pour) is { Withdrawn: false } stands
            ? (new InputError("", $"It went in with the pour of {stands.LayerName}, which stands. Take the pour back on the bench, or set the amount right here.", "pour-stands"), null)
            : (null, new KeepsakeEvent { KeepsakeId = keepsake.Id, At = db.Now, By = by, Kind = CustodyKind.Undone, RefId = eventId });
    });

    /// <summary>Sets right how much went into a piece: the old entry is taken back and a new one written, both kept.</summary>
    /// <param name="eventId">The entry that it went in.</param>
    /// <param name="count">[pieces].</param>
    /// <param name="massG">[g]; null where it was not weighed.</param>
    /// <param name="why">Why, in a few words.</param>
    public Task<Saved> SetRightAsync(int id, int version, int eventId, int count, double? massG, string why, string by) => ChangeAsync(id, version, by, (db, keepsake, log) =>
    {
        if (log.Find(e => e.Id == eventId) is not { Kind: CustodyKind.SetIn } old || CustodyLog.Read(log).SetIn.All(s => s.EntryId != eventId))
        {
            return Refused("That entry is not in the log any more, or was taken back already.", "gone");
        }

        if (string.IsNullOrWhiteSpace(why))
        {
            return Refused("Say in a few words why it is set right; the reason is kept.", "why-missing");
        }

        var undone = new KeepsakeEvent { KeepsakeId = id, At = db.Now, By = by, Kind = CustodyKind.Undone, RefId = eventId, Words = why.Trim() };
        var before = CustodyLog.Read([.. log, undone]);
        if (CustodyRules.Refusal(new CustodyAct(CustodyKind.SetIn) { Count = count, MassG = massG, Unweighed = massG is null }, keepsake.Subject, before) is { } refusal)
        {
            return Task.FromResult<(InputError?, KeepsakeEvent?)>((refusal, null));
        }

        // two entries: the first is added here, the second by the caller
        db.Add(undone);
        log.Add(undone);
        return Task.FromResult<(InputError?, KeepsakeEvent?)>((null, new KeepsakeEvent
        {
            KeepsakeId = id,
            At = db.Now,
            By = by,
            Kind = CustodyKind.SetIn,
            Count = count,
            MassG = massG,
            PieceId = old.PieceId,
            LayerId = old.LayerId,
            PourId = old.PourId,
            Place = old.Place,
            Words = why.Trim(),
        }));
    });

    /// <summary>Crosses out a keepsake that was logged by mistake: it is kept with its reason, and counted nowhere.</summary>
    public Task<Saved> WithdrawAsync(int id, int version, string why, string by) => ChangeAsync(id, version, by, (db, keepsake, log) =>
    {
        var now = CustodyLog.Read(log);
        return now switch
        {
            { Withdrawn: true } => Refused("It is crossed out already.", "withdrawn"),
            _ when string.IsNullOrWhiteSpace(why) => Refused("Say in a few words why it is crossed out; the reason is kept.", "why-missing"),
            _ when log.Exists(e => CustodyKind.Leaves(e.Kind)) && now.Balance.Held != now.Balance.CameIn => Refused("Some of it was cast, went back or is gone already, so it was here. Write down what is true instead of crossing it out.", "moved-on"),
            _ => Task.FromResult<(InputError?, KeepsakeEvent?)>((null, new KeepsakeEvent { KeepsakeId = keepsake.Id, At = db.Now, By = by, Kind = CustodyKind.Withdrawn, Words = why.Trim() })),
        };
    });

    /// <summary>Corrects what was written down, with an entry that says what was changed and why.</summary>
    /// <param name="owner">True where the person may overrule that an only photograph is never cast.</param>
    public Task<Saved> CorrectAsync(int id, int version, IntakeForm form, string reason, string by, bool owner) => ChangeAsync(id, version, by, (db, keepsake, log) =>
    {
        var now = CustodyLog.Read(log);
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refused("Say in a few words why it is corrected, and who said so where the family's word changes.", "why-missing");
        }

        if (form.MassG is null && keepsake.MassG is not null)
        {
            return Refused("A mass that was written down can be corrected but not emptied. Type the right one.", "mass-emptied");
        }

        if (!Permissions.For(form.Permits).ThingMayBeCast && now.SetIn.Any(s => !s.Copy))
        {
            return Refused("Some of it is cast already, so this cannot be what the family permitted. If the casting was noted by mistake, take that back first.", "cast-already");
        }

        if (Overrule(keepsake, form, by, owner) is { } refused)
        {
            return Task.FromResult<(InputError?, KeepsakeEvent?)>((refused, null));
        }

        var changes = Differences(keepsake, form);
        if (changes.Count == 0)
        {
            return Refused("Nothing differs from what was written down.", "nothing-differs");
        }

        var entry = new KeepsakeEvent
        {
            KeepsakeId = keepsake.Id,
            At = db.Now,
            By = by,
            Kind = CustodyKind.Corrected,
            Count = (int)(form.Count ?? 1) == keepsake.Count ? null : (int)(form.Count ?? 1),
            MassG = Nullable.Equals(form.MassG, keepsake.MassG) ? null : form.MassG,
            Changes = changes,
            Words = reason.Trim(),
        };
        if (CustodyLog.Read([.. log, entry]).Faults is [var fault, ..])
        {
            return Refused($"With these figures its log would not add up: {fault.Message} Look at the number and the mass again.", "would-not-add-up");
        }

        Fill(keepsake, form);
        return Task.FromResult<(InputError?, KeepsakeEvent?)>((null, entry));
    });

    private static Task<(InputError? Refusal, KeepsakeEvent? Entry)> Refused(string words, string code) => Task.FromResult<(InputError?, KeepsakeEvent?)>((new("", words, code), null));

    // the only photograph there is: the owner alone may let it be cast, with a written reason that prints on the receipt
    private static InputError? Overrule(Keepsake keepsake, IntakeForm form, string by, bool owner)
    {
        if (!form.NeedsOverruling)
        {
            (keepsake.OverruledBy, keepsake.OverruledWhy) = ("", "");
            return null;
        }

        if (form.OverruledWhy.Trim() == keepsake.OverruledWhy && keepsake.OverruledWhy.Length > 0)
        {
            return null;
        }

        if (!owner)
        {
            return new("OverruledWhy", IntakeForm.OnlyCopyWords, "only-copy");
        }

        (keepsake.OverruledBy, keepsake.OverruledWhy) = (by, form.OverruledWhy.Trim());
        return null;
    }

    private Task<Saved> ChangeAsync(int id, int version, string by, Func<StudioDb, Keepsake, List<KeepsakeEvent>, Task<(InputError? Refusal, KeepsakeEvent? Entry)>> change) => Saved.TryAsync(async () =>
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
            return Saved.Stale();
        }

        var log = await LogAsync(db, id);
        var (refusal, entry) = await change(db, keepsake, log);
        if (entry is null)
        {
            return Saved.Refused(refusal?.Message ?? "", refusal?.Code ?? "");
        }

        Append(db, keepsake, log, entry);
        await db.SaveChangesAsync();
        news.Tell(News.Keepsake, id);
        news.Tell(News.Commission, keepsake.CommissionId);
        return Saved.Done(entry.Id);
    });

    private static List<FieldChange> Differences(Keepsake k, IntakeForm f)
    {
        var changes = new List<FieldChange>();
        Compare("what it is made of", KeepsakeKinds.Label(k.Kind), KeepsakeKinds.Label(f.Kind));
        Compare("what it is", k.Description, f.Description);
        Compare("how many", k.Count.ToString(CultureInfo.InvariantCulture), (f.Count ?? 1).ToString(CultureInfo.InvariantCulture));
        Compare("mass", Mass(k.MassG), Mass(f.MassG));
        Compare("condition", string.Join(", ", k.ConditionWords), string.Join(", ", f.AllConditionWords));
        Compare("note on its condition", k.ConditionNote, f.ConditionNote);
        Compare("what the family permits", Permissions.For(k.Permits).OnForm, Permissions.For(f.Permits).OnForm);
        Compare("how much of it may be cast", Part(k.PartCount, k.PartG), f.MayCast == CastShare.Part ? Part((int?)f.PartCount, f.PartG) : "");
        Compare("why the only photograph may be cast", k.OverruledWhy, f.NeedsOverruling ? f.OverruledWhy : "");
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
                changes.Add(new(name, before.Trim(), after.Trim()));
            }
        }

        static string Part(int? count, double? g) => count is null && g is null ? "" : CustodyWords.Amount(count, g);
        static string Mass(double? g) => g is { } v ? Say.Grams(v) : "";
        static string Day(DateOnly? day) => day?.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")) ?? "";
    }
}
