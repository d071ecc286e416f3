namespace Studio.Engine.Cure;

/// <summary>A point of the cure's curve.</summary>
/// <param name="Hours">On the room's scale [h].</param>
/// <param name="Celsius">The room [°C].</param>
/// <param name="Conversion">Share of the reaction done [ratio].</param>
/// <param name="GlassTransitionC">Glass transition at that conversion [°C].</param>
public sealed record CurePoint(double Hours, double Celsius, double Conversion, double GlassTransitionC);

/// <summary>When an aim is reached [h on the room's scale], or a whole sentence that says why it is not.</summary>
/// <param name="AtHours">Never early; null with a reason.</param>
/// <param name="Reason">Why there is no time.</param>
/// <param name="StopsShort">True where the room's cold, or a resin too soft for the room, keeps it from ever getting there.</param>
public sealed record KineticTime(double? AtHours, string? Reason = null, bool StopsShort = false);

/// <summary>
/// The clock of one layer from its resin's kinetics: conversion integrated over the room's readings (the layer taken to be as warm as the
/// room, which is late for a layer that heats itself), each milestone at the conversion and glass transition of its <see cref="CureAims"/>.
/// </summary>
/// <remarks>Not safe to share between threads: it integrates on as it is asked.</remarks>
public sealed class KineticClock
{
    /// <summary>A milestone that takes longer than this after the pour and the last reading is reported as not reached [h].</summary>
    public const double HorizonHours = 90 * 24;

    private readonly Kinetics kinetics;
    private readonly CureSheet sheet;
    private readonly RoomCurve room;
    private readonly ConversionPath path;
    private readonly double latestHours;

    /// <summary>Sets the clock for a layer.</summary>
    /// <param name="kinetics">How its resin cures.</param>
    /// <param name="sheet">Its printed times; no rows where there are none.</param>
    /// <param name="room">At least one usable reading.</param>
    /// <param name="pouredAtHours">When it was poured [h] on the room's scale.</param>
    /// <exception cref="ArgumentException">The room has no usable reading, or a figure of the kinetics is out of range.</exception>
    public KineticClock(Kinetics kinetics, CureSheet sheet, RoomLog room, double pouredAtHours)
        : this(kinetics, sheet, room.Curve ?? throw new ArgumentException("The room has no usable reading.", nameof(room)), pouredAtHours)
    {
    }

    internal KineticClock(Kinetics kinetics, CureSheet sheet, RoomCurve room, double pouredAtHours)
    {
        KineticsCheck.Require(kinetics);
        (this.kinetics, this.sheet, this.room, PouredAtHours) = (kinetics, sheet, room, pouredAtHours);
        path = new(kinetics, room, pouredAtHours);
        Aims = CureAims.Of(kinetics, sheet);
        latestHours = Math.Max(pouredAtHours, room.LastHours) + HorizonHours;
        Gel = Reach(Aims.Gel, "gel");
        Demould = Reach(Aims.Demould, "demould");
        FullCure = Reach(Aims.Full, "full cure");
        NextPourUntil = Earlier(Closes(Aims.Close), Aims.CloseBySheet is { } aim ? Closes(aim) : null);
    }

    /// <summary>When [h].</summary>
    public double PouredAtHours { get; }

    /// <summary>What each milestone takes.</summary>
    public CureAims Aims { get; }

    /// <summary>No longer flows; the next-pour window opens.</summary>
    public KineticTime Gel { get; }

    /// <summary>The next-pour window closes; may be before gel in a cold room.</summary>
    public KineticTime NextPourUntil { get; }

    /// <summary>May leave its mould.</summary>
    public KineticTime Demould { get; }

    /// <summary>Fully cured.</summary>
    public KineticTime FullCure { get; }

    /// <summary>Conversion at a time [h on the room's scale]; 0 before the pour.</summary>
    public double ConversionAt(double hours) => path.ConversionAt(hours);

    /// <summary>State at a time [h on the room's scale].</summary>
    public CurePoint At(double hours)
    {
        var done = ConversionAt(hours);
        return new(hours, room.CelsiusAt(hours), done, kinetics.GlassC(done));
    }

    /// <summary>The curve in even steps from the pour to a time; empty when that is not after the pour.</summary>
    /// <param name="untilHours">End [h], finite.</param>
    /// <param name="points">How many, both ends counted; at least 2.</param>
    public IReadOnlyList<CurePoint> Curve(double untilHours, int points = 121) => untilHours <= PouredAtHours
        ? []
        : [.. Enumerable.Range(0, points).Select(i => At(i == points - 1 ? untilHours : PouredAtHours + ((untilHours - PouredAtHours) * i / (points - 1))))];

    private static KineticTime Earlier(KineticTime one, KineticTime? other) =>
        other?.AtHours is { } hours && !(one.AtHours <= hours) ? other : one;

    private KineticTime Reach(CureAim aim, string what) => path.FirstAt(aim.Conversion, aim.AboveRoomK, latestHours) is { } hours
        ? new(hours)
        : new(null, new ColdStop(kinetics, sheet.MaxC, aim, room.LastC, path.ConversionAt(latestHours)).Sentence(what), StopsShort: true);

    private KineticTime Closes(CureAim aim) => path.FirstAt(aim.Conversion, aim.AboveRoomK, latestHours) is { } hours
        ? new(hours)
        : new(null, "In this room the surface does not turn glassy, so by the calculation the window does not close. Go by the data sheet.");
}
