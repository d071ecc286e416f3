using Studio.Engine.Cure;

namespace Studio.Engine.Time;

/// <summary>Hours of the cure clock as moments of the wall clock, counted from the start.</summary>
internal sealed class WallClock(DateTime start)
{
    private const double FurthestHours = Hands.FurthestDays * 24.0;

    internal double Hours(DateTime moment) => (moment - start).Ticks / (double)TimeSpan.TicksPerHour;

    /// <summary>A moment so many hours after another, rounded up to the minute; null where that is too far off to plan.</summary>
    internal static DateTime? After(DateTime moment, double hours) =>
        hours <= FurthestHours ? CureRounding.UpToMinute(moment.AddTicks((long)Math.Ceiling(hours * TimeSpan.TicksPerHour))) : null;

    /// <summary>A time before which one must wait.</summary>
    internal Moment Ready(Milestone milestone) => Tell(milestone, CureRounding.UpToMinute);

    /// <summary>A time after which it is too late.</summary>
    internal Moment Closing(Milestone milestone) => Tell(milestone, CureRounding.DownToMinute);

    private Moment Tell(Milestone milestone, Func<DateTime, DateTime> round) => milestone switch
    {
        { AtHours: null } => Moment.Unknown(milestone.Reason!),
        { AtHours: > FurthestHours } => Moment.Unknown("In this room it would take more than ten years."),
        { AtHours: { } hours } => new(round(start.AddTicks((long)Math.Ceiling(hours * TimeSpan.TicksPerHour))), null, milestone.RestsOn),
    };
}
