namespace Studio.Clock;

/// <summary>How long hands are expected to take [min]; common practice, no source. A plan of the day, not a promise.</summary>
public static class BenchMinutes
{
    /// <summary>Laying ready, levelling, weighing one batch, stirring and pouring.</summary>
    public const double Pour = 25;

    /// <summary>Abrading, cleaning and drying a layer whose window has closed.</summary>
    public const double Abrade = 15;

    public const double Demould = 15;

    /// <summary>Sanding and polishing where the piece names no tasks of its own.</summary>
    public const double Finish = 60;

    public const double Reading = 1;
}
