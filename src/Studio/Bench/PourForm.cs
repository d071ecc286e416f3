using Studio.Clock;
using Studio.Engine;
using Studio.Heat;

namespace Studio.Bench;

/// <summary>What the bench sends when a layer is poured; kept as a draft on the tablet until then.</summary>
public sealed class PourForm
{
    public int PieceId { get; set; }

    public int LayerId { get; set; }

    /// <summary>Made before the first send, so that a double tap adds nothing.</summary>
    public string SubmitKey { get; set; } = Guid.NewGuid().ToString("N");

    public List<ScaleReading> Tally { get; set; } = [];

    public ScaleMode Mode { get; set; }

    /// <summary>When it was poured [UTC]; null means now.</summary>
    public DateTime? StartedAt { get; set; }

    public double? RoomC { get; set; }

    public string Lot { get; set; } = "";

    /// <summary>Why it is poured although a finding says stop.</summary>
    public string Why { get; set; } = "";

    /// <summary>What really went in of each keepsake; null until the form has met the layer.</summary>
    public List<SetRow>? Set { get; set; }

    /// <summary>Which step the tablet shows, so that a reload comes back to it.</summary>
    public int Step { get; set; } = 1;

    public double ActualAG => Weighing.SumG(Tally, "A");

    public double ActualBG => Weighing.SumG(Tally, "B");

    /// <summary>What it asks about its heat at this moment.</summary>
    public HeatAsk Asked(PourHeatBook heats)
    {
        ArgumentNullException.ThrowIfNull(heats);
        return heats.Asked(PieceId, LayerId, StartedAt, RoomC, Lot);
    }
}

/// <summary>What really went in of one keepsake, as it is typed or tapped.</summary>
public sealed class SetRow
{
    public int KeepsakeId { get; set; }

    /// <summary>A copy of it.</summary>
    public bool Copy { get; set; }

    /// <summary>Nothing of it went in after all.</summary>
    public bool NotIn { get; set; }

    /// <summary>[pieces].</summary>
    public double? Count { get; set; }

    /// <summary>[g].</summary>
    public double? MassG { get; set; }

    /// <summary>A part of one thing, said to be unweighed.</summary>
    public bool Unweighed { get; set; }

    /// <summary>Where the rest lies.</summary>
    public string RestPlace { get; set; } = "";
}

/// <summary>How keeping a pour ended.</summary>
/// <param name="Ok">True when it is on disk.</param>
/// <param name="Words">Why not; empty when it is.</param>
/// <param name="Stops">What must be answered with a reason before it is kept.</param>
/// <param name="Id">The pour.</param>
public sealed record PourSaved(bool Ok, string Words, IReadOnlyList<Finding> Stops, int Id = 0)
{
    /// <summary>Kept, and still worth a look: whole sentences.</summary>
    public IReadOnlyList<string> Notices { get; init; } = [];
}

/// <summary>An entry set right: the pour as it should read, and why.</summary>
public sealed class CorrectionForm
{
    public int PourId { get; set; }

    public int Version { get; set; }

    public double? ActualAG { get; set; }

    public double? ActualBG { get; set; }

    public double? RoomC { get; set; }

    public DateTime? StartedAt { get; set; }

    public string Lot { get; set; } = "";

    public string Why { get; set; } = "";
}
