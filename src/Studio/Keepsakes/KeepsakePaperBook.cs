using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine.Custody;
using Studio.Papers;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>A mail to the family, to be opened in the maker's own mail program.</summary>
public sealed record ReceiptMail(string To, string Subject, string Body)
{
    /// <summary>The address that opens it (RFC 6068).</summary>
    public string Href => MailLink.To(To, Subject, Body)!;
}

/// <summary>Shapes a commission's keepsakes for its receipt, its labels and the mail that goes with them.</summary>
public sealed class KeepsakePaperBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settingsBook, PhotoStore photos, IssuedBook issued, News news)
{
    /// <summary>The receipt as it would be given now, marked as a draft; null when there is no such commission or nothing to receipt.</summary>
    /// <param name="commissionId">The commission.</param>
    /// <param name="only">Ids of the keepsakes to list; empty for all.</param>
    public async Task<PaperFile?> ReceiptAsync(int commissionId, IReadOnlySet<int> only) =>
        await ReadAsync(commissionId, only) is { } read ? Receipt(read, "Draft") : null;

    /// <summary>Gives the receipt to the family: it is kept as it leaves. Null when there is nothing to receipt.</summary>
    public async Task<PaperFile?> GiveReceiptAsync(int commissionId, IReadOnlySet<int> only, string by)
    {
        if (await ReadAsync(commissionId, only) is not { } read)
        {
            return null;
        }

        var paper = Receipt(read, "");
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await issued.KeepAsync(db, new IssuedPaper { Kind = PaperKinds.Receipt, Number = read.Commission.Number, CommissionId = commissionId, FileName = paper.FileName, By = by, State = "given" }, paper.Content);
        await db.SaveChangesAsync();
        news.Tell(News.Commission, commissionId);
        return paper;
    }

    /// <summary>The sheet of labels; null when there is no such commission or no keepsake to label.</summary>
    /// <param name="commissionId">The commission.</param>
    /// <param name="only">Ids of the keepsakes to label; empty for all.</param>
    /// <param name="from">First free cell of a part-used sheet, from 1; anything off the sheet starts at 1.</param>
    /// <param name="address">Where the studio was reached, for a studio that names no address of its own.</param>
    public async Task<PaperFile?> LabelsAsync(int commissionId, IReadOnlySet<int> only, int from, string address)
    {
        if (await ReadAsync(commissionId, only) is not { } read)
        {
            return null;
        }

        var root = (read.Settings.PublicUrl.Length > 0 ? read.Settings.PublicUrl : address).TrimEnd('/');
        var model = new LabelPaperModel
        {
            Studio = read.House.Letterhead,
            Labels = read.Keepsakes.ConvertAll(k => new LabelPaperLabel(k.Keepsake.EntryNumber, $"{root}/k/{k.Keepsake.EntryNumber}", k.Keepsake.Description, "Commission " + read.Commission.Number)),
            StartAtCell = from >= 1 && from <= LabelGrid.For(read.House.Size).Cells ? from : 1,
            MadeUtc = clock.GetUtcNow().UtcDateTime,
        };
        return new(LabelPaper.Create(model, read.House.Size), $"labels-{read.Commission.Number}.pdf");
    }

    /// <summary>The grid of the studio's label sheet.</summary>
    public async Task<LabelGrid> GridAsync() => LabelGrid.For(PaperHouse.Of(await settingsBook.ReadAsync()).Size);

    /// <summary>The words that go with the receipt; null when there is nothing to write about.</summary>
    public async Task<ReceiptMail?> MailAsync(int commissionId, IReadOnlySet<int> only)
    {
        if (await ReadAsync(commissionId, only) is not { } read)
        {
            return null;
        }

        var (customer, studio) = (read.Commission.Customer!, read.Settings.StudioName);
        var list = string.Join("\n", read.Keepsakes.Select(k => $"{k.Keepsake.EntryNumber}: {k.Keepsake.Description}"));
        var one = read.Keepsakes.Count == 1;
        var body = $"Dear {customer.Name},\n\nthank you for trusting us with {(one ? "this keepsake" : "these keepsakes")}, {(one ? "under its number" : "each under its own number")}:\n\n{list}\n\n"
            + "The receipt is attached. Please look it over; if anything on it is not as you said it, tell us and we will put it right before we do anything.\n\nWith kind regards\n" + studio;
        return new ReceiptMail(customer.Email, $"Receipt for your keepsakes, {read.Commission.Number}", body);
    }

    private PaperFile Receipt(Bundle read, string state)
    {
        var (commission, keepsakes) = (read.Commission, read.Keepsakes);
        var visit = Visit.Of(keepsakes);
        var model = new ReceiptPaperModel
        {
            Studio = read.House.Letterhead,
            Format = read.House.Format,
            State = state,
            Commission = commission.Number,
            Remembers = commission.Remembers,
            Owner = Person(commission.Customer!),
            Depositor = visit.Depositor.Length > 0 ? new PaperPerson(visit.Depositor, []) : null,
            DepositorAuthority = visit.Authority,
            WrittenUtc = clock.GetUtcNow().UtcDateTime,
            Reason = commission.Title.Length > 0 ? $"For the commission “{commission.Title}”" : "To be set in a memorial piece",
            ReturnBy = keepsakes.Min(k => k.Keepsake.ReturnBy),
            Keepsakes = keepsakes.ConvertAll(k => Row(k, read.House.Format)),
        };
        return new(ReceiptPaper.Create(model, read.House.Size), $"receipt-{commission.Number}.pdf");
    }

