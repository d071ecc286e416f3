using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Time;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>A quote with what its page shows around it.</summary>
public sealed record QuoteView(
    Quote Quote, Piece Piece, Commission Commission, IReadOnlyList<QuoteVersion> Versions, IReadOnlyList<string> DesignDiffers, bool Expired, TimeZoneInfo Zone, DateTime Now)
{
    public bool Draft => Quote.State == QuoteState.Draft;

    /// <summary>The paper as it left; null for one that did not, or that left before papers were kept.</summary>
    public IssuedPaper? Paper { get; init; }

    /// <summary>When the piece can be with them; null for a quote that is no draft, or a piece that is home.</summary>
    public TimeResult? Time { get; init; }

    /// <summary>What to settle before it is sent; empty for one that was.</summary>
    public IReadOnlyList<SendPoint> Points { get; init; } = [];

    /// <summary>It never left the studio: a draft, or one that a newer version overtook.</summary>
    public bool NeverSent => Draft || (Quote.State == QuoteState.Superseded && Quote.SentAt is null);

    /// <summary>The paper is drawn again each time, because the one that was sent was not kept.</summary>
    public bool DrawnAgain => !NeverSent && Paper is null;

    /// <summary>The version that was sent after it and replaced it; null for none.</summary>
    public int? ReplacedBy => Versions.Where(v => v.VersionNo > Quote.VersionNo && v.SentAt is not null).Select(v => (int?)v.VersionNo).Min();

    /// <summary>The version that was sent before it; null for none.</summary>
    public int? Replaces => Versions.Where(v => v.VersionNo < Quote.VersionNo && v.SentAt is not null).Select(v => (int?)v.VersionNo).Max();
}

/// <summary>One version in the list beside the quote.</summary>
public sealed record QuoteVersion(int Id, int VersionNo, string State, decimal? Total, string Currency, DateTime CreatedAt, DateTime? SentAt = null);

/// <summary>How far a quote has come.</summary>
public static class QuoteState
{
    public const string Draft = "draft";
    public const string Sent = "sent";
    public const string Accepted = "accepted";
    public const string Superseded = "superseded";
    public const string Declined = "declined";

    public static string Label(string state) => state switch
    {
        Draft => "being worked out",
        Sent => "sent",
        Accepted => "agreed",
        Superseded => "replaced by a newer one",
        Declined => "declined",
        _ => state,
    };
}

