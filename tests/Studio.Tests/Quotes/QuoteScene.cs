using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Moulds;
using Studio.Papers;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Tests.Quotes;

/// <summary>A prism of 100 × 100 mm, one layer of 20 mm: 200 ml of resin at 1.1 g/ml, 220 g net, waste 5 % and 9 g a cup: 240 g mixed.</summary>
internal sealed class QuoteScene : IDisposable
{
    /// <summary>The prism, or a studio as it was released.</summary>
    /// <param name="sample">A released database to stand in instead; null for the prism.</param>
    public QuoteScene(string? sample = null)
    {
        Database = new(sample);
        var settings = new SettingsBook(Database.Factory, Database.News);
        Issued = new IssuedBook(Database.Factory, Database.Papers, Database.Clock);
        Book = new QuoteBook(Database.Factory, Database.News, settings, Issued, new PieceTimeBook(Database.Factory, Database.Clock, settings, new Promises()));
        Papers = new QuotePaperBook(Book, Database.Factory, settings, Issued);
        if (sample is null)
        {
            Furnish();
        }
    }

    private void Furnish()
    {
        using var db = Database.Open();
        db.Add(new StudioSettings
        {
            TaxPercent = 20,
            LabourRatePerHour = 30,
            OverheadMonthly = 0,
            MarginPercent = 40,
            RemakePercent = 0,
            DepositPercent = 50,
            RoundTo = 0.01m,
            PackagingCost = 4,
            DeliveryCost = 9,
            TimeZone = "Europe/London",
        });
        var resin = new Resin
        {
            Name = "Clear",
            DensityGPerMl = 1.1,
            PartsA = 2,
            PartsB = 1,
            Packs = [new(1000, 20), new(200, 6), new(5000, 75)],
        };
        var mica = new Material { Name = "Mica", Kind = "pigment", Unit = "g", DensityGPerMl = 2.8, PackSize = 50, PackPrice = 10 };
        var sand = new Material { Name = "Sand", Kind = "stone", Unit = "g", DensityGPerMl = 2.65, PackingFraction = 0.5, PackSize = 1000, PackPrice = 4 };
        var light = new Material { Name = "Light string", Kind = "light", Unit = "piece", PackSize = 2, PackPrice = 11 };
        var film = new Material { Name = "Clear film", Kind = "film", Unit = "sheet", PackSize = 20, PackPrice = 14 };
        var mould = new Mould { Name = "Square", Shape = "prism", Dimensions = new() { ["sides"] = 4, ["edgeMm"] = 100, ["heightMm"] = 50 } };
        var commission = new Commission { Number = "26-001", Title = "A block", Remembers = "Isolde", Customer = new Customer { Name = "Ansel", Email = "a@post.example", CreatedAt = db.Now }, CreatedAt = db.Now, Handover = "collection" };
        var piece = new Piece
        {
            Name = "Block",
            Mould = mould,
            Commission = commission,
            WastePercent = 5,
            WastePerBatchG = 9,
            CreatedAt = db.Now,
            Tasks = [new("Sand and polish", 60)],
            Layers = [new PieceLayer { Name = "Clear", Resin = resin, ThicknessMm = 20 }],
        };
        db.AddRange(mica, sand, light, film, piece);
        db.SaveChanges();
    }

    public StudioDatabase Database { get; }

    public QuoteBook Book { get; }

    public QuotePaperBook Papers { get; }

    public IssuedBook Issued { get; }

    /// <summary>The paper as its address serves it.</summary>
    public async Task<PaperFile> PaperAsync(int id) => await Papers.PaperAsync(id) ?? throw new InvalidOperationException("There is no paper.");

    public async Task<QuoteView> OpenAsync()
    {
        var opened = await Book.OpenAsync(1, "maker");
        opened.Ok.ShouldBeTrue(opened.Words);
        return (await Book.ViewAsync(opened.Id))!;
    }

    public static QuoteForm FormOf(QuoteView view)
    {
        var form = view.Quote.Form;
        (form.Id, form.Version, form.ValidUntil) = (view.Quote.Id, view.Quote.Version, view.Quote.ValidUntil);
        return form;
    }

    public async Task<QuoteView> SentAsync(string reason = "")
    {
        var draft = await OpenAsync();
        var sent = await Book.SendAsync(draft.Quote.Id, draft.Quote.Version, "maker", reason);
        sent.Ok.ShouldBeTrue(sent.Words);
        return (await Book.ViewAsync(draft.Quote.Id))!;
    }

    public async Task ChangeAsync(Action<StudioDb> change)
    {
        await using var db = Database.Open();
        change(db);
        await db.SaveChangesAsync();
    }

    public async Task<T> ReadAsync<T>(Func<StudioDb, Task<T>> read)
    {
        await using var db = Database.Open();
        return await read(db);
    }

    public void Dispose() => Database.Dispose();
}
