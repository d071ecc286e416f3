using Studio.Engine.Cure;

namespace Studio.Engine.Time;

/// <summary>Input of <c>calc time</c>; names as in docs/calculations.md. Every moment is one of the wall clock, in whole minutes.</summary>
public sealed record TimeInput
{
    /// <summary>What abrading a closed surface takes where nobody says otherwise [min]; common practice, no source.</summary>
    public const double UsualAbradeMinutes = 15;

    /// <summary>From when hands can work; nothing planned lies before it.</summary>
    public required DateTime Start { get; init; }

    /// <summary>When hands work.</summary>
    public required WorkingHours Work { get; init; }

    /// <summary>What must be done before a pour; all begin at the start, side by side.</summary>
    public IReadOnlyList<PlannedPreparation> Preparation { get; init; } = [];

    /// <summary>By the id that layers name.</summary>
    public required IReadOnlyDictionary<string, TimeResin> Resins { get; init; }

    /// <summary>The room [°C], hours counted from the start; empty where nobody knows: then no time of the cure is.</summary>
    public required IReadOnlyList<RoomReading> Room { get; init; }

    /// <summary>From the lowest up.</summary>
    public required IReadOnlyList<PlannedPour> Layers { get; init; }

    /// <summary>Taking the piece out of its mould.</summary>
    public required PlannedDemould Demould { get; init; }

    /// <summary>Work by hand after it, in order.</summary>
    public IReadOnlyList<PlannedWork> Finishing { get; init; } = [];

    /// <summary>Added to a pour whose window has closed [min].</summary>
    public double AbradeMinutes { get; init; } = UsualAbradeMinutes;

    /// <summary>Calendar days on the way to the family; 0 where it is collected.</summary>
    public int DeliveryDays { get; init; }

    /// <summary>Calendar days that the studio keeps in hand before a promise.</summary>
    public int ReserveDays { get; init; }

    /// <summary>The day by which the family needs it.</summary>
    public DateOnly? NeededBy { get; init; }
}

/// <summary>When hands work on the piece.</summary>
/// <param name="Days">Working days of the week; at least one.</param>
/// <param name="From">From this time of day.</param>
/// <param name="Until">Until this time of day, at most 24 h.</param>
/// <param name="MinutesPerDay">Hands' time on this piece per working day [min]; at most from one to the other.</param>
public sealed record WorkingHours(IReadOnlyList<DayOfWeek> Days, TimeSpan From, TimeSpan Until, int MinutesPerDay)
{
    /// <summary>Days on which nobody works.</summary>
    public IReadOnlyList<DateOnly> DaysOff { get; init; } = [];
}

/// <summary>Something to be done, and waited for, before a pour.</summary>
/// <param name="Name">Such as <c>dry the flowers</c>.</param>
/// <param name="Days">Waiting after the hands' part [days of 24 h].</param>
/// <param name="Minutes">Of hands [min].</param>
/// <param name="ForLayer">The lowest layer that waits for it, counted from 1; null: every layer.</param>
/// <param name="DoneAt">When it was ready; a fact.</param>
public sealed record PlannedPreparation(string Name, double Days, double Minutes = 0, int? ForLayer = null, DateTime? DoneAt = null);

/// <summary>A layer to be poured, or that was.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Resin">Its resin's id.</param>
/// <param name="Minutes">Of hands: weighing, stirring, pouring [min].</param>
/// <param name="WaitHours">Planned wait after the pour below [h]; never less than its window asks for.</param>
/// <param name="PouredAt">When it was poured; a fact.</param>
public sealed record PlannedPour(string Name, string Resin, double Minutes, double? WaitHours = null, DateTime? PouredAt = null);

/// <summary>Taking the piece out of its mould.</summary>
/// <param name="Minutes">Of hands [min].</param>
/// <param name="At">When it came out; a fact.</param>
public sealed record PlannedDemould(double Minutes, DateTime? At = null);

/// <summary>Work by hand on the casting.</summary>
/// <param name="Name">Such as <c>sand and polish</c>.</param>
/// <param name="Minutes">Of hands [min]; may be spread over days.</param>
/// <param name="AfterFullCure">False where it may be done as soon as the piece is out of its mould.</param>
/// <param name="Done">True when it is done, at the start at the latest.</param>
/// <param name="DoneAt">When it was done; a fact.</param>
public sealed record PlannedWork(string Name, double Minutes, bool AfterFullCure = true, bool Done = false, DateTime? DoneAt = null);

/// <summary>A resin as the cure clock takes it.</summary>
/// <param name="Sheet">Its printed times; no rows where there are none.</param>
/// <param name="Kinetics">How it cures, where known.</param>
public sealed record TimeResin(CureSheet Sheet, Kinetics? Kinetics = null)
{
    /// <summary>Resins that it may be, by a fit; the gel waits for the slow ones. Null where nothing is fitted.</summary>
    public LikelyCure? Likely { get; init; }

    /// <summary>What a run of its heat said of the gel of the one layer that was poured of it; null where none is kept.</summary>
    public HeatGel? Heat { get; init; }

    /// <summary>A resin of <c>calc cure</c>.</summary>
    public static TimeResin Of(CureResin resin) => new(resin.DataSheet?.Times ?? new CureSheet { Times = [] }, resin.Kinetics);
}
