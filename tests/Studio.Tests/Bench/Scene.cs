using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Tests.Bench;

/// <summary>Invented commissions and pieces put straight into a database.</summary>
public sealed class Scene(IDbContextFactory<StudioDb> factory, TimeProvider clock)
{
    private int made;

    public DateTime Now => clock.GetUtcNow().UtcDateTime;

    /// <summary>Hours after pouring at 23 °C; common practice, no source: next pour after about 6 h.</summary>
    public static CureSheet Casting { get; } = Sheet(gel: 2, from: 6, until: 24, demould: 24, full: 72);

    /// <summary>Common practice, no source: next pour after about two days.</summary>
    public static CureSheet DeepPour { get; } = Sheet(gel: 18, from: 48, until: 96, demould: 72, full: 168);

    public static CureSheet Sheet(double? gel = null, double? from = null, double? until = null, double? demould = null, double? full = null, double atC = 23) => new()
    {
        Times = [new CureTimes { AtCelsius = atC, GelHours = gel, NextPourFromHours = from, NextPourUntilHours = until, DemouldHours = demould, FullCureHours = full }],
        MinC = 15,
        MaxC = 30,
    };

    /// <summary>A commission with one piece of three layers: clear base, heather band, clear top.</summary>
    public async Task<int> PieceAsync(string name = "Heather pyramid", string remembers = "Agnes", string stands = Standing.Agreed, string stage = Making.Drawn,
        bool deposit = true, int keepsakes = 1, double sizeMm = 150, string shape = "pyramid", string[]? colours = null, CureSheet? sheet = null, int layers = 3, DateOnly? neededBy = null)
    {
        await using var db = await factory.CreateDbContextAsync();
        var n = Interlocked.Increment(ref made);
        var commission = new Commission { Number = FormattableString.Invariant($"26-{n:000}"), Title = name, Remembers = remembers, Stands = stands, CreatedAt = Now, NeededBy = neededBy, Customer = new Customer { Name = "Invented Customer", CreatedAt = Now } };
        var piece = new Piece { Name = name, Commission = commission, Stage = stage, CreatedAt = Now, Mould = Mould(shape, sizeMm), Layers = Layers(Resin(sheet ?? Casting), sizeMm, layers, colours ?? ["#E9DFC7", "#7A5C99", "#CFE0DC"]) };
        db.Add(piece);
        await db.SaveChangesAsync();
        for (var i = 0; i < keepsakes; i++)
        {
            var keepsake = new Keepsake { CommissionId = commission.Id, EntryNumber = FormattableString.Invariant($"KS-26-{n:000}{i:00}-T"), Kind = "brass", Description = "brass button", Permits = Permissions.EmbedAll, ReceivedAt = Now, SubmitKey = Guid.NewGuid().ToString("N") };
            db.Add(keepsake);
            await db.SaveChangesAsync();
            var received = new KeepsakeEvent { KeepsakeId = keepsake.Id, At = Now, By = "Test maker", Kind = CustodyKind.Received, Place = "Keepsake drawer 1", Count = 1, Words = "by hand" };
            db.Add(received);
            CustodyLog.Follow(keepsake, [received]);
        }

        if (deposit)
        {
            db.Add(new Payment { CommissionId = commission.Id, Amount = 120, PaidAt = Now, SubmitKey = Guid.NewGuid().ToString("N") });
        }

        await db.SaveChangesAsync();
        return piece.Id;
    }

    /// <summary>A pour straight into the database, by the plan.</summary>
    public async Task PourAsync(int pieceId, int order, DateTime startedAt, CureSheet? sheet = null)
    {
        await using var db = await factory.CreateDbContextAsync();
        var piece = await db.Set<Piece>().Include(p => p.Layers).ThenInclude(l => l.Resin).Include(p => p.Commission).SingleAsync(p => p.Id == pieceId);
        var layer = piece.Layers.Single(l => l.Order == order);
        var from = order == 0 ? 0 : piece.Layers.Single(l => l.Order == order - 1).ToMm!.Value;
        db.Add(new Pour
        {
            PieceId = pieceId,
            LayerId = layer.Id,
            LayerOrder = order,
            LayerName = layer.Name,
            ResinId = layer.ResinId,
            ResinName = layer.Resin!.Name,
            Colour = layer.Colour,
            FromMm = from,
            ToMm = layer.ToMm!.Value,
            PlannedAG = 100,
            PlannedBG = 50,
            ActualAG = 100,
            ActualBG = 50,
            StartedAt = startedAt,
            By = "Test maker",
            Sheet = sheet ?? layer.Resin.Sheet,
            SubmitKey = Guid.NewGuid().ToString("N"),
        });
        piece.Stage = Making.Casting;
        piece.Commission!.Stands = Standing.Making;
        await db.SaveChangesAsync();
    }

    public async Task ReadingAsync(double celsius, DateTime? at = null)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.Add(new Reading { At = at ?? Now, Celsius = celsius, Place = RoomBook.CastingRoom, By = "Test maker" });
        await db.SaveChangesAsync();
    }

    /// <summary>Something that happens to a keepsake meanwhile.</summary>
    public async Task NoteAsync(int keepsakeId, string kind = CustodyKind.Note)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.Add(new KeepsakeEvent { KeepsakeId = keepsakeId, At = Now, By = "Test maker", Kind = kind, Words = "looked at" });
        await db.SaveChangesAsync();
    }

    public async Task<Piece> FindAsync(int pieceId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Piece>().AsNoTracking().Include(p => p.Commission).Include(p => p.Layers).SingleAsync(p => p.Id == pieceId);
    }

    public async Task<List<T>> AllAsync<T>()
        where T : class
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<T>().AsNoTracking().ToListAsync();
    }

    public async Task ChangeAsync<T>(Func<T, bool> which, Action<T> change)
        where T : class
    {
        await using var db = await factory.CreateDbContextAsync();
        foreach (var found in (await db.Set<T>().ToListAsync()).Where(which))
        {
            change(found);
        }

        await db.SaveChangesAsync();
    }

    // 2 : 1 by weight, so that half of A is B; its sheet says nothing from which its heat could be foretold, which has tests of its own
    private static Resin Resin(CureSheet sheet) => new()
    {
        Name = "Test casting resin",
        DensityGPerMl = 1.1,
        PartsA = 2,
        PartsB = 1,
        PotLifeAtC = 5,
        MaxPourMm = 200,
        MaxBatchG = 20_000,
        Times = [.. sheet.Times],
        FactorPer10C = sheet.FactorPer10C,
        MinC = sheet.MinC,
        MaxC = sheet.MaxC,
    };

    private static Mould Mould(string shape, double sizeMm) => new()
    {
        Name = FormattableString.Invariant($"{shape} {sizeMm:0}"),
        Shape = shape,
        Dimensions = shape switch
        {
            "pyramid" => new(StringComparer.Ordinal) { ["baseMm"] = sizeMm, ["heightMm"] = sizeMm },
            "cuboid" => new(StringComparer.Ordinal) { ["widthMm"] = sizeMm, ["depthMm"] = sizeMm * 0.7, ["heightMm"] = sizeMm },
            _ => throw new ArgumentOutOfRangeException(nameof(shape)),
        },
    };

    private static List<PieceLayer> Layers(Resin resin, double heightMm, int count, string[] colours)
    {
        string[] names = ["clear base", "heather band", "clear top", "backing"];
        return [.. Enumerable.Range(0, count).Select(i => new PieceLayer { Order = i, Name = names[i], Resin = resin, ToMm = heightMm * (i + 1) / (count + 0.5), Colour = colours[i % colours.Length] })];
    }
}
