using FluentValidation;
using Studio.Engine.Fit;

namespace Studio.Calibration;

/// <summary>A thermometer's log as it is being typed.</summary>
public sealed class LogForm
{
    public int Id { get; set; }

    public int Version { get; set; }

    public int PourId { get; set; }

    public LogPlace Place { get; set; }

    /// <summary>For a height of its own [mm].</summary>
    public double? HeightMm { get; set; }

    public List<LogReading> Readings { get; set; } = [];

    public int? SensorId { get; set; }

    /// <summary>[UTC].</summary>
    public DateTime? GelAt { get; set; }

    /// <summary>[UTC].</summary>
    public DateTime? FirmAt { get; set; }

    public string Notes { get; set; } = "";

    /// <summary>True when there is nothing to keep.</summary>
    public bool Empty => Readings.Count == 0 && GelAt is null && FirmAt is null && Notes.Length == 0;

    /// <summary>The form filled from what is stored.</summary>
    public static LogForm Of(CuringLog log) => new()
    {
        Id = log.Id,
        Version = log.Version,
        PourId = log.PourId,
        Place = log.Place,
        HeightMm = log.HeightMm,
        Readings = [.. log.Readings],
        SensorId = log.SensorId,
        GelAt = log.GelAt,
        FirmAt = log.FirmAt,
        Notes = log.Notes,
    };

    /// <summary>Lays further readings over those that are there; the later word on a moment counts.</summary>
    public void Take(IReadOnlyList<LogReading> more) =>
        Readings = [.. Readings.Concat(more).GroupBy(r => r.AfterHours).Select(g => g.Last()).OrderBy(r => r.AfterHours)];
}

/// <summary>What keeps a log from being kept.</summary>
public sealed class LogValidator : AbstractValidator<LogForm>
{
    public LogValidator()
    {
        RuleFor(l => l.HeightMm).Must((l, mm) => l.Place is not LogPlace.Height || mm is not null).WithMessage("At what height was it? Measure from the lowest inner point of the mould.")
            .Must((l, mm) => l.Place is not LogPlace.Height || mm is null or (>= 0 and <= 2000)).WithMessage("Must lie between 0 and 2000 mm.");
        RuleFor(l => l.Notes).MaximumLength(1000).WithMessage("Keep the note under 1000 letters.");
        RuleFor(l => l.FirmAt).Must((l, at) => at is null || l.GelAt is null || at >= l.GelAt).WithMessage("It cannot be firm before its surface has gelled.");
    }
}
