namespace Studio.Engine.Cure;

/// <summary>Why an aim is not reached in a room that stays as it is, and what warmth would get there.</summary>
/// <param name="kinetics">How the resin cures.</param>
/// <param name="maxC">Warmest room the data sheet allows [°C], where it says.</param>
/// <param name="aim">What is not reached.</param>
/// <param name="roomC">Where the room stays [°C].</param>
/// <param name="conversion">How far the resin has come [ratio].</param>
internal sealed class ColdStop(Kinetics kinetics, double? maxC, CureAim aim, double roomC, double conversion)
{
    // warmth that takes longer than this to finish is no advice [h]
    private const double WarmHours = 72;

    private double Wanted => Math.Max(aim.Conversion, double.IsNegativeInfinity(aim.AboveRoomK) ? 0 : kinetics.ConversionAtGlass(roomC + aim.AboveRoomK));

    /// <summary>A whole sentence or two.</summary>
    internal string Sentence(string what) => TooSoft
        ? FormattableString.Invariant($"At {roomC:0.#} °C this resin stays soft: fully cured, its glass transition is {kinetics.GlassEndC:0.#} °C, and {what} needs it {aim.AboveRoomK:0.#} K above the room. A cooler room is needed, not a warmer one.")
        : FormattableString.Invariant($"{Stopped} {what} needs a conversion of {Wanted:0.00}, and it has come to {conversion:0.00} within 90 days. {Advice(what)}");

    private bool TooSoft => !double.IsNegativeInfinity(aim.AboveRoomK) && kinetics.GlassEndC < roomC + aim.AboveRoomK;

    private string Stopped => kinetics.Mobility(Wanted, roomC) < 0.5
        ? FormattableString.Invariant($"The cold stops the cure short: held at {roomC:0.#} °C the resin turns glassy first;")
        : FormattableString.Invariant($"Held at {roomC:0.#} °C the resin is too slow:");

    private string Advice(string what)
    {
        var warmest = Math.Min(maxC ?? RoomCurve.HighestC, RoomCurve.HighestC);
        for (var c = Math.Ceiling(roomC + 0.5); c <= warmest; c++)
        {
            if (new ConversionPath(kinetics, new([new(0, c)]), 0, conversion).FirstAt(Wanted, double.NegativeInfinity, WarmHours) is { } hours)
            {
                return FormattableString.Invariant($"Kept at {c:0} °C or warmer it would reach {what} within {Math.Ceiling(hours):0} h from then, if the data sheet allows that warmth.");
            }
        }

        return FormattableString.Invariant($"No room up to {warmest:0.#} °C gets it there within {WarmHours:0} h.");
    }
}
