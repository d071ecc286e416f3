using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>A piece as the reckoning of its time needs it, no more.</summary>
internal sealed record TimePiece
{
    public int Id { get; init; }

    public int CommissionId { get; init; }

    public string Name { get; init; } = "";

    /// <summary>A key of <see cref="Making"/>.</summary>
    public string Stage { get; init; } = Making.Drawn;

    /// <summary>Where it cures; empty for the casting room.</summary>
    public string StandsIn { get; init; } = "";

    public DateTime? DemouldedAt { get; init; }

    public DateTime? FinishedAt { get; init; }

    public IReadOnlyList<PieceTask> Tasks { get; init; } = [];

    public DateOnly? NeededBy { get; init; }

    /// <summary>The day of the price that they agreed to; it counts before the day they asked for.</summary>
    public DateOnly? PromisedOn { get; init; }

    /// <summary>True where it is sent to the family.</summary>
    public bool Delivered { get; init; }

    /// <summary>The design, in pouring order.</summary>
    public IReadOnlyList<TimeDesignLayer> Layers { get; init; } = [];

    /// <summary>What was poured and not taken back.</summary>
    public IReadOnlyList<TimePour> Pours { get; init; } = [];
}

/// <summary>A layer of the design.</summary>
/// <param name="Order">From 0.</param>
/// <param name="WaitHours">Planned wait after the pour below [h].</param>
/// <param name="Placed">What is set into it by hand.</param>
internal sealed record TimeDesignLayer(int PieceId, int Order, string Name, int ResinId, double? WaitHours, IReadOnlyList<LayerPlaced> Placed);

/// <summary>A layer that was poured, with the data sheet as it stood then.</summary>
internal sealed record TimePour(int Id, int PieceId, int LayerOrder, string LayerName, DateTime StartedAt, CureSheet Sheet, Kinetics? Kinetics, int ResinId, string Lot)
{
    /// <summary>Resins that its lot may be; null where nothing is fitted.</summary>
    public LikelyCure? Likely { get; init; }

    /// <summary>What was foretold of its heat at the pour.</summary>
    public PourForetold? Foretold { get; init; }

    /// <summary>What was foretold of its gel at the pour; null where it could not be.</summary>
    public HeatGel? Heat { get; init; }
}

/// <summary>Reads pieces for the reckoning of their time.</summary>
internal static class TimePieces
{
    /// <summary>Three narrow queries, however many pieces.</summary>
    internal static async Task<List<TimePiece>> ReadAsync(StudioDb db, IQueryable<Piece> which)
    {
        var pieces = await which.Select(p => new TimePiece
        {
            Id = p.Id,
            CommissionId = p.CommissionId,
            Name = p.Name,
            Stage = p.Stage,
            StandsIn = p.StandsIn,
            DemouldedAt = p.DemouldedAt,
            FinishedAt = p.FinishedAt,
            Tasks = p.Tasks,
            NeededBy = p.Commission!.NeededBy,
            Delivered = p.Commission.Handover == Handovers.Delivery,
        }).ToListAsync();
        var ids = pieces.ConvertAll(p => p.Id);
        var layers = (await db.Set<PieceLayer>().Where(l => ids.Contains(l.PieceId)).OrderBy(l => l.Order)
            .Select(l => new TimeDesignLayer(l.PieceId, l.Order, l.Name, l.ResinId, l.WaitHours, l.Placed)).ToListAsync()).ToLookup(l => l.PieceId);
        var pours = (await db.Set<Pour>().Where(p => ids.Contains(p.PieceId) && !p.Withdrawn).OrderBy(p => p.LayerOrder)
            .Select(p => new TimePour(p.Id, p.PieceId, p.LayerOrder, p.LayerName, p.StartedAt, p.Sheet, p.Kinetics, p.ResinId, p.ResinLot) { Foretold = p.Foretold }).ToListAsync()).ToLookup(p => p.PieceId);
        var cures = await LotCures.OfAsync(db, pours.SelectMany(g => g).Select(p => (p.ResinId, p.Lot)));
        return pieces.ConvertAll(p => p with { Layers = [.. layers[p.Id]], Pours = [.. pours[p.Id].Select(o => o with { Likely = cures.Of(o.ResinId, o.Lot), Heat = LotCures.Heat(o.Foretold) })] });
    }
}