/// <summary>All reads and writes of quotes.</summary>
public sealed partial class QuoteBook(IDbContextFactory<StudioDb> factory, News news, SettingsBook settingsBook, IssuedBook issued, PieceTimeBook times)
{
    /// <summary>The piece's newest quote that is still of use; a new draft from its design where there is none.</summary>
    public Task<Saved> OpenAsync(int pieceId, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        var newest = await db.Set<Quote>().Where(q => q.PieceId == pieceId && q.State != QuoteState.Declined).OrderByDescending(q => q.VersionNo).FirstOrDefaultAsync();
        return newest is not null ? Saved.Done(newest.Id) : await BeginAsync(db, pieceId, null, by);
    });

    /// <summary>The quote's page; null when there is none.</summary>
    public async Task<QuoteView?> ViewAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTrackingWithIdentityResolution;
        var quote = await db.Set<Quote>().Include(q => q.Lines.OrderBy(l => l.Order)).SingleOrDefaultAsync(q => q.Id == id);
        if (quote is null)
        {
            return null;
        }

        var piece = await PieceAsync(db, quote.PieceId);
        var zone = await settingsBook.ZoneAsync();
        var today = DateOnly.FromDateTime(Shell.Say.Local(db.Now, zone));
        var draft = quote.State == QuoteState.Draft;
        IReadOnlyList<string> differs = draft || quote.State == QuoteState.Sent ? await DiffersAsync(db, quote, piece) : [];
        var time = draft ? await times.OfPieceAsync(piece.Id) : null;
        return new(
            quote,
            piece,
            piece.Commission!,
            [.. (await db.Set<Quote>().Where(q => q.PieceId == quote.PieceId).OrderByDescending(q => q.VersionNo).Select(q => new { q.Id, q.VersionNo, q.State, q.Result, q.Currency, q.CreatedAt, q.SentAt }).ToListAsync())
                .Select(q => new QuoteVersion(q.Id, q.VersionNo, q.State, q.Result?.Total, q.Currency, q.CreatedAt, q.SentAt))],
            differs,
            quote.State is QuoteState.Sent && quote.ValidUntil < today,
            zone,
            db.Now)
        {
            Paper = draft ? null : await issued.LastAsync(PaperKinds.Quote, id),
            Time = time,
            Points = draft ? await PointsAsync(db, quote, piece, time, differs, today) : [],
        };
    }

    /// <summary>Keeps a draft. A sent quote keeps its numbers and is refused here.</summary>
    public Task<Saved> KeepAsync(QuoteForm form, string by) => ChangeAsync(form.Id, form.Version, by, (_, quote) =>
    {
        if (quote.State != QuoteState.Draft)
        {
            return "This quote was sent, so its numbers stay as they are. Begin a new version to change it.";
        }

        QuoteDraft.ToQuote(form, quote);
        return null;
    });

    /// <summary>Lays the design's present amounts over the draft.</summary>
    public async Task<QuoteForm?> WithDesignAsync(QuoteForm form)
    {
        await using var db = await factory.CreateDbContextAsync();
        var pieceId = await db.Set<Quote>().Where(q => q.Id == form.Id).Select(q => q.PieceId).SingleAsync();
        var piece = await PieceAsync(db, pieceId);
        var copy = JsonColumn.Read<QuoteForm>(JsonColumn.Write(form))!;
        return QuoteDraft.TakeDesign(copy, piece, piece.Commission!, await settingsBook.ReadAsync(), await ResinsAsync(db), await MaterialsAsync(db)) ? copy : null;
    }

    /// <summary>A new version that starts from this one's sheet; this one is replaced unless it was agreed.</summary>
    public Task<Saved> RenewAsync(int id, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        var before = await db.Set<Quote>().SingleAsync(q => q.Id == id);
        var open = await db.Set<Quote>().Where(q => q.PieceId == before.PieceId && q.State == QuoteState.Draft).Select(q => q.Id).FirstOrDefaultAsync();
        return open != 0 ? Saved.Done(open) : await BeginAsync(db, before.PieceId, before, by);
    });

    private async Task<Saved> BeginAsync(StudioDb db, int pieceId, Quote? before, string by)
    {
        db.By = by;
        var piece = await PieceAsync(db, pieceId);
        var settings = await settingsBook.ReadAsync();
        var form = before is null
            ? QuoteDraft.FormOf(piece, piece.Commission!, settings, await ResinsAsync(db), await MaterialsAsync(db))
            : JsonColumn.Read<QuoteForm>(JsonColumn.Write(before.Form))!;
        if (before is null && form.Bought.Count == 0 && form.Work.Count == 0)
        {
            return Saved.Refused("The design can't be priced yet: it has no layers, or figures that need another look. Mend the drawing, then make the price.");
        }

        form.ValidUntil = DateOnly.FromDateTime(Shell.Say.Local(db.Now, await settingsBook.ZoneAsync())).AddDays(settings.QuoteValidDays);
        var quote = QuoteDraft.ToQuote(form, new Quote
        {
            CommissionId = piece.CommissionId,
            PieceId = pieceId,
            VersionNo = 1 + (await db.Set<Quote>().Where(q => q.CommissionId == piece.CommissionId).MaxAsync(q => (int?)q.VersionNo) ?? 0),
            CreatedAt = db.Now,
        });
        db.Add(quote);
        await db.SaveChangesAsync();
        news.Tell(News.Quote, quote.Id);
        return Saved.Done(quote.Id);
    }

    private static async Task<IReadOnlyList<string>> DiffersAsync(StudioDb db, Quote quote, Piece piece)
    {
        var settings = await db.Set<StudioSettings>().SingleOrDefaultAsync() ?? new StudioSettings();
        var now = QuoteDraft.FormOf(piece, piece.Commission!, settings, await ResinsAsync(db), await MaterialsAsync(db));
        var then = quote.Form;
        return
        [
            .. now.Bought.Where(b => !then.Bought.Exists(t => t.Name == b.Name && t.Used == b.Used)).Select(b => $"{b.Name}: {b.Used} {b.Unit} in the design, {(then.Bought.Find(t => t.Name == b.Name) is { } t ? $"{t.Used} {t.Unit}" : "nothing")} here"),
            .. then.Bought.Where(t => t.Kind != CostLines.Extra && !now.Bought.Exists(b => b.Name == t.Name)).Select(t => $"{t.Name}: no longer in the design, {t.Used} {t.Unit} here"),
            .. now.Work.Where(w => !then.Work.Exists(t => t.Name == w.Name && t.Minutes == w.Minutes)).Select(w => $"{w.Name}: {w.Minutes} minutes in the design, {(then.Work.Find(t => t.Name == w.Name) is { } t ? $"{t.Minutes} minutes" : "nothing")} here"),
        ];
    }

    private async Task<Saved> ChangeAsync(int id, int version, string by, Func<StudioDb, Quote, string?> change) => await Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var quote = await db.Set<Quote>().Include(q => q.Lines).SingleAsync(q => q.Id == id);
        db.Entry(quote).Property(q => q.Version).OriginalValue = version;
        if (change(db, quote) is { } refused)
        {
            return Saved.Refused(refused);
        }

        db.Entry(quote).Property(q => q.Version).IsModified = true;
        await db.SaveChangesAsync();
        news.Tell(News.Quote, id);
        news.Tell(News.Commission, quote.CommissionId);
        return Saved.Done(id);
    });

    internal static Task<Piece> PieceAsync(StudioDb db, int id) =>
        db.Set<Piece>().Include(p => p.Mould).Include(p => p.Commission!.Customer).Include(p => p.Layers.OrderBy(l => l.Order)).ThenInclude(l => l.Resin).SingleAsync(p => p.Id == id);

    private static async Task<IReadOnlyList<SendPoint>> PointsAsync(StudioDb db, Quote quote, Piece piece, TimeResult? time, IReadOnlyList<string> differs, DateOnly today) =>
        SendPoints.Of(new(quote, piece, await MaterialsAsync(db), await InventedPrices.OfAsync(db), time, differs, today)
        {
            Keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == quote.CommissionId).ToListAsync(),
            Drawn = [.. (await db.Set<Piece>().Where(p => p.CommissionId == quote.CommissionId && p.Id != piece.Id && p.Stage != Making.LetGo && p.Stage != Making.Failed).SelectMany(p => p.Layers).Select(l => l.Placed).AsNoTracking().ToListAsync())
                .SelectMany(placed => placed).Select(p => p.KeepsakeId).OfType<int>()],
        });

    private static Task<List<Resin>> ResinsAsync(StudioDb db) => db.Set<Resin>().ToListAsync();

    private static Task<List<Material>> MaterialsAsync(StudioDb db) => db.Set<Material>().ToListAsync();
}
