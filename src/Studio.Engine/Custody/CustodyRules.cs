using System.Globalization;

namespace Studio.Engine.Custody;

/// <summary>What a keepsake is, as far as its rules go.</summary>
/// <param name="Material">A key of <see cref="MaterialRules"/>.</param>
/// <param name="Permits">A key of <see cref="Permissions"/>.</param>
public sealed record CustodySubject(string Material, string Permits)
{
    /// <summary>Where a part is permitted: at most so many pieces; null where the family named no number.</summary>
    public int? PartCount { get; init; }

    /// <summary>Where a part is permitted: at most so much [g]; null where the family named no weight.</summary>
    public double? PartG { get; init; }

    /// <summary>True where the owner has overruled that an only photograph is never cast, with a written reason.</summary>
    public bool Overruled { get; init; }
}

/// <summary>An act on a keepsake with its amounts.</summary>
/// <param name="Kind">A key of <see cref="CustodyKind"/>.</param>
public sealed record CustodyAct(string Kind)
{
    /// <summary>Whole things [pieces]; 0 for a part of one.</summary>
    public int Count { get; init; }

    /// <summary>[g]; null where it was not weighed.</summary>
    public double? MassG { get; init; }

    /// <summary>True where a part of one thing leaves and the person says that it is not weighed.</summary>
    public bool Unweighed { get; init; }
}

/// <summary>What may be done with a keepsake: where it is first, then the family's word, then the material's rule, then what there is of it.</summary>
public static class CustodyRules
{
    private static readonly string[] Free = [CustodyKind.Note, CustodyKind.Corrected, CustodyKind.Photographed];

    /// <summary>Why an act may not be done at all now, with a code; null when it may, amounts aside.</summary>
    public static InputError? Refusal(string kind, CustodySubject subject, CustodyState now)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(now);
        if (now.Withdrawn)
        {
            return kind == CustodyKind.Note ? null : new("", "It was logged by mistake and is crossed out. Take that back first if it is here after all.", "withdrawn");
        }

