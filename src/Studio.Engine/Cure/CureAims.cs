namespace Studio.Engine.Cure;

/// <summary>A milestone in terms of the resin itself: so much conversion, and a glass transition so far above the room.</summary>
/// <param name="Conversion">At least this [ratio].</param>
/// <param name="AboveRoomK">The glass transition at least this far above the room [K]; minus infinity where it does not count.</param>
/// <param name="Source">Where the two are from.</param>
public sealed record CureAim(double Conversion, double AboveRoomK, string Source);

/// <summary>What each milestone of a resin takes, from its kinetics and, where its data sheet prints hours, from those.</summary>
public sealed record CureAims
{
    /// <summary>Conversion at which a casting is firm enough to leave its mould where no sheet says [ratio]; study: 0.78 ± 0.05.</summary>
    public const double DemouldConversion = 0.78;

    /// <summary>The glass transition stands this far above the room before a piece is handled [K]; common practice, no source.</summary>
    public const double MarginK = 5;

    /// <summary>Share of what vitrification lets a 23 °C room reach that counts as full cure where no sheet says; our rule.</summary>
    public const double FullShare = 0.98;

    private const double ReferenceC = Kinetics.ReferenceK - 273.15;

    // so that arithmetic alone never makes the model later than the very hours it is fitted to
    private const double Slack = 1e-9;
    private const double SlackK = 1e-6;

    // the shelf asks again each minute of the same pours
    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<CureSheet, Known> Found = [];

    /// <summary>No longer flows: the gel conversion; the next-pour window opens.</summary>
    public required CureAim Gel { get; init; }

    /// <summary>The surface turns glassy and offers no chemical bond any more; the window closes.</summary>
    public required CureAim Close { get; init; }

    /// <summary>The conversion at which the sheet's printed window ends; null where the sheet prints none.</summary>
    public CureAim? CloseBySheet { get; init; }

    /// <summary>May leave its mould.</summary>
    public required CureAim Demould { get; init; }

    /// <summary>Fully cured.</summary>
    public required CureAim Full { get; init; }

    /// <summary>Works the aims out; of several printed rows the one nearest to 23 °C decides.</summary>
    public static CureAims Of(Kinetics kinetics, CureSheet sheet)
    {
        if (Found.TryGetValue(sheet, out var known) && known.Kinetics == kinetics)
        {
            return known.Aims;
        }

        var aims = Worked(kinetics, sheet);
        Found.AddOrUpdate(sheet, new(kinetics, aims));
        return aims;
    }

    private static CureAims Worked(Kinetics kinetics, CureSheet sheet)
    {
        var gel = new CureAim(kinetics.GelConversion, double.NegativeInfinity, "gel conversion of the kinetics (Flory and Stockmayer: 0.577 for 4 and 2 functions)");
        var steady = new Dictionary<double, ConversionPath>();
        var demould = Implied(kinetics, sheet, steady, t => t.DemouldHours, gel.Conversion)
            ?? new CureAim(Math.Max(DemouldConversion, gel.Conversion), MarginK, "study: 0.78; 5 K above the room: common practice, no source");
        return new()
        {
            Gel = gel,
            Close = new(0, 0, "glass transition above the room: no chemical bond any more"),
            CloseBySheet = Implied(kinetics, sheet, steady, t => t.NextPourUntilHours, gel.Conversion) is { } printed ? printed with { AboveRoomK = double.NegativeInfinity } : null,
            Demould = demould,
            Full = Implied(kinetics, sheet, steady, t => t.FullCureHours, demould.Conversion)
                ?? new CureAim(Math.Max(demould.Conversion, FullShare * Reachable(kinetics, ReferenceC)), demould.AboveRoomK, "our rule: 0.98 of what a 23 °C room lets the resin reach"),
        };
    }

    /// <summary>Conversion that a resin comes near to and hardly passes at a temperature [°C]: vitrification leaves it an eighth of its rate.</summary>
    public static double Reachable(Kinetics kinetics, double celsius) =>
        kinetics.ConversionAtGlass(celsius + kinetics.VitrificationOffsetK + (2 * kinetics.VitrificationWidthK));

    // what the resin has reached after the printed hours at the printed temperature; the margin is 5 K or, where that is less, what the sheet lives with
    private static CureAim? Implied(Kinetics kinetics, CureSheet sheet, Dictionary<double, ConversionPath> steady, Func<CureTimes, double?> pick, double least)
    {
        if (sheet.Times.Where(t => pick(t) is not null).MinBy(t => Math.Abs(t.AtCelsius - ReferenceC)) is not { } row)
        {
            return null;
        }

        if (!steady.TryGetValue(row.AtCelsius, out var path))
        {
            steady[row.AtCelsius] = path = new(kinetics, new RoomCurve([new(0, row.AtCelsius)]), 0);
        }

        var conversion = path.ConversionAt(pick(row)!.Value);
        var margin = Math.Min(MarginK, kinetics.GlassC(conversion) - row.AtCelsius - SlackK);
        return new(Math.Max(least, conversion - Slack), margin, FormattableString.Invariant($"data sheet: {pick(row):0.##} h at {row.AtCelsius:0.#} °C"));
    }

    private sealed record Known(Kinetics Kinetics, CureAims Aims);
}
