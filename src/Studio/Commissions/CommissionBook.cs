using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Customers;
using Studio.Data;

namespace Studio.Commissions;

/// <summary>Writes commissions and their story; the pages that tell the whole story read it through the story's own book.</summary>
public sealed partial class CommissionBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news)
{
    private const int MostNote = 4000;

    /// <summary>What differs between two versions, and what an edit changed, is said with these names.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [nameof(Commission.Title)] = "What they ask for",
        [nameof(Commission.Remembers)] = "Whom it remembers",
        [nameof(Commission.Occasion)] = "Occasion",
        [nameof(Commission.NeededBy)] = "Needed by",
        [nameof(Commission.Handover)] = "Collection or delivery",
        [nameof(Commission.DeliveryAddress)] = "Delivery address",
        [nameof(Commission.Notes)] = "Notes",
        [nameof(Commission.Stands)] = "Where it stands",
    };

    /// <summary>
    /// Adds one sentence to a commission's story. It is written by the caller's own save, so it is on disk exactly when the thing it tells of is;
    /// the caller tells the news afterwards.
    /// </summary>
    /// <param name="db">The caller's open context; nothing is saved here.</param>
    /// <param name="commissionId">The commission.</param>
    /// <param name="kind">Open key: <c>stands</c>, <c>quote</c>, <c>payment</c>, <c>keepsake</c>, <c>piece</c>, <c>note</c>.</param>
    /// <param name="words">A whole sentence.</param>
    /// <param name="by">Who did it.</param>
    /// <param name="about">The record it tells of, such as <c>pour/12</c>; empty for none.</param>
    public static void Append(StudioDb db, int commissionId, string kind, string words, string by, string about = "")
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(words);
        db.Set<CommissionEvent>().Add(new CommissionEvent { CommissionId = commissionId, At = db.Now, By = by, Kind = kind, Words = words.Trim(), About = about });
    }

    /// <summary>
    /// Moves a commission on when it stands at <paramref name="from"/>, and leaves it alone otherwise: sending a second price does not send an agreed commission back.
    /// Written by the caller's own save, like <see cref="Append"/>.
    /// </summary>
    public static async Task MoveIfAsync(StudioDb db, int commissionId, string from, string to, string words, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        var commission = await db.Set<Commission>().FindAsync(commissionId);
        if (commission?.Stands == from)
        {
            commission.Stands = to;
            Append(db, commissionId, "stands", words, by);
        }
    }

    /// <summary>One commission to edit; null when there is no such number.</summary>
    public async Task<Commission?> ReadAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Commission>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == id);
    }

    /// <summary>Known customers in whose name or e-mail every typed word stands; none for an empty box.</summary>
    public async Task<IReadOnlyList<CustomerLine>> KnownAsync(string typed, int most) =>
        string.IsNullOrWhiteSpace(typed) ? [] : (await new CustomerBook(factory, news).ListAsync(typed, most)).Lines;

    /// <summary>Saves an edited commission and writes down what changed; refused when somebody else saved since it was read.</summary>
    public Task<Saved> EditAsync(Commission edited, string by) => Saved.TryAsync(async () =>
    {
        Tidy(edited);
        if (new CommissionValidator().Validate(edited) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var stored = await db.OverwriteAsync(edited);
        var changed = db.Entry(stored).Properties.Where(p => Labels.ContainsKey(p.Metadata.Name) && !Equals(p.OriginalValue, p.CurrentValue)).Select(Said).ToList();
        if (changed.Count > 0)
        {
            Append(db, edited.Id, "edit", "Changed: " + string.Join("; ", changed) + ".", by);
        }

        await db.SaveChangesAsync();
        edited.Version = stored.Version;
        news.Tell(News.Commission, edited.Id);
        return Saved.Done(edited.Id);
    });

    /// <summary>Writes a note into the story.</summary>
    public Task<Saved> NoteAsync(int id, string words, string by) => Saved.TryAsync(async () =>
    {
        if (string.IsNullOrWhiteSpace(words))
        {
            return Saved.Refused("There is nothing to write down yet. Type the note first.");
        }

        if (words.Length > MostNote)
        {
            return Saved.Refused(string.Create(CultureInfo.InvariantCulture, $"A note holds at most {MostNote} characters. Split it into two."));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        Append(db, id, "note", words, by);
        await db.SaveChangesAsync();
        news.Tell(News.Commission, id);
        return Saved.Done(id);
    });

    private static string Said(Microsoft.EntityFrameworkCore.ChangeTracking.PropertyEntry p)
    {
        var label = Labels[p.Metadata.Name].ToLowerInvariant();
        return p.Metadata.Name is nameof(Commission.Notes) or nameof(Commission.DeliveryAddress) ? label : $"{label} from {Words(p.OriginalValue)} to {Words(p.CurrentValue)}";
    }

    private static string Words(object? value) => value switch
    {
        null or "" => "nothing",
        DateOnly day => day.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB")),
        _ => $"“{value}”",
    };

    private static void Tidy(Commission c)
    {
        c.Title = c.Title.Trim();
        c.Remembers = c.Remembers.Trim();
        c.Occasion = c.Occasion.Trim();
        c.DeliveryAddress = c.DeliveryAddress.Trim();
        c.Notes = c.Notes.Trim();
    }
}