        return Free.Contains(kind, StringComparer.Ordinal) ? null : Gone(kind, now) ?? FamilysWord(kind, subject) ?? Material(kind, subject, now);
    }

    /// <summary>Why an act with these amounts may not be done now, at the field that is wrong; null when it may.</summary>
    public static InputError? Refusal(CustodyAct act, CustodySubject subject, CustodyState now)
    {
        ArgumentNullException.ThrowIfNull(act);
        return Refusal(act.Kind, subject, now) ?? (CustodyKind.Leaves(act.Kind) ? There(act, now) ?? (act.Kind == CustodyKind.SetIn ? Permitted(act, subject, now) : null)
            : act.Kind == CustodyKind.Divided && act.Count < 1 ? new("count", "Say into how many more pieces it was divided.", "count-missing")
            : act.Kind == CustodyKind.Weighed && act.MassG is not > 0 ? new("massG", "Type what the scale shows, such as 12.4 g.", "mass-missing")
            : null);
    }

    /// <summary>Why an entry cannot be taken back: it is none of these, or without it the rest would not add up or be against the family's word; null when it can.</summary>
    /// <param name="entries">The whole log.</param>
    /// <param name="entryId">What is to be taken back.</param>
    /// <param name="subject">What the keepsake is.</param>
    public static InputError? UndoRefusal(IReadOnlyList<CustodyEntry> entries, int entryId, CustodySubject subject)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(subject);
        if (entries.FirstOrDefault(e => e.Id == entryId) is not { } entry || entries.Any(e => e.Kind == CustodyKind.Undone && e.RefId == entryId))
        {
            return new("", "That entry is not in the log any more, or was taken back already.", "gone");
        }

        if (!CustodyKind.CanBeUndone(entry.Kind))
        {
            return new("", "This cannot be taken back. Where something in it is wrong, correct the detail; where a pour was wrong, take the pour back on the bench.", "cannot-be-undone");
        }

        var without = CustodyLedger.Read([.. entries, new(entries.Max(e => e.Id) + 1, CustodyKind.Undone) { RefId = entryId }]);
        return without.Faults.Count > 0
            ? new("", "Without it the rest would not add up: later entries rest on it. Take those back first, or write down what is true now.", "rest-depends")
            : Permissions.For(subject.Permits).MayCast == CastShare.Part && AllCast(without) ? new("", Permissions.For(subject.Permits).Beyond, "more-than-permitted")
            : null;
    }

    /// <summary>The most that may be set in now, as the bench offers it: what the family permits of what is here, less what is in pieces already.</summary>
    public static CustodyAmount Offer(CustodySubject subject, CustodyState now)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(now);
        var (held, set) = (now.Balance.Held, now.Balance.SetIn);
        if (Refusal(CustodyKind.SetIn, subject, now) is not null)
        {
            return CustodyAmount.Nothing;
        }

        if (Permissions.For(subject.Permits).MayCast == CastShare.All)
        {
            return held;
        }

        var count = subject.PartCount is { } most ? Math.Clamp(most - set.Count, 0, held.Count) : 0;
        var grams = subject.PartG is { } mostG ? Math.Max(0, Math.Min(mostG - (set.MassG ?? 0), held.MassG ?? double.MaxValue)) : (double?)null;
        return new(count, grams);
    }

    private static InputError? Gone(string kind, CustodyState now) => now.Balance.InHand ? null : (now.Whereabouts, kind) switch
    {
        (CustodyWhereabouts.Returned, _) => new("", "It went back to the family. If it comes again, take it in anew: it gets a new number.", "gone-back"),
        (CustodyWhereabouts.InPiece, _) => new("", "All of it is cast, so there is nothing left here for this.", "all-cast"),
        (CustodyWhereabouts.Lost, _) => new("", "It is written down as lost. If it was found, take that entry back first.", "lost"),
        _ => new("", "Nothing of it is left here.", "used-up"),
    };

    private static InputError? FamilysWord(string kind, CustodySubject subject)
    {
        var permission = Permissions.For(subject.Permits);
        return kind switch
        {
            CustodyKind.SetIn or CustodyKind.Used or CustodyKind.Divided when !permission.ThingMayBeCast => new("", permission.Beyond, "not-permitted"),
            CustodyKind.CopySetIn or CustodyKind.Copied or CustodyKind.Prepared when !permission.CopyMayBeCast => new("", permission.Beyond, "not-permitted"),
            _ => null,
        };
    }

    private static InputError? Material(string kind, CustodySubject subject, CustodyState now)
    {
        var rule = MaterialRules.For(subject.Material);
        var stands = rule.NeverEmbed && !(subject.Overruled && rule.MayBeOverruled);
        return kind switch
        {
            CustodyKind.SetIn when stands => new("", rule.NeedsBeforeResin, "material"),
            CustodyKind.CopySetIn when !now.Copied => new("", "Note first what was copied and how; then the copy can be cast.", "not-copied"),
            _ => null,
        };
    }

    private static InputError? There(CustodyAct act, CustodyState now)
    {
        var (held, most) = (now.Balance.Held, now.Balance.HeldAtMostG);
        return act switch
        {
            _ when act.Count < 0 || act.MassG is < 0 => new("massG", "An amount cannot be below nothing.", "amount-wrong"),
            _ when act.Count > held.Count => new("count", $"There {(held.Count == 1 ? "is 1" : $"are {N(held.Count)}")} here, so {N(act.Count)} cannot leave. Count again, or look at the figure.", "more-than-held"),
            _ when act.MassG is { } wanted && most is { } here && wanted > here + CustodyLedger.ScaleSlackG =>
                new("massG", $"By the scale there are {(held.MassG is null ? "at most " : "")}{G(Math.Max(0, here))} here, so {G(wanted)} cannot leave. Weigh it again, or look at the figure.", "more-than-held"),
            _ when act.Count == 0 && act.MassG is null && !act.Unweighed => new("massG", "Type how many, or what the scale shows: what leaves is counted or weighed.", "amount-missing"),
            _ when act.Count == 0 && act.MassG is 0 => new("massG", "Nothing leaves: type how many, or what the scale shows.", "amount-missing"),
            _ => null,
        };
    }

    private static InputError? Permitted(CustodyAct act, CustodySubject subject, CustodyState now)
    {
        var permission = Permissions.For(subject.Permits);
        if (permission.MayCast != CastShare.Part)
        {
            return null;
        }

        var (came, set) = (now.Balance.CameIn, now.Balance.SetIn);
        var (count, grams) = (set.Count + act.Count, set.MassG + act.MassG);
        return act switch
        {
            _ when subject.PartCount is { } most && count > most => new("count", $"The family permits {N(most)} to be cast; this would make {N(count)}. {permission.Beyond}", "more-than-permitted"),
            _ when subject.PartG is { } most && grams > most + CustodyLedger.ScaleSlackG => new("massG", $"The family permits {G(most)} to be cast; this would make {G(grams!.Value)}. {permission.Beyond}", "more-than-permitted"),
            _ when act.Count > 0 && count >= came.Count + now.Balance.Divided => new("count", permission.Beyond, "more-than-permitted"),
            _ when came.MassG is { } all && grams >= all - CustodyLedger.ScaleSlackG => new("massG", permission.Beyond, "more-than-permitted"),
            _ => null,
        };
    }

    private static bool AllCast(CustodyState now) =>
        (now.Balance.SetIn.Count > 0 && now.Balance.SetIn.Count >= now.Balance.CameIn.Count + now.Balance.Divided)
        || (now.Balance.CameIn.MassG is { } all && now.Balance.SetIn.MassG >= all - CustodyLedger.ScaleSlackG && all > 0);

    private static string N(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string G(double grams) => string.Create(CultureInfo.InvariantCulture, $"{grams:0.0} g");
}
