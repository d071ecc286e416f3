using Studio.Engine.Heat;

namespace Studio.Engine.Fit;

/// <summary>Where in its layer a thermometer was.</summary>
public enum LogPlace
{
    /// <summary>In the middle, where it becomes hottest.</summary>
    Hottest,

    /// <summary>On the middle of the surface.</summary>
    Surface,

    /// <summary>On the piece's middle line, at a height of its own.</summary>
    Height,
}

/// <summary>One reading of that thermometer.</summary>
/// <param name="AfterHours">Since the layer's pour [h].</param>
/// <param name="Celsius">[°C].</param>
public sealed record LogReading(double AfterHours, double Celsius);

/// <summary>What was observed of one layer of a real piece.</summary>
public sealed record LayerLog
{
    /// <summary>The piece as it was poured, with its room's readings; the kinetics of <see cref="SameLot"/> are put in by the fit.</summary>
    public required HeatInput Piece { get; init; }

    /// <summary>The observed layer, from 0.</summary>
    public required int Layer { get; init; }

    /// <summary>All layers of the resin lot that is fitted, from 0; the observed one among them.</summary>
    public required IReadOnlyList<int> SameLot { get; init; }

    /// <summary>In any order; faults are left out and said.</summary>
    public IReadOnlyList<LogReading> Readings { get; init; } = [];

    /// <summary>Where the thermometer was.</summary>
    public LogPlace Place { get; init; }

    /// <summary>For <see cref="LogPlace.Height"/> [mm] from the mould's lowest inner point.</summary>
    public double? HeightMm { get; init; }

    /// <summary>When the surface had gelled [h after the pour].</summary>
    public double? GelAfterHours { get; init; }

    /// <summary>When the piece first was firm enough to leave its mould [h after the pour]; leave it out where it merely waited.</summary>
    public double? DemouldAfterHours { get; init; }

    /// <summary>How far a reading and the model may lie apart for reasons of the thermometer and its place [K].</summary>
    public double ReadingSdK { get; init; } = 1.5;
}

/// <summary>A moment of the log for drawing: what was read beside what was foretold and what the refit says [°C].</summary>
/// <param name="AfterHours">Since the layer's pour [h].</param>
/// <param name="MeasuredC">As read.</param>
/// <param name="BeforeC">By the fit that the refit started from.</param>
/// <param name="Before">Its interval.</param>
/// <param name="AfterC">By the refit.</param>
/// <param name="After">Its interval.</param>
public sealed record LogMoment(double AfterHours, double MeasuredC, double BeforeC, FitInterval Before, double AfterC, FitInterval After);

/// <summary>A refit, to be accepted or declined; nothing is changed by it.</summary>
/// <param name="Fit">The resin as it would be known.</param>
/// <param name="Series">For drawing, in time's order.</param>
public sealed record LogRefit(ResinFit Fit, IReadOnlyList<LogMoment> Series);