    private async Task<Bundle?> ReadAsync(int commissionId, IReadOnlySet<int> only)
    {
        await using var db = await factory.CreateDbContextAsync();
        var commission = await db.Set<Commission>().AsNoTracking().Include(c => c.Customer).SingleOrDefaultAsync(c => c.Id == commissionId);
        var ids = only.ToArray();
        var rows = await db.Set<Keepsake>().AsNoTracking()
            .Where(k => k.CommissionId == commissionId && k.Custody != CustodyWhereabouts.Withdrawn && (ids.Length == 0 || ids.Contains(k.Id))).OrderBy(k => k.Id)
            .Select(k => new { Keepsake = k, Hash = db.Set<Photo>().Where(p => p.KeepsakeId == k.Id).OrderBy(p => p.Id).Select(p => p.Hash).FirstOrDefault() }).ToListAsync();
        var listed = rows.ConvertAll(r => r.Keepsake.Id);
        var logs = (await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => listed.Contains(e.KeepsakeId)).OrderBy(e => e.Id).ToListAsync()).ToLookup(e => e.KeepsakeId);
        var settings = await settingsBook.ReadAsync();
        return commission is null || rows.Count == 0 ? null : new Bundle(settings, PaperHouse.Of(settings), commission, rows.ConvertAll(r => new Listed(r.Keepsake, r.Hash, [.. logs[r.Keepsake.Id]])));
    }

    private ReceiptPaperKeepsake Row(Listed row, PaperFormat format)
    {
        var k = row.Keepsake;
        var permission = Permissions.For(k.Permits);
        return new ReceiptPaperKeepsake
        {
            EntryNumber = k.EntryNumber,
            Kind = KeepsakeKinds.Label(k.Kind),
            Description = k.Description,
            Count = k.Count,
            MassG = k.MassG,
            Condition = string.Join(". ", new[] { string.Join(", ", k.ConditionWords), k.ConditionNote }.Where(t => t.Length > 0)),
            Permission = permission.OnReceipt + (k is { PartCount: null, PartG: null } ? "" : $" At most {CustodyWords.Amount(k.PartCount, k.PartG)}."),
            Overruled = k.OverruledWhy.Length > 0 ? $"There is only this one photograph. {k.OverruledBy} has agreed to cast it all the same: {Say.Sentence(k.OverruledWhy)}" : null,
            Requirements = k.Requirements,
            Came = Came(row, format),
            Since = Since(row, format),
            ThumbnailJpeg = Thumbnail(row.Hash),
        };
    }

    // when, by whom and how this very thing came; another visit is another line
    private static string Came(Listed row, PaperFormat format)
    {
        var (k, received) = (row.Keepsake, row.Log.FirstOrDefault(e => e.Kind == CustodyKind.Received));
        var brought = k.DepositorName.Length > 0 ? $", brought by {k.DepositorName}{(k.DepositorAuthority.Length > 0 ? $" ({k.DepositorAuthority})" : "")}" : "";
        return $"Came {k.Method} on {format.Moment(k.ReceivedAt)}{brought}, taken in by {(received is { By.Length: > 0 } ? received.By : "a person who is not noted")}{(k.Packing.Length > 0 ? $"; packed in {k.Packing}" : "")}.";
    }

    private static string? Since(Listed row, PaperFormat format)
    {
        var undone = row.Log.Where(e => e.Kind == CustodyKind.Undone).Select(e => e.RefId).ToHashSet();
        var back = row.Log.Where(e => e.Kind == CustodyKind.Returned && !undone.Contains(e.Id))
            .Select(e => $"{CustodyWords.Amount(e.Count, e.MassG)} went back on {format.Day(e.At)}{(e.Whom.Length > 0 ? " with " + e.Whom : "")}").ToList();
        var set = CustodyLog.Read(row.Log).Balance.SetIn;
        List<string> said = [.. set is { Count: 0, MassG: 0 } ? [] : new[] { $"{CustodyWords.Amount(set.Count, set.MassG)} set into a piece" }, .. back];
        return said.Count == 0 ? null : $"Since then: {string.Join("; ", said)}.";
    }

    private byte[]? Thumbnail(string? hash)
    {
        if (hash is null || photos.Open(hash, PhotoSize.Small) is not { } file)
        {
            return null;
        }

        using var content = file.Content;
        using var bytes = new MemoryStream();
        content.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static PaperPerson Person(Customer c) => new(c.Name, PaperHouse.Lines(c.Address), c.Phone, c.Email);

    private sealed record Bundle(StudioSettings Settings, PaperHouse House, Commission Commission, List<Listed> Keepsakes);

    private sealed record Listed(Keepsake Keepsake, string? Hash, List<KeepsakeEvent> Log);

    /// <summary>Who brought all of them, where one person brought them all.</summary>
    private sealed record Visit(string Depositor, string Authority)
    {
        public static Visit Of(List<Listed> keepsakes)
        {
            var (names, rights) = (keepsakes.Select(k => k.Keepsake.DepositorName).Distinct(StringComparer.Ordinal).ToList(), keepsakes.Select(k => k.Keepsake.DepositorAuthority).Distinct(StringComparer.Ordinal).ToList());
            return names.Count == 1 ? new(names[0], rights.Count == 1 ? rights[0] : "") : new("", "");
        }
    }
}
