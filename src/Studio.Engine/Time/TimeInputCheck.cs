using Studio.Engine.Cure;

namespace Studio.Engine.Time;

/// <summary>Everything about the plan's input that cannot be used, all at once.</summary>
internal static class TimeInputCheck
{
    private const int MostLayers = 200;
    private const int MostSteps = 1000;
    private const int MostDaysOff = 10_000;
    private const double MostMinutes = 100_000;
    private const double MostWaitHours = 10_000;
    private const double MinutesADay = 1440;
    private const int FirstYear = 1970;
    private const int LastYear = 2200;

    internal static void Check(TimeInput input, InputErrors errors)
    {
        if (input.Start.Year is < FirstYear or > LastYear || input.Start.Ticks % TimeSpan.TicksPerMinute != 0)
        {
            errors.Add("start", $"Must be a whole minute of the years {FirstYear} to {LastYear}; {WallText.Write(input.Start)} was given.");
        }

        Work(input.Work, errors);
        Count("preparation", input.Preparation.Count, MostSteps, errors);
        for (var i = 0; i < input.Preparation.Count; i++)
        {
            Preparation(input, i, errors);
        }

        if (input.Room.Count > 0)
        {
            CureInputCheck.Room(input.Room, errors);
        }

        Count("layers", input.Layers.Count, MostLayers, errors);
        for (var i = 0; i < input.Layers.Count; i++)
        {
            Layer(input, i, errors);
        }

        Demould(input, errors);
        Count("finishing", input.Finishing.Count, MostSteps, errors);
        for (var i = 0; i < input.Finishing.Count; i++)
        {
            Finishing(input, i, errors);
        }

        errors.Within("abradeMinutes", input.AbradeMinutes, 0, MinutesADay, "min");
        errors.Within("deliveryDays", (double)input.DeliveryDays, 0, 365, "days");
        errors.Within("reserveDays", (double)input.ReserveDays, 0, 365, "days");
        if (input.NeededBy is { Year: < FirstYear or > LastYear } needed)
        {
            errors.Add("neededBy", $"Must be a day of the years {FirstYear} to {LastYear}; {WallText.Write(needed)} was given.");
        }
    }

    private static void Count(string path, int count, int most, InputErrors errors)
    {
        if (count > most)
        {
            errors.Add(path, $"There are {count}; at most {most} can be worked with.");
        }
        else if (count == 0 && path == "layers")
        {
            errors.Add(path, "There is no layer. Give at least one.");
        }
    }

    private static void Work(WorkingHours work, InputErrors errors)
    {
        if (work.Days.Count == 0)
        {
            errors.Add("work.days", "There is no working day. Name at least one, such as \"mon\".");
        }

        var named = new HashSet<DayOfWeek>();
        var read = errors.Clean("work.days");
        for (var i = 0; i < work.Days.Count; i++)
        {
            if (!named.Add(work.Days[i]) && read)
            {
                errors.Add($"work.days[{i}]", "This day is named twice. Name it once.");
            }
        }

        Count("work.daysOff", work.DaysOff.Count, MostDaysOff, errors);
        if (errors.Clean("work.from") && errors.Clean("work.until") && !(TimeOfDay(work.From) && TimeOfDay(work.Until) && work.From < work.Until))
        {
            errors.Add("work.until", "The working day must end after it begins, on the same day, both in whole minutes.");
        }
        else if (errors.Clean("work"))
        {
            errors.Within("work.minutesPerDay", (double)work.MinutesPerDay, 1, (work.Until - work.From).TotalMinutes, "min");
        }
    }

    private static bool TimeOfDay(TimeSpan time) => time >= TimeSpan.Zero && time <= TimeSpan.FromDays(1) && time.Ticks % TimeSpan.TicksPerMinute == 0;

    private static void Preparation(TimeInput input, int index, InputErrors errors)
    {
        var (preparation, path) = (input.Preparation[index], $"preparation[{index}]");
        errors.Named(path + ".name", preparation.Name);
        errors.Within(path + ".days", preparation.Days, 0, Hands.FurthestDays, "days");
        errors.Within(path + ".minutes", preparation.Minutes, 0, MostMinutes, "min");
        if (preparation.ForLayer is { } layer && (layer < 1 || layer > input.Layers.Count) && input.Layers.Count > 0)
        {
            errors.Add(path + ".forLayer", $"There is no layer {layer}. Layers are counted from 1, the lowest, to {input.Layers.Count}.");
        }

        Fact(input, path + ".doneAt", preparation.DoneAt, errors);
    }

    private static void Layer(TimeInput input, int index, InputErrors errors)
    {
        var (layer, path) = (input.Layers[index], $"layers[{index}]");
        errors.Named(path + ".name", layer.Name);
        if (input.Resins.Count > 0 && !input.Resins.ContainsKey(layer.Resin))
        {
            errors.Add(path + ".resin", $"There is no resin '{layer.Resin}'. There are: {Choices.Few(input.Resins.Keys)}.");
        }

        AtOnce(input, path + ".minutes", layer.Minutes, layer.PouredAt is null, "A pour", errors);
        errors.Within(path + ".waitHours", layer.WaitHours, 0, MostWaitHours, "h");
        Fact(input, path + ".pouredAt", layer.PouredAt, errors);
        if (index > 0 && layer.PouredAt is not null && input.Layers[index - 1].PouredAt is null)
        {
            errors.Add(path + ".pouredAt", $"Layer '{layer.Name}' is poured and '{input.Layers[index - 1].Name}' under it is not. Give the time of that one too, or of neither.");
        }
    }

    private static void Demould(TimeInput input, InputErrors errors)
    {
        AtOnce(input, "demould.minutes", input.Demould.Minutes, input.Demould.At is null, "Demoulding", errors);
        Fact(input, "demould.at", input.Demould.At, errors);
        if (input.Demould.At is not null && input.Layers.FirstOrDefault(l => l.PouredAt is null) is { } left)
        {
            errors.Add("demould.at", $"The piece is out of its mould and layer '{left.Name}' is not poured. Give the time of that pour, or leave out 'at'.");
        }
    }

    private static void Finishing(TimeInput input, int index, InputErrors errors)
    {
        var (work, path) = (input.Finishing[index], $"finishing[{index}]");
        errors.Named(path + ".name", work.Name);
        errors.Within(path + ".minutes", work.Minutes, 0, MostMinutes, "min");
        Fact(input, path + ".doneAt", work.DoneAt, errors);
    }

    // what is not interrupted must fit into one day's hands
    private static void AtOnce(TimeInput input, string path, double minutes, bool planned, string what, InputErrors errors)
    {
        if (errors.Within(path, minutes, 0, MostMinutes, "min") && planned && minutes > input.Work.MinutesPerDay && errors.Clean("work"))
        {
            errors.Add(path, FormattableString.Invariant($"{what} is not interrupted, so it must fit into the {input.Work.MinutesPerDay} minutes that a working day has for this piece; {minutes} was given."));
        }
    }

    private static void Fact(TimeInput input, string path, DateTime? at, InputErrors errors)
    {
        if (at is { } moment && errors.Clean("start") && (moment.Ticks % TimeSpan.TicksPerMinute != 0 || Math.Abs((moment - input.Start).TotalDays) > Hands.FurthestDays))
        {
            errors.Add(path, $"Must be a whole minute within ten years of the start; {WallText.Write(moment)} was given.");
        }
    }
}
