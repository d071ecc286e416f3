using Studio.Clock;
using Studio.Engine;
using Studio.Engine.Fit;
using Studio.Resins;

namespace Studio.Calibration;

/// <summary>Everything the log's page shows of a pour.</summary>
public sealed record LogView
{
    public required int PourId { get; init; }

    public required int PieceId { get; init; }

    public required string PieceName { get; init; }

    public required int LayerNumber { get; init; }

    public required string LayerName { get; init; }

    public required double FromMm { get; init; }

    public required double ToMm { get; init; }

    public required int ResinId { get; init; }

    public required string ResinName { get; init; }

    public required string Lot { get; init; }

    public required DateTime PouredAt { get; init; }

    public required double? RoomC { get; init; }

    public required bool Withdrawn { get; init; }

    /// <summary>As it was made at the pour; null where there was none.</summary>
    public required PourForetold? Foretold { get; init; }

    public required LogForm Form { get; init; }

    public required IReadOnlyList<LogSensor> Sensors { get; init; }

    /// <summary>Fits that came from this log.</summary>
    public required IReadOnlyList<CureRow> Rows { get; init; }

    public required TimeZoneInfo Zone { get; init; }

    public required DateTime Now { get; init; }

    public string Units { get; init; } = "metric";

    public LogFrame Frame(bool bareHours, string unit) => new(PouredAt, RoomC, Zone, bareHours, unit);
}

/// <summary>A sensor whose readings may be taken.</summary>
/// <param name="Probe">True for one that lies in layers.</param>
public sealed record LogSensor(int Id, string Name, bool Probe);

/// <summary>Readings taken from a sensor.</summary>
public sealed record LogTaken(IReadOnlyList<LogReading> Readings, string Words);

/// <summary>A refit ready to be shown; nothing is changed by it.</summary>
public sealed record LogRefitted
{
    /// <summary>Why there is none, whole sentences; empty when there is one.</summary>
    public IReadOnlyList<string> Refused { get; init; } = [];

    public int LogId { get; init; }

    /// <summary>Version of the log that was refitted.</summary>
    public int LogVersion { get; init; }

    public LogRefit? Refit { get; init; }

    /// <summary>What it started from.</summary>
    public string StartedFrom { get; init; } = "";

    public IReadOnlyList<string> RestsOn { get; init; } = [];

    public IReadOnlyList<CureLine> Lines { get; init; } = [];

    public IReadOnlyList<LogNarrowed> Narrowed { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];

    public TimeSpan Took { get; init; }
}

/// <summary>One number of the fit before and after.</summary>
public sealed record LogNarrowed(string What, string Before, string After, string Words);

/// <summary>A pour in the list of a resin.</summary>
/// <param name="MeasuredC">Warmest reading of the log [°C]; null without a log.</param>
/// <param name="Standing">What became of the refit; empty when there was none.</param>
public sealed record LoggedPour(
    int PourId, int PieceId, string PieceName, int LayerNumber, string LayerName, string Lot, DateTime PouredAt, double DeepMm, double? RoomC, PourForetold? Foretold,
    double? MeasuredC, double? MeasuredAfterHours, double? GelAfterHours, string Standing);

/// <summary>The pours of one resin.</summary>
public sealed record LoggedPours(int ResinId, string ResinName, IReadOnlyList<LoggedPour> Pours, TimeZoneInfo Zone, DateTime Now);
