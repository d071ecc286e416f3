namespace Studio.Engine.Time;

/// <summary>
/// The hands' time on one piece, spent in order: nothing is put before what was put last, no day takes more than its minutes,
/// and nothing is done outside the working hours.
/// </summary>
internal sealed class Hands
{
    /// <summary>What lies further off than this is not planned [days].</summary>
    internal const int FurthestDays = 3650;

    private readonly WorkingHours work;
    private readonly HashSet<DayOfWeek> week;
    private readonly HashSet<DateOnly> off;
    private readonly DateTime furthest;
    private DateTime at;

    // a day that works until midnight ends on the next one, so the day is kept beside the moment
    private DateTime day;
    private int usedMinutes;

    internal Hands(WorkingHours work, DateTime start)
    {
        (this.work, at, day, furthest) = (work, start, start.Date, start.AddDays(FurthestDays));
        (week, off) = ([.. work.Days], [.. work.DaysOff]);
    }

    /// <summary>Work that is not interrupted: the first moment at which it fits into a day, taken; null where none comes.</summary>
    internal Spell? AtOnce(DateTime notBefore, int minutes)
    {
        var spell = Try(notBefore, minutes);
        if (spell is not null)
        {
            Take(spell);
        }

        return spell;
    }

    /// <summary>As <see cref="AtOnce"/>, without taking it.</summary>
    internal Spell? Try(DateTime notBefore, int minutes)
    {
        for (var t = Latest(at, notBefore); minutes <= work.MinutesPerDay && t < furthest; t = t.Date.AddDays(1))
        {
            var from = Latest(t, t.Date + work.From);
            if (Works(t) && from.AddMinutes(minutes) <= t.Date + work.Until && Used(t) + minutes <= work.MinutesPerDay)
            {
                return new(from, from.AddMinutes(minutes));
            }
        }

        return null;
    }

    /// <summary>Takes what was tried.</summary>
    internal void Take(Spell spell) => Spend(spell.From, (int)(spell.Until - spell.From).TotalMinutes);

    /// <summary>Work that may go on the next day: from its first minute to its last; null where it does not end. Without minutes, no hands are waited for.</summary>
    internal Spell? Spread(DateTime notBefore, int minutes)
    {
        if (minutes == 0)
        {
            return new(notBefore, notBefore);
        }

        DateTime? begun = null;
        var left = minutes;
        for (var t = Latest(at, notBefore); t < furthest; t = t.Date.AddDays(1))
        {
            var from = Latest(t, t.Date + work.From);
            var now = Works(t) ? Math.Min(left, Math.Min(work.MinutesPerDay - Used(t), (int)(t.Date + work.Until - from).TotalMinutes)) : 0;
            if (now > 0)
            {
                begun ??= from;
                Spend(from, now);
                left -= now;
            }

            if (left == 0)
            {
                return new(begun!.Value, at);
            }
        }

        return null;
    }

    /// <summary>Something that is done: its minutes are gone from its day, and nothing is put before it.</summary>
    internal void Done(DateTime when, int minutes)
    {
        if (when.Date >= day)
        {
            (day, usedMinutes, at) = (when.Date, Used(when) + minutes, Latest(at, when));
        }
    }

    internal static DateTime Latest(DateTime one, DateTime other) => one > other ? one : other;

    private bool Works(DateTime t) => week.Contains(t.DayOfWeek) && !off.Contains(DateOnly.FromDateTime(t));

    private int Used(DateTime t) => t.Date == day ? usedMinutes : 0;

    private void Spend(DateTime from, int minutes) => (day, usedMinutes, at) = (from.Date, Used(from) + minutes, from.AddMinutes(minutes));
}

/// <summary>From one moment to another.</summary>
/// <param name="From">Its first.</param>
/// <param name="Until">Its last.</param>
internal sealed record Spell(DateTime From, DateTime Until);
