using Studio.Engine.Cure;
using Studio.Engine.Json;

namespace Studio.Engine.Time;

/// <summary>Reads the input of <c>calc time</c>; its errors join those of the calculation.</summary>
internal static class TimeJson
{
    /// <summary>JSON text to a result or every error at once.</summary>
    /// <param name="likely">Fits a sheet.</param>
    public static Outcome<TimeResult> Run(string text, Func<CureResin, LikelyCure?> likely)
    {
        var errors = new InputErrors();
        if (Fields.Parse(text, errors) is not { } fields)
        {
            return Outcome<TimeResult>.Refused(errors.All);
        }

        var steady = fields.HoldsObject("room");
        var resins = fields.Map("resins", CureJson.Resin);
        var input = Read(fields, resins, steady);
        errors.Settle();
        CureInputCheck.Resins(resins, errors);
        CureInputCheck.Room(input.Room, errors);
        if (errors.None)
        {
            input = input with { Resins = input.Resins.ToDictionary(r => r.Key, r => input.Layers.Any(l => l.Resin == r.Key) ? r.Value with { Likely = likely(resins[r.Key]) } : r.Value, StringComparer.Ordinal) };
        }

        var outcome = TimeCalculation.Run(input, errors);
        return outcome.Ok ? Outcome<TimeResult>.Of(outcome.Value with { Findings = [.. Findings(outcome.Value, steady), .. Doubts(resins)] }) : outcome;
    }

    private static TimeInput Read(Fields fields, IReadOnlyDictionary<string, CureResin> resins, bool steady)
    {
        var input = new TimeInput
        {
            Start = fields.Read<DateTime>("start", WallText.Moment, WallText.MomentMust),
            Work = fields.Object("work", Work),
            Preparation = fields.OptionalList("preparation", Preparation),
            Resins = resins.ToDictionary(r => r.Key, r => TimeResin.Of(r.Value), StringComparer.Ordinal),
            Room = steady ? [fields.Object("room", Steady)] : RoomJson.Read(fields),
            Layers = fields.List("layers", Layer),
            Demould = fields.Object("demould", Demould),
            Finishing = fields.OptionalList("finishing", Finishing),
            AbradeMinutes = fields.OptionalNumber("abradeMinutes") ?? TimeInput.UsualAbradeMinutes,
            DeliveryDays = fields.OptionalWhole("deliveryDays") ?? 0,
            ReserveDays = fields.OptionalWhole("reserveDays") ?? 0,
            NeededBy = fields.OptionalRead<DateOnly>("neededBy", WallText.Day, WallText.DayMust),
        };
        fields.NothingElse();
        return input;
    }

    private static WorkingHours Work(Fields fields)
    {
        var days = fields.ReadList<DayOfWeek>("days", WallText.Weekday, WallText.WeekdayMust);
        var from = fields.Read<TimeSpan>("from", WallText.TimeOfDay, WallText.TimeOfDayMust);
        var until = fields.Read<TimeSpan>("until", WallText.TimeOfDay, WallText.TimeOfDayMust);
        var work = new WorkingHours(days, from, until, fields.OptionalWhole("minutesPerDay") ?? (int)(until - from).TotalMinutes)
        {
            DaysOff = fields.OptionalReadList<DateOnly>("daysOff", WallText.Day, WallText.DayMust),
        };
        fields.NothingElse();
        return work;
    }

    private static RoomReading Steady(Fields fields)
    {
        var reading = new RoomReading(0, fields.Number("celsius"));
        fields.NothingElse();
        return reading;
    }

    private static PlannedPreparation Preparation(Fields fields)
    {
        var preparation = new PlannedPreparation(fields.Text("name"), fields.OptionalNumber("days") ?? 0, fields.OptionalNumber("minutes") ?? 0, fields.OptionalWhole("forLayer"), Moment(fields, "doneAt"));
        fields.NothingElse();
        return preparation;
    }

    private static PlannedPour Layer(Fields fields)
    {
        var layer = new PlannedPour(fields.Text("name"), fields.Text("resin"), fields.Number("minutes"), fields.OptionalNumber("waitHours"), Moment(fields, "pouredAt"));
        fields.NothingElse();
        return layer;
    }

    private static PlannedDemould Demould(Fields fields)
    {
        var demould = new PlannedDemould(fields.Number("minutes"), Moment(fields, "at"));
        fields.NothingElse();
        return demould;
    }

    private static PlannedWork Finishing(Fields fields)
    {
        var work = new PlannedWork(fields.Text("name"), fields.Number("minutes"), fields.Flag("afterFullCure", leftOut: true), fields.Flag("done"), Moment(fields, "doneAt"));
        fields.NothingElse();
        return work;
    }

    private static DateTime? Moment(Fields fields, string name) => fields.OptionalRead<DateTime>(name, WallText.Moment, WallText.MomentMust);

    // a steady room is one reading to the clock and has no list in the input
    private static IEnumerable<Finding> Findings(TimeResult result, bool steady) =>
        result.Findings.Select(f => steady && f.Path == "room[0]" ? f with { Path = "room.celsius" } : f);

    private static IEnumerable<Finding> Doubts(IReadOnlyDictionary<string, CureResin> resins) =>
        resins.SelectMany(r => DataSheetCheck.Doubts(r.Value, $"resins.{r.Key}"));
}
