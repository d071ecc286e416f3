using Studio.Shell;

namespace Studio.Climate;

/// <summary>Why a reading is kept and not counted.</summary>
/// <param name="Code">Kept with the reading.</param>
/// <param name="Words">A whole sentence.</param>
public sealed record ReadingDoubt(string Code, string Words);

/// <summary>What no room does, and what thermometers say when something is wrong with them. A doubted reading is kept and pointed at, never smoothed.</summary>
public static class ReadingDoubts
{
    public const string ErrorValue = "error-value";
    public const string OutOfRange = "out-of-range";
    public const string Spike = "spike";
    public const string ClockOff = "clock-off";

    /// <summary>A jump up by more than this within <see cref="SpikeMinutes"/> waits for a second reading [K]; our rule.</summary>
    public const double SpikeK = 5;

    public const double SpikeMinutes = 15;

    /// <summary>A second reading this near to a doubted one confirms it [K]; our rule.</summary>
    public const double ConfirmK = 2;

    /// <summary>How far a sensor's clock may run ahead [min].</summary>
    public const double AheadMinutes = 2;

    /// <summary>Nothing is sent this late after it was measured [days]; our rule. Older records are pasted on the page of the room.</summary>
    public const double OldestDays = 31;

    private const double LowestC = -30;
    private const double HighestRoomC = 60;
    private const double HighestProbeC = 250;

    /// <summary>What is wrong with the figure by itself; null when nothing is.</summary>
    /// <param name="celsius">[°C].</param>
    /// <param name="probe">True for a thermometer that lies in a layer, which may be far hotter than a room.</param>
    /// <param name="before">What the sensor said last [°C].</param>
    public static ReadingDoubt? OfFigure(double celsius, bool probe, double? before) => celsius switch
    {
        // both from memory: the power-on value of a common digital thermometer chip, and a bus that nobody answers on
        85 when !(probe && before is > 80 and < 90) => new(ErrorValue, "85 °C is what some sensors say before their first measurement."),
        <= -127 => new(ErrorValue, "That is what a sensor says when its probe is loose or broken."),
        _ when celsius < LowestC || celsius > (probe ? HighestProbeC : HighestRoomC) =>
            new(OutOfRange, $"{Say.Celsius(celsius)} cannot be {(probe ? "a casting" : "a workroom")}. If the sensor sends Fahrenheit, say so in its settings."),
        _ => null,
    };

    /// <summary>
    /// Whether a reading jumps as no room does. Only a jump upwards waits for a second reading: without it every ready time is later, never earlier.
    /// A jump downwards counts at once, for the same reason.
    /// </summary>
    public static ReadingDoubt? OfJump(double celsius, DateTime at, PlaceReading? before) =>
        before is not null && celsius - before.Celsius > SpikeK && (at - before.At).TotalMinutes is >= 0 and <= SpikeMinutes
            ? new(Spike, $"It jumped from {Say.Celsius(before.Celsius)} to {Say.Celsius(celsius)} in {Say.Duration(at - before.At)}. It counts once a second reading says the same.")
            : null;

    /// <summary>Whether the sensor's clock is off.</summary>
    /// <param name="at">When it says it measured [UTC].</param>
    /// <param name="received">When that came in [UTC].</param>
    /// <param name="alone">True when it was sent by itself and not with a backlog.</param>
    /// <param name="heard">When the sensor was heard before [UTC].</param>
    /// <param name="everyMinutes">How often it is heard.</param>
    public static ReadingDoubt? OfClock(DateTime at, DateTime received, bool alone, DateTime? heard, double everyMinutes)
    {
        var lag = (received - at).TotalMinutes;
        var steady = heard is { } h && (received - h).TotalMinutes <= 3 * everyMinutes;
        return lag < -AheadMinutes ? new(ClockOff, $"It says it was measured {Say.Duration(at - received)} from now: the sensor's clock runs ahead{(Math.Abs(lag + 60) < 5 ? " by an hour, as after the change of summer time" : "")}. Set it.")
            : lag > OldestDays * 24 * 60 ? new(ClockOff, "It says it was measured more than a month ago: a clock that lost its battery says so. Set the sensor's clock.")
            : alone && steady && Math.Abs(lag - 60) < 5 ? new(ClockOff, "It says it was measured an hour ago and comes regularly: the sensor's clock seems an hour behind, as after the change of summer time. Set it.")
            : null;
    }
}
