namespace Studio.Engine.Time;

/// <summary>Will it be in time: the earliest day a piece can be finished and with the family, from its design alone.</summary>
public static class TimeCalculation
{
    /// <summary>Plans every step as early as hands, hours and the cure clock allow.</summary>
    /// <returns>The result with its findings, or every input error at once.</returns>
    /// <exception cref="ArgumentException">A reading of the room or a figure of a resin is out of range.</exception>
    public static Outcome<TimeResult> Run(TimeInput input) => Run(input, new InputErrors());

    /// <summary>As <see cref="Run(TimeInput)"/>, after reading found errors of its own.</summary>
    internal static Outcome<TimeResult> Run(TimeInput input, InputErrors errors)
    {
        errors.Settle();
        TimeInputCheck.Check(input, errors);
        return errors.None ? Outcome<TimeResult>.Of(new TimePlan(input).Result()) : Outcome<TimeResult>.Refused(errors.All);
    }
}
