using Studio.Engine.Forecast;

namespace Studio.Heat;

/// <summary>One layer's heat as a page says it. Above the run-away temperature no number is said.</summary>
/// <param name="Name">"Layer 1, base".</param>
/// <param name="Band">"calm", "warm", "hot" or "runaway": how it is marked, beside the words.</param>
/// <param name="Says">A few words: how it is.</param>
/// <param name="Peak">The peak with its interval; no number where it may run away.</param>
/// <param name="More">When and where, the mould's face, gel.</param>
/// <param name="Limits">Each limit with what is left to it.</param>
public sealed record HeatSight(string Name, string Band, string Says, string Peak, string More, IReadOnlyList<string> Limits)
{
    /// <summary>Under this it is calm [°C]; our rule.</summary>
    public const double CalmC = 50;

    /// <summary>True where the most probable resin breaks a limit, or runs away: then it is stopped, not only warned of.</summary>
    public bool Stops { get; private init; }

    /// <summary>Says one layer.</summary>
    /// <param name="told">As foretold.</param>
    /// <param name="limits">What it must not reach.</param>
    public static HeatSight Of(string name, ForecastLayer told, IReadOnlyList<HeatLimit> limits)
    {
        var surely = told.PeakC > HeatLimit.RunAwayC;
        var broken = limits.Where(l => (l.AtMouldFace ? told.FaceC : told.PeakC) > l.Celsius).ToList();
        var mayBreak = limits.Where(l => l.OverK(told) > 0).ToList();
        var band = told.RunAway ? "runaway" : mayBreak.Count > 0 ? "hot" : told.PeakHighC > CalmC ? "warm" : "calm";
        return new(name, band, Word(told, surely, broken, mayBreak), PeakWords(told, surely), surely ? "" : MoreWords(told), [.. limits.Select(l => Limit(l, told))])
        {
            Stops = surely || broken.Count > 0,
        };
    }

    private static string Word(ForecastLayer told, bool surely, List<HeatLimit> broken, List<HeatLimit> mayBreak) =>
        surely ? "Run-away: do not pour."
        : told.RunAway ? "It may run away: do not pour it so."
        : broken.Count > 0 ? $"Too hot for {broken[0].Of}."
        : mayBreak.Count > 0 ? $"It may become too hot for {mayBreak[0].Of}."
        : told.PeakHighC > CalmC ? "Warm, within its limits."
        : "Calm.";

    private static string PeakWords(ForecastLayer told, bool surely) =>
        surely ? ""
        : told.RunAway ? FormattableString.Invariant($"most likely {told.PeakC:0} °C, but nobody can be sure of that")
        : told.Intervals is null ? FormattableString.Invariant($"{told.PeakC:0} °C")
        : FormattableString.Invariant($"{told.PeakLowC:0} to {told.PeakHighC:0} °C, most likely {told.PeakC:0} °C");

    private static string MoreWords(ForecastLayer told)
    {
        var gel = told.LastGelAfterHours is { } h ? FormattableString.Invariant($", gelled throughout after {h:0.#} h{Latest(told)}") : ", not gelled throughout in the time reckoned";
        var face = told.RunAway ? "" : FormattableString.Invariant($" Where it touches the mould at most {told.FaceHighC:0} °C.");
        return FormattableString.Invariant($"Warmest {told.PeakAfterHours:0.#} h after its pour, {told.PeakHeightMm:0} mm up in the mould{gel}.{face}");
    }

    // another resin, or the corners that a round body has not
    private static string Latest(ForecastLayer told) => told.Intervals switch
    {
        null => "",
        { LastGelAfterHours: { } gel } => FormattableString.Invariant($" (at the latest after {gel.To:0.#} h)"),
        _ => " (the latest is not known)",
    };

    private static string Limit(HeatLimit limit, ForecastLayer told)
    {
        var over = limit.OverK(told);
        var room = told.RunAway ? "" : over > 0 ? FormattableString.Invariant($", which may be passed by {over:0} K") : FormattableString.Invariant($", {-over:0} K in hand");
        return FormattableString.Invariant($"{Upper(limit.Of)}: {limit.Celsius:0} °C{(limit.AtMouldFace ? " at the mould's face" : "")}{room} ({limit.Source}).");
    }

    private static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
