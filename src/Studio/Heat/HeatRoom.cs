using Studio.Engine.Cure;

namespace Studio.Heat;

/// <summary>The room a piece is planned for, as readings on a scale that begins with its first pour, at nine in the morning.</summary>
public static class HeatRoom
{
    /// <summary>Taken where nothing was ever read and nothing typed [°C]; said on the page.</summary>
    public const double AssumedC = 21;

    private const double StartHour = 9;
    private const double NightFrom = 22;
    private const double NightTo = 6;
    private const double TurnHours = 2;

    /// <summary>Readings for so many hours.</summary>
    /// <param name="dayC">By day [°C].</param>
    /// <param name="nightC">By night [°C]; null: as by day.</param>
    /// <param name="hours">How far [h].</param>
    public static IReadOnlyList<RoomReading> Readings(double dayC, double? nightC, double hours)
    {
        if (nightC is not { } night || night.Equals(dayC))
        {
            return [new(0, dayC)];
        }

        var readings = new List<RoomReading> { new(0, dayC) };
        for (var day = 0.0; day - StartHour < hours; day += 24)
        {
            Add(day + NightFrom - TurnHours, dayC);
            Add(day + NightFrom, night);
            Add(day + 24 + NightTo, night);
            Add(day + 24 + NightTo + TurnHours, dayC);
        }

        return readings;

        void Add(double clock, double celsius) => readings.Add(new(clock - StartHour, celsius));
    }
}
