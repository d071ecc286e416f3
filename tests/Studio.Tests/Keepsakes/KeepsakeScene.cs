using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data.Files;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Settings;
using Studio.Story;

namespace Studio.Tests.Keepsakes;

/// <summary>An invented commission in a database of its own, and the book that keeps its keepsakes.</summary>
public sealed class KeepsakeScene : IDisposable
{
    public const string Maker = "Morag";

    public KeepsakeScene()
    {
        Settings = new SettingsBook(Database.Factory, Database.News);
        Book = new KeepsakeBook(Database.Factory, Settings, Database.News, new PieceNames(), new PourNames());
        using var db = Database.Open();
        var commission = new Commission
        {
            Number = "26-014",
            Title = "Heather pyramid with his hive nails",
            Remembers = "Angus, beekeeper",
            Stands = Standing.Agreed,
            CreatedAt = db.Now,
            Customer = new Customer { Name = "Isla Fraser", Email = "isla@family.example", CreatedAt = db.Now },
        };
        db.Add(commission);
        db.SaveChanges();
        CommissionId = commission.Id;
        var mould = new Mould { Name = "Pyramid", Shape = "pyramid", Dimensions = new(StringComparer.Ordinal) { ["sides"] = 4, ["baseMm"] = 120, ["heightMm"] = 100, ["tipMm"] = 0 } };
        var piece = new Piece { CommissionId = CommissionId, Name = "the heather pyramid", Mould = mould, CreatedAt = db.Now };
        db.Add(piece);
        db.SaveChanges();
        PieceId = piece.Id;
    }

    public StudioDatabase Database { get; } = new();

    public SettingsBook Settings { get; }

    public KeepsakeBook Book { get; }

    public int CommissionId { get; }

    /// <summary>The one piece that the commission's keepsakes go into.</summary>
    public int PieceId { get; }

    /// <summary>A form that can be kept as it is.</summary>
    public static IntakeForm Form(string kind = "dried-flower", string permits = Permissions.EmbedAll, double? massG = null, string description = "heather from the hill") =>
        new() { Kind = kind, Description = description, Permits = permits, Place = "Drawer 1", MassG = massG };

    public async Task<KeepsakeView> TakenInAsync(string kind = "dried-flower", string permits = Permissions.EmbedAll, double? massG = null, string description = "heather from the hill")
    {
        var taken = await Book.TakeInAsync(CommissionId, Form(kind, permits, massG, description), Maker);
        taken.Ok.ShouldBeTrue(taken.Words);
        return await ViewAsync(taken.EntryNumber);
    }

    /// <summary>The commission's story as its page reads it.</summary>
    public Task<CommissionStory?> StoryAsync() => new StoryBook(Database.Factory, Database.Clock, Settings, Book, new PieceTimeBook(Database.Factory, Database.Clock, Settings, new Studio.Quotes.Promises())).ReadAsync(CommissionId);

    public async Task<KeepsakeView> ViewAsync(string number) => (await Book.ViewAsync(number)).ShouldNotBeNull();

    /// <summary>Does an act on the newest version, which must be allowed.</summary>
    public async Task<KeepsakeView> DoneAsync(KeepsakeView view, ActForm form)
    {
        var saved = await Book.DoAsync(view.Keepsake.Id, view.Keepsake.Version, form, Maker);
        saved.Ok.ShouldBeTrue(saved.Words);
        return await ViewAsync(view.Keepsake.EntryNumber);
    }

    public async Task<string> RefusalAsync(KeepsakeView view, ActForm form)
    {
        var saved = await Book.DoAsync(view.Keepsake.Id, view.Keepsake.Version, form, Maker);
        saved.Ok.ShouldBeFalse();
        return saved.Words;
    }

    public async Task<int> PhotoAsync(char digit = 'a') =>
        (await Book.ReceivePhotoAsync(new StoredPhoto(new string(digit, 64), "image/jpeg", 1000, 400, 300, null, "heather.jpg", false), Maker)).Id;

    public async Task<List<KeepsakeEvent>> EventsAsync(int keepsakeId)
    {
        await using var db = Database.Open();
        return await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => e.KeepsakeId == keepsakeId).OrderBy(e => e.Id).ToListAsync();
    }

    public static ActForm Move(string place = "Bench") => new() { Act = CustodyKind.Moved, Place = place, Words = "to be looked at" };

    /// <summary>All that is here goes in.</summary>
    public ActForm Cast(double? massG = null) => new() { Act = CustodyKind.SetIn, PieceId = PieceId, All = true, MassG = massG };

    /// <summary>So much goes in, and the rest lies in a drawer.</summary>
    public ActForm CastPart(double? massG, int count = 0) => new() { Act = CustodyKind.SetIn, PieceId = PieceId, MassG = massG, Count = count, Place = "Drawer 1" };

    public static ActForm Return(double? massG = null) => new() { Act = CustodyKind.Returned, Whom = "Isla Fraser", All = true, MassG = massG };

    public static ActForm Copy() => new() { Act = CustodyKind.Copied, Words = "scanned at 600 dpi" };

    public void Dispose() => Database.Dispose();
}
