namespace Studio.Engine.Cure;

/// <summary>
/// A resin's conversion from its pour on, in a room: dα/dt = k(T)(κ + αᵐ)(1 − α)ⁿ·f_d integrated with steps that fit its error and never
/// reach across a reading. It goes only as far as it is asked.
/// </summary>
internal sealed class ConversionPath
{
    // error of one step [ratio]; a cure takes a few hundred steps, so the whole stays below 1e-10
    private const double UsualStepError = 1e-12;
    private const double ShortestHours = 1e-7;

    // where the temperature changes, steps stay short enough to see it overtake the glass transition
    private const double LongestSlopingHours = 0.5;

    // where only its conversion is asked for, the error of a step is bound enough
    private const double LongestUnseenHours = 12;
    private const double LongestHours = 500;

    // a milestone's conversion is passed by this much [ratio], more than the integration errs: never early
    private const double Past = 1e-11;

    private readonly Kinetics kinetics;
    private readonly IEnumerator<RoomStretch> stretches;
    private readonly List<CureStep> steps = [];
    private readonly double fromHours;
    private readonly double fromConversion;
    private readonly double stepError;
    private RoomStretch stretch;
    private double at;
    private double conversion;
    private double? perHour;
    private double nextHours = 0.02;

    internal ConversionPath(Kinetics kinetics, RoomCurve room, double fromHours, double fromConversion = 0, double stepError = UsualStepError)
    {
        (this.kinetics, this.fromHours, this.fromConversion, this.stepError) = (kinetics, fromHours, fromConversion, stepError);
        (at, conversion) = (fromHours, fromConversion);
        stretches = room.From(fromHours).GetEnumerator();
        stretches.MoveNext();
        stretch = stretches.Current;
    }

    /// <summary>Conversion at a time [h]; before the pour that at the pour.</summary>
    internal double ConversionAt(double hours)
    {
        while (at < hours)
        {
            Extend();
        }

        return hours <= fromHours ? fromConversion : steps[Holding(hours)].ConversionAt(kinetics, hours);
    }

    /// <summary>
    /// The first time [h] at which the conversion is reached and the glass transition is at least <paramref name="aboveK"/> above the room;
    /// null when that is after <paramref name="latestHours"/>.
    /// </summary>
    internal double? FirstAt(double reached, double aboveK, double latestHours)
    {
        for (var i = 0; ; i++)
        {
            if (i == steps.Count)
            {
                if (at > latestHours)
                {
                    return null;
                }

                Extend();
            }

            if (steps[i].ToConversion >= reached && Within(steps[i], reached, aboveK) is { } hours)
            {
                return hours <= latestHours ? hours : null;
            }
        }
    }

    private double? Within(CureStep step, double reached, double aboveK)
    {
        // the conversion never falls: what its end in the step's coldest does not reach is reached nowhere in it
        if (kinetics.GlassC(step.ToConversion) < Math.Min(step.FromC, step.CelsiusAt(step.ToHours)) + aboveK)
        {
            return null;
        }

        var from = step.FromConversion >= reached ? step.FromHours : CureRoot.Rising(t => step.ConversionAt(kinetics, t) - Math.Min(reached + Past, step.ToConversion), step.FromHours, step.ToHours);
        if (double.IsNegativeInfinity(aboveK))
        {
            return from;
        }

        double Above(double t) => kinetics.GlassC(step.ConversionAt(kinetics, t)) - step.CelsiusAt(t) - aboveK;
        return CureRoot.FirstAbove(Above, from, step.ToHours);
    }

    private void Extend()
    {
        while (at >= stretch.ToHours)
        {
            stretches.MoveNext();
            stretch = stretches.Current;
        }

        var slope = double.IsInfinity(stretch.ToHours) ? 0 : (stretch.ToC - stretch.FromC) / (stretch.ToHours - stretch.FromHours);
        var celsius = stretch.FromC + (slope * (at - stretch.FromHours));
        var left = stretch.ToHours - at;
        for (var wanted = nextHours; ;)
        {
            var h = Math.Min(Math.Min(wanted, left), slope == 0 ? LongestHours : stepError > UsualStepError ? LongestUnseenHours : LongestSlopingHours);
            var (to, error, lastPerHour) = DormandPrince.Step(kinetics, conversion, celsius, slope, h, perHour);
            var good = error <= stepError || h <= ShortestHours;
            var factor = Math.Clamp(0.9 * Math.Pow(stepError / Math.Max(error, 1e-30), 0.2), 0.2, 5);
            if (good)
            {
                var until = h == left ? stretch.ToHours : at + h;
                to = Math.Max(conversion, to);
                steps.Add(new(at, until, conversion, to, celsius, slope));
                (at, conversion, perHour) = (until, to, lastPerHour);
                nextHours = Math.Max(h * factor, ShortestHours);
                return;
            }

            wanted = Math.Max(h * factor, ShortestHours);
        }
    }

    // the step that holds a time, by halving
    private int Holding(double hours)
    {
        var (low, high) = (0, steps.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = steps[middle].ToHours < hours ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
