namespace Studio.Settings;

/// <summary>The days of the week by the keys they are kept under, and the hours a new studio begins with; common practice, no source.</summary>
public static class WorkWeek
{
    public const int UsualMinutesPerDay = 240;
    public const int UsualReserveDays = 3;
    public const int UsualDeliveryDays = 2;

    /// <summary>Coldest room that a usual temperature is believed of [°C].</summary>
    public const double LowestRoomC = 5;

    /// <summary>Warmest room that a usual temperature is believed of [°C].</summary>
    public const double HighestRoomC = 40;

    public static TimeOnly UsualFrom { get; } = new(9, 0);

    public static TimeOnly UsualUntil { get; } = new(17, 0);

    /// <summary>Monday to Friday.</summary>
    public static IReadOnlyList<string> Usual { get; } = ["mon", "tue", "wed", "thu", "fri"];

    /// <summary>Every day from Monday on: key, label, and the day that it is.</summary>
    public static IReadOnlyList<(string Key, string Label, DayOfWeek Day)> All { get; } =
    [
        ("mon", "Monday", DayOfWeek.Monday),
        ("tue", "Tuesday", DayOfWeek.Tuesday),
        ("wed", "Wednesday", DayOfWeek.Wednesday),
        ("thu", "Thursday", DayOfWeek.Thursday),
        ("fri", "Friday", DayOfWeek.Friday),
        ("sat", "Saturday", DayOfWeek.Saturday),
        ("sun", "Sunday", DayOfWeek.Sunday),
    ];
}
