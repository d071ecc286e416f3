using Studio.Climate;
using Studio.Clock;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Custody;
using Studio.Engine.Forecast;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Bench;

/// <summary>Everything the bench shows of one piece.</summary>
public sealed record BenchView
{
    public required int PieceId { get; init; }

    public required string PieceName { get; init; }

    public required int CommissionId { get; init; }

    public required string CommissionNumber { get; init; }

    public required string Remembers { get; init; }

    public required string Stage { get; init; }

    public required string Stands { get; init; }

    public required MouldSpec Mould { get; init; }

    public required string MouldName { get; init; }

    public FormerSpec? Former { get; init; }

    /// <summary>The pot it is to cure in; null for none.</summary>
    public BenchPot? Pot { get; init; }

    /// <summary>Its photographs where they stand.</summary>
    public IReadOnlyList<Drawing.DrawnFilm> Photographs { get; init; } = [];

    public required IReadOnlyList<BenchLayer> Layers { get; init; }

    /// <summary>Every pour with its corrections, taken-back ones too, oldest first.</summary>
    public required IReadOnlyList<BenchPour> Pours { get; init; }

    public required ClockInput Clock { get; init; }

    public required PieceTimes Times { get; init; }

    /// <summary>The pour that each layer not poured yet would be, were it poured now; by the layer's order.</summary>
    public IReadOnlyDictionary<int, ClockPour> IfPoured { get; init; } = new Dictionary<int, ClockPour>();

    public RoomNow? Room { get; init; }

    /// <summary>The newest reading with a humidity that still says something; null where there is none.</summary>
    public RoomNow? Damp { get; init; }

    public required TimeZoneInfo Zone { get; init; }

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    public string Units { get; init; } = "metric";

    /// <summary>The studio's currency, ISO 4217.</summary>
    public string Currency { get; init; } = "GBP";

    /// <summary>What lies in it of the family's things, by the log.</summary>
    public IReadOnlyList<string> Inside { get; init; } = [];

    /// <summary>Why it failed, in whole sentences; empty for one that did not.</summary>
    public string Failed { get; init; } = "";

    /// <summary>When it was read [UTC].</summary>
    public required DateTime Now { get; init; }

    /// <summary>Why the design cannot be worked out; empty when it can.</summary>
    public IReadOnlyList<InputError> PlanErrors { get; init; } = [];

    /// <summary>The lowest layer not yet poured; null when all are.</summary>
    public BenchLayer? ToPour => Layers.FirstOrDefault(l => !l.Poured);

    /// <summary>What the clock would say of a layer that is not poured yet, were it poured now in the room as it is; null for one that is poured. Worked out anew by each call.</summary>
    public LayerTimes? IfPouredNow(int order) =>
        IfPoured.TryGetValue(order, out var pour) ? PieceClock.Of(Clock with { Pours = [pour with { StartedAt = Now }] }, Now, Zone).Layers[0] : null;
}

/// <summary>One layer at the bench: its plan, its resin, and what to lay ready.</summary>
public sealed record BenchLayer
{
    public required int LayerId { get; init; }

    public required int Order { get; init; }

    public required string Name { get; init; }

    public required string Colour { get; init; }

    public required BenchResin Resin { get; init; }

    /// <summary>Computed heights, grams and batches; null when the design has errors.</summary>
    public LayerResult? Plan { get; init; }

    public required bool Poured { get; init; }

    /// <summary>Everything that is in its height or begins in it.</summary>
    public required IReadOnlyList<BenchThing> Things { get; init; }

    /// <summary>The keepsakes that go into it, each once.</summary>
    public IReadOnlyList<BenchKeepsake> Keepsakes { get; init; } = [];

    /// <summary>What to heed before this layer, the gravest first.</summary>
    public required IReadOnlyList<Finding> Cautions { get; init; }

