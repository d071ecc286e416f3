using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Tests.Pieces;

/// <summary>An invented commission with a mould, two resins and keepsakes of every permission.</summary>
internal static class PieceSamples
{
    public static PieceBook Book(StudioDatabase database) => new(database.Factory, database.Clock, database.News, new PouredLayers(database.Clock));

    public static Mould Pyramid(double baseMm = 150, double heightMm = 150) =>
        new() { Name = "Pyramid", Shape = "pyramid", Dimensions = new Dictionary<string, double> { ["baseMm"] = baseMm, ["heightMm"] = heightMm } };

    public static Resin Casting() => new() { Name = "Casting", Class = "casting", DensityGPerMl = 1.1, PartsA = 100, PartsB = 44, MaxPourMm = 20, PotLifeMinutes = 45 };

    public static Resin Deep() => new() { Name = "Deep", Class = "deepPour", DensityGPerMl = 1.1, PartsA = 100, PartsB = 43, MaxPourMm = 50, PotLifeMinutes = 300 };

    public static Keepsake Keepsake(int id, string permits, string kind = "brass", int count = 1, string custody = "here") =>
        new() { Id = id, EntryNumber = $"KS-26-0000{id}-X", Description = "Ferry whistle", Kind = kind, Permits = permits, Count = count, Custody = custody, SubmitKey = "k" + id, MassG = 17 };

    /// <summary>A commission (1), mould (1), resins (1 casting, 2 deep) and keepsakes in a database.</summary>
    public static async Task<int> CommissionAsync(StudioDatabase database, params Keepsake[] keepsakes)
    {
        await using var db = database.Open();
        var commission = new Commission { Number = "26-014", Title = "Two pyramids", Remembers = "A ferry pilot", Customer = new Customer { Name = "Invented" } };
        db.AddRange(commission, Pyramid(), Casting(), Deep());
        await db.SaveChangesAsync();
        foreach (var keepsake in keepsakes)
        {
            keepsake.CommissionId = commission.Id;
            db.Add(keepsake);
        }

        await db.SaveChangesAsync();
        return commission.Id;
    }

    /// <summary>A piece of three layers, one measured each way, loose from any database.</summary>
    public static Piece Piece(params LayerPlaced[] placed)
    {
        var (casting, deep) = (Casting(), Deep());
        (casting.Id, deep.Id) = (1, 2);
        var mould = Pyramid();
        mould.Id = 1;
        return new Piece
        {
            Id = 7,
            Name = "Whistle pyramid",
            MouldId = 1,
            Mould = mould,
            WastePercent = 3,
            WastePerBatchG = 5,
            Layers =
            [
                new PieceLayer { Id = 1, Order = 0, Name = "Blue", ResinId = 1, Resin = casting, ToMm = 40, Additions = [new LayerAddition(null, "Blue pigment", 2, 1.5)] },
                new PieceLayer { Id = 2, Order = 1, Name = "Clear", ResinId = 2, Resin = deep, ThicknessMm = 60, Placed = [.. placed], Scatter = [new LayerScatter(null, "Quartz", 30, 2.65, null, null)] },
                new PieceLayer { Id = 3, Order = 2, Name = "Top", ResinId = 1, Resin = casting, ResinMl = 200 },
            ],
        };
    }

    public static PieceDesk Desk(Piece piece, KeepsakeShelf? shelf = null, params MouldLayer[] poured) => new()
    {
        Piece = piece,
        ReadAs = DesignText.Write(piece),
        CommissionNumber = "26-014",
        CommissionTitle = "",
        Remembers = "",
        Moulds = [piece.Mould!],
        Resins = [.. piece.Layers.Select(l => l.Resin!).DistinctBy(r => r.Id)],
        Materials = [],
        Keepsakes = shelf ?? KeepsakeShelf.Empty,
        Poured = poured,
    };

    public static Task<List<CommissionEvent>> StoryAsync(StudioDb db) => db.Set<CommissionEvent>().AsNoTracking().ToListAsync();
}
