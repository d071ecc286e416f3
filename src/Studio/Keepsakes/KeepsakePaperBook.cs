using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Data.Files;
using Studio.Papers;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>A paper ready to be opened or saved.</summary>
public sealed record KeepsakePaperFile(byte[] Content, string FileName);

/// <summary>A mail to the family, to be opened in the maker's own mail program.</summary>
public sealed record ReceiptMail(string To, string Subject, string Body)
{
    /// <summary>The address that opens it (RFC 6068).</summary>
    public string Href => MailLink.To(To, Subject, Body)!;
}

/// <summary>Shapes a commission's keepsakes for its receipt, its labels and the mail that goes with them.</summary>
public sealed class KeepsakePaperBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settingsBook, PhotoStore photos)
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The receipt; null when there is no such commission or nothing to receipt.</summary>
    /// <param name="commissionId">The commission.</param>
    /// <param name="only">Ids of the keepsakes to list; empty for all.</param>
    public async Task<KeepsakePaperFile?> ReceiptAsync(int commissionId, IReadOnlySet<int> only)
    {
        if (await ReadAsync(commissionId, only) is not { } read)
        {
            return null;
        }

        var (settings, size, commission, keepsakes) = (read.Settings, SizeOf(read.Settings), read.Commission, read.Keepsakes);
        var depositor = keepsakes.Find(k => k.Keepsake.DepositorName.Length > 0)?.Keepsake;
        var customer = commission.Customer!;
        var model = new ReceiptPaperModel
        {
            Studio = Letterhead(settings),
            Format = Format(settings),
            Commission = commission.Number,
            Remembers = commission.Remembers,
            Owner = Person(customer),
            Depositor = depositor is null ? null : new PaperPerson(depositor.DepositorName, []),
            DepositorAuthority = depositor?.DepositorAuthority,
            EntryUtc = keepsakes.Max(k => k.Keepsake.ReceivedAt),
            Reason = commission.Title.Length > 0 ? $"For the commission “{commission.Title}”" : "To be set in a memorial piece",
            Method = Joined(keepsakes.Select(k => k.Keepsake.Method)),
            Packing = Joined(keepsakes.Select(k => k.Keepsake.Packing)),
            ReturnBy = keepsakes.Min(k => k.Keepsake.ReturnBy),
            ReceivedBy = Joined(keepsakes.Select(k => k.ReceivedBy)),
            Keepsakes = keepsakes.ConvertAll(Row),
        };
        return new KeepsakePaperFile(ReceiptPaper.Create(model, size), $"receipt-{commission.Number}.pdf");
    }

    /// <summary>The sheet of labels; null when there is no such commission or no keepsake to label.</summary>
    /// <param name="commissionId">The commission.</param>
    /// <param name="only">Ids of the keepsakes to label; empty for all.</param>
    /// <param name="from">First free cell of a part-used sheet, from 1; anything off the sheet starts at 1.</param>
    /// <param name="address">Where the studio was reached, for a studio that names no address of its own.</param>
    public async Task<KeepsakePaperFile?> LabelsAsync(int commissionId, IReadOnlySet<int> only, int from, string address)
    {
        if (await ReadAsync(commissionId, only) is not { } read)
        {
            return null;
        }

        var (settings, size) = (read.Settings, SizeOf(read.Settings));
        var root = (settings.PublicUrl.Length > 0 ? settings.PublicUrl : address).TrimEnd('/');
        var model = new LabelPaperModel
        {
            Studio = Letterhead(settings),
            Labels = read.Keepsakes.ConvertAll(k => new LabelPaperLabel(k.Keepsake.EntryNumber, $"{root}/k/{k.Keepsake.EntryNumber}", k.Keepsake.Description, "Commission " + read.Commission.Number)),
            StartAtCell = from >= 1 && from <= LabelGrid.For(size).Cells ? from : 1,
            MadeUtc = clock.GetUtcNow().UtcDateTime,
        };
        return new KeepsakePaperFile(LabelPaper.Create(model, size), $"labels-{read.Commission.Number}.pdf");
    }

    /// <summary>The grid of the studio's label sheet.</summary>
    public async Task<LabelGrid> GridAsync() => LabelGrid.For(SizeOf(await settingsBook.ReadAsync()));

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
        var body = $"Dear {customer.Name},\n\nthank you for trusting us with {(one ? "this keepsake. It is" : "these keepsakes. They are")} here and looked after, {(one ? "under its number" : "each under its own number")}:\n\n{list}\n\n"
            + "The receipt is attached. Please look it over; if anything on it is not as you said it, tell us and we will put it right before we do anything.\n\nWith kind regards\n" + studio;
        return new ReceiptMail(customer.Email, $"Receipt for your keepsakes, {read.Commission.Number}", body);
    }

    private async Task<Bundle?> ReadAsync(int commissionId, IReadOnlySet<int> only)
    {
        await using var db = await factory.CreateDbContextAsync();
        var commission = await db.Set<Commission>().AsNoTracking().Include(c => c.Customer).SingleOrDefaultAsync(c => c.Id == commissionId);
        var ids = only.ToArray();
        var rows = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == commissionId && (ids.Length == 0 || ids.Contains(k.Id))).OrderBy(k => k.Id)
            .Select(k => new Listed(k,
                db.Set<Photo>().Where(p => p.KeepsakeId == k.Id).OrderBy(p => p.Id).Select(p => p.Hash).FirstOrDefault(),
                db.Set<KeepsakeEvent>().Where(e => e.KeepsakeId == k.Id).OrderBy(e => e.Id).Select(e => e.By).FirstOrDefault() ?? ""))
            .ToListAsync();
        return commission is null || rows.Count == 0 ? null : new Bundle(await settingsBook.ReadAsync(), commission, rows);
    }

    private ReceiptPaperKeepsake Row(Listed row)
    {
        var k = row.Keepsake;
        return new ReceiptPaperKeepsake
        {
            EntryNumber = k.EntryNumber,
            Kind = KeepsakeKinds.Label(k.Kind),
            Description = k.Description,
            Count = k.Count,
            MassG = k.MassG,
            Condition = string.Join(". ", new[] { string.Join(", ", k.ConditionWords), k.ConditionNote }.Where(t => t.Length > 0)),
            Permission = PermissionSentence(k.Permits),
            Requirements = k.Requirements,
            ThumbnailJpeg = Thumbnail(row.Hash),
        };
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

    private static string PermissionSentence(string permits) => permits switch
    {
        Permission.EmbedAll => "All of it may be cast in resin.",
        Permission.EmbedPart => "A part may be cast in resin; the rest goes back to you.",
        Permission.CopyReturn => "A copy may be cast in resin; the original goes back to you.",
        _ => "It goes back to you untouched.",
    };

    private static string Joined(IEnumerable<string> texts) => string.Join(", ", texts.Where(t => t.Length > 0).Distinct(StringComparer.Ordinal));

    private static PaperPerson Person(Customer c) => new(c.Name, Lines(c.Address), c.Phone, c.Email);

    private static PaperLetterhead Letterhead(StudioSettings s) => new(s.StudioName, Lines(s.Address), s.Email, s.Phone);

    private static PaperFormat Format(StudioSettings s) =>
        new(English, s.Currency, 2, TimeZoneInfo.TryFindSystemTimeZoneById(s.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc, s.Units == "inch");

    private static PaperSize SizeOf(StudioSettings s) => s.Paper == "Letter" ? PaperSize.Letter : PaperSize.A4;

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private sealed record Bundle(StudioSettings Settings, Commission Commission, List<Listed> Keepsakes);

    private sealed record Listed(Keepsake Keepsake, string? Hash, string ReceivedBy);
}
