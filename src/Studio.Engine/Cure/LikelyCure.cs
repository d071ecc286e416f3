namespace Studio.Engine.Cure;

/// <summary>
/// Resins that would have printed the same sheet or shown the same log, each as good a guess as the others. Nobody need take a fit over to be made more careful by it: a gel is
/// told by the slow ones, the end of a window by the quick ones.
/// </summary>
/// <param name="Members">At least one; some two dozen as a rule.</param>
public sealed record LikelyCure(IReadOnlyList<Kinetics> Members)
{
    // the place of the 5 and 95 % quantiles in the order (Hyndman and Fan 1996, type 6), as everywhere else
    private const double Share = 0.95;

    // of so many at one end the quantile is taken; which ones they are is told by a room that stays as it is
    private const int Ends = 3;

    private const double UsualC = Kinetics.ReferenceK - 273.15;

    // a bound, not an instant [ratio]
    private const double StepError = 1e-6;

    // a cold mix in a warmer room has taken on its warmth but for a third after this [h]; deep layers are solved, thin ones are quicker
    private const double WarmingHours = 3;

    /// <summary>Resins by another fit that nobody has decided on yet: what it makes more careful counts at once, what it makes less so does not.</summary>
    public LikelyCure? Also { get; init; }

    /// <summary>When a thin layer, as warm as the room, has gelled, but for one resin in twenty [h on the room's scale]; null where it has not by then.</summary>
    /// <param name="room">The room.</param>
    /// <param name="pouredAtHours">When it was poured.</param>
    /// <param name="pouredCelsius">Of the mix [°C]; where it is colder than the room, so is the layer at first.</param>
    /// <param name="latestHours">Later than this is not told.</param>
    /// <exception cref="ArgumentException">The room has no usable reading.</exception>
    public double? GelHours(RoomLog room, double pouredAtHours, double? pouredCelsius, double latestHours) =>
        GelHours(room.Curve ?? throw new ArgumentException("The room has no usable reading.", nameof(room)), pouredAtHours, pouredCelsius, latestHours);

    internal double? GelHours(RoomCurve room, double pouredAtHours, double? pouredCelsius, double latestHours)
    {
        room = room.Eased;
        var warming = Warming(room, pouredAtHours, pouredCelsius);
        var own = Late(Mean(room, pouredAtHours), (k, c) => Steady(k, c, k.GelConversion), k => new ConversionPath(k, warming, pouredAtHours, stepError: StepError).FirstAt(k.GelConversion, double.NegativeInfinity, latestHours));
        return Also is null ? own : Also.GelHours(room, pouredAtHours, pouredCelsius, latestHours) is { } other && own is { } first ? Math.Max(first, other) : null;
    }

    /// <summary>
    /// When each resin has the conversion that it has at the printed end of the window, by all but one in twenty [h]; null where that is not by then, or no end is printed:
    /// then nobody knows it, for a fit tells nothing of a bond.
    /// </summary>
    internal double? ClosesHours(RoomCurve room, double pouredAtHours, CureSheet sheet, double latestHours)
    {
        if (sheet.Times.Where(t => t.NextPourUntilHours is not null).MinBy(t => Math.Abs(t.AtCelsius - UsualC)) is not { } row)
        {
            return null;
        }

        room = room.Eased;
        var printed = new RoomCurve([new(0, row.AtCelsius)]);
        double Aim(Kinetics k) => new ConversionPath(k, printed, 0, stepError: StepError).ConversionAt(row.NextPourUntilHours!.Value);
        var own = Early(Mean(room, pouredAtHours), (k, c) => k.RatePerS(row.AtCelsius) / k.RatePerS(c), k => new ConversionPath(k, room, pouredAtHours, stepError: StepError).FirstAt(Aim(k), double.NegativeInfinity, latestHours));
        return Also?.ClosesHours(room, pouredAtHours, sheet, latestHours) is { } other ? Math.Min(own ?? other, other) : own;
    }

    private double? Late(double celsius, Func<Kinetics, double, double> steady, Func<Kinetics, double?> reached)
    {
        double[] order = [.. Members.OrderByDescending(k => steady(k, celsius)).Take(Ends).Select(k => reached(k) ?? double.PositiveInfinity).OrderDescending()];
        return Quantile(order) is var found && double.IsFinite(found) ? found : null;
    }

    private double? Early(double celsius, Func<Kinetics, double, double> steady, Func<Kinetics, double?> reached)
    {
        double[] order = [.. Members.OrderBy(k => steady(k, celsius)).Take(Ends).Select(k => reached(k) ?? double.PositiveInfinity).Order()];
        return Quantile(order) is var found && double.IsFinite(found) ? found : null;
    }

    // counted from the end that matters
    private double Quantile(double[] fromEnd)
    {
        var place = Math.Clamp(Members.Count - (Share * (Members.Count + 1)), 0, fromEnd.Length - 1);
        var (at, rest) = ((int)place, place - (int)place);
        return rest == 0 || at + 1 >= fromEnd.Length ? fromEnd[at] : double.IsInfinity(fromEnd[at]) ? fromEnd[at] : fromEnd[at] + (rest * (fromEnd[at + 1] - fromEnd[at]));
    }

    private static double Mean(RoomCurve room, double fromHours) => new double[] { 0, 3, 6, 12, 24, 48 }.Average(h => room.CelsiusAt(fromHours + h));

    // hours by the middle of the way, good enough to put resins in order
    private static double Steady(Kinetics kinetics, double celsius, double conversion)
    {
        const int parts = 12;
        double sum = 0;
        for (var i = 0; i < parts; i++)
        {
            sum += 1 / Math.Max(1e-30, kinetics.PerS(conversion * (i + 0.5) / parts, celsius));
        }

        return sum * conversion / parts / 3600;
    }

    private static RoomCurve Warming(RoomCurve room, double pouredAtHours, double? pouredCelsius)
    {
        var colder = room.CelsiusAt(pouredAtHours) - pouredCelsius;
        if (!(colder > 0))
        {
            return room;
        }

        double[] steps = [0, 0.25, 0.5, 1, 1.5, 2, 3, 4, 6, 8, 12, 18];
        var hours = steps.Select(h => pouredAtHours + h).Concat(room.Readings.Select(r => r.Hours).Where(h => h > pouredAtHours)).Distinct().Order();
        return new([.. hours.Select(h => new RoomReading(h, room.CelsiusAt(h) - (colder.Value * Math.Exp(-(h - pouredAtHours) / WarmingHours))))]);
    }
}

/// <summary>What a run of the heat of a layer says of its gel; it may bring the film's bound forward, and no further than this.</summary>
/// <param name="LastGelAfterHours">When its last place had gelled, but for one resin in twenty, the run's own error added [h after the pour].</param>
/// <param name="FilmAfterHours">When a thin layer would have, in the room of that run [h after the pour]: where the room has turned out colder, the gel is later in proportion and more, up to the film's.</param>
public sealed record HeatGel(double LastGelAfterHours, double FilmAfterHours);

/// <summary>What a time of the clock was decided by.</summary>
public enum DecidedBy
{
    /// <summary>The printed hours.</summary>
    Sheet,

    /// <summary>Kinetics that were given, or taken over by a person.</summary>
    Kinetics,

    /// <summary>The slow or the quick ones of the resins that would print the same sheet, as a thin layer.</summary>
    Fit,

    /// <summary>The layer's own run of heat.</summary>
    Heat,
}