    /// <summary>The lowest of what must not be reached anywhere in it, its resin's own among them; what holds at the mould's face alone is no figure for a hand or a thermometer in it.</summary>
    public HeatLimit? Limit { get; init; }

    /// <summary>How level the mould has to stand for it; null when the design has errors.</summary>
    public BenchTilt? Tilt { get; init; }

    /// <summary>For the drawing.</summary>
    public required bool HasScatter { get; init; }
}

/// <summary>The layer's resin as the bench needs it.</summary>
public sealed record BenchResin(int Id, string Name, bool Typical, string Mix, double? PotLifeMinutes, double? PotLifeMassG, double? MinC, double? MaxC, double? MaxHumidityPercent, string SheetNote, string LastLot, CureTimes? Printed);

/// <summary>Something that goes in with the resin.</summary>
/// <param name="What">"former", "film", "addition", "scatter" or "place".</param>
/// <param name="Amount">"2.1 g", "set by hand".</param>
/// <param name="Where">Where it lies now; empty when it is bought.</param>
/// <param name="EntryNumber">A keepsake's number; empty when it is bought.</param>
/// <param name="Need">What it needs before resin touches it, with the rule's source.</param>
public sealed record BenchThing(string What, string Name, string Amount, string Where = "", string EntryNumber = "", int? KeepsakeId = null, Finding? Need = null, double? Grams = null)
{
    /// <summary>A copy of the keepsake, and nothing of the thing itself.</summary>
    public bool Copy { get; init; }

    /// <summary>What to do with it in this layer, in whole sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The picture that is printed on it, in the photograph store.</summary>
    public string? PictureHash { get; init; }

    /// <summary>True where a film begins in this layer.</summary>
    public bool Begins { get; init; }
}

/// <summary>A keepsake of a layer, for what really goes in.</summary>
/// <param name="Held">What is here.</param>
/// <param name="Offer">What the family permits of it now; grams null where they named no weight.</param>
/// <param name="MayBeAll">Whether all that is here may go in.</param>
/// <param name="Permission">The family's word.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Planned">What the design says [g]; null where it says nothing.</param>
public sealed record BenchKeepsake(int KeepsakeId, bool Copy, string EntryNumber, string Description, CustodyAmount Held, CustodyAmount Offer, bool MayBeAll, string Permission, string Place, double? Planned)
{
    /// <summary>What it is called in the row.</summary>
    public string Title => $"{(Copy ? "The copy of " : "")}{EntryNumber}, {Description}";
}

/// <summary>One pour with its trace.</summary>
public sealed record BenchPour
{
    public required int Id { get; init; }

    public required int Version { get; init; }

    public required int LayerId { get; init; }

    public required int LayerOrder { get; init; }

    public required string LayerName { get; init; }

    public required string Colour { get; init; }

    public required string ResinName { get; init; }

    public required string Lot { get; init; }

    public required double FromMm { get; init; }

    public required double ToMm { get; init; }

    public required double PlannedAG { get; init; }

    public required double PlannedBG { get; init; }

    public required double ActualAG { get; init; }

    public required double ActualBG { get; init; }

    public required double? RoomC { get; init; }

    public required DateTime StartedAt { get; init; }

    public required string By { get; init; }

    public required bool Withdrawn { get; init; }

    /// <summary>What was foretold of its heat when it was poured; null where it could not be.</summary>
    public PourForetold? Foretold { get; init; }

    public required IReadOnlyList<PourChange> Changes { get; init; }

    /// <summary>How far B is off the sheet's ratio [%].</summary>
    public double? OffPercent => Weighing.OffPercent(ActualAG, ActualBG, PlannedAG, PlannedBG);
}

/// <summary>One line of a pour's trace.</summary>
/// <param name="Passed">True for a stop that was passed with a reason; then <paramref name="Was"/> is the stop's sentence.</param>
public sealed record PourChange(DateTime At, string By, string Field, string Was, string Now, string Why, bool Passed);
