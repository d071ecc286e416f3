using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>The doubts of the trade about a heated layer, each a sentence that says what to do. What is fitted is judged by its upper bound.</summary>
public static class HeatFindings
{
    /// <summary>Above this no number is shown: do not pour [°C]. There a real resin decomposes and the mesh errs by many kelvin (our study).</summary>
    public const double RunawayC = 120;

    /// <summary>Above this a clear casting yellows and cracks [°C]; common practice, no source.</summary>
    public const double OverheatsC = 75;

    /// <summary>Above this resin tends to bond to silicone and to wear it out [°C]; common practice, no source.</summary>
    public const double MouldFaceC = 65;

    /// <summary>A hot layer that falls faster than this is strained [K/h]; our rule.</summary>
    public const double SteepKPerH = 12;

    private const double ColdC = 16;
    private const double StrainedC = 50;
    private const double SlabCritical = 0.878458;
    private const string NoSource = "common practice, no source";
    private const string OurRule = "our rule";
    private const string Sheet = "data sheet";

    /// <summary>Everything to be said about one layer.</summary>
    internal static IEnumerable<Finding> OfLayer(HeatInput input, MouldBody mould, ForecastOutcome told, IReadOnlyList<HeatResin> resins, int i)
    {
        var (layer, heat) = (input.Layers[i], told.Layers[i]);
        var fitted = heat.Intervals is not null;
        var number = FrankKamenetskii(input, mould, i);
        if (heat.PeakHighC > RunawayC || (number.Delta > number.Critical && heat.PeakHighC > OverheatsC))
        {
            var bound = $"computed peak {Shown(heat.PeakC)}" + (fitted ? $", upper bound {Shown(heat.PeakHighC)}" : "");
            yield return Say("runaway", Severity.Stop, $"Run-away: do not pour. The reaction outruns the cooling ({bound}, Frank-Kamenetskii number {number.Delta:0.0#} against a critical {number.Critical:0.0#}). No temperature above {RunawayC:0} °C is told, because no grid finds it; if nothing cooled it, it would reach {heat.AdiabaticC:0} °C. Resin that hot smokes, cracks and burns. Pour thinner layers, in a cooler room, or with a slower resin.", "Frank-Kamenetskii; our study");
        }

        if (heat.PeakHighC > OverheatsC)
        {
            var reach = fitted
                ? FormattableString.Invariant($"The layer may reach {Shown(heat.PeakHighC)} (most probably {Shown(heat.PeakC)}, after {heat.PeakAfterHours:0.#} h)")
                : FormattableString.Invariant($"The layer would reach {Shown(heat.PeakC)} after {heat.PeakAfterHours:0.#} h");
            yield return Say("overheats", Severity.Warn, $"{reach}; above {OverheatsC:0} °C clear resin yellows and may crack. Pour it thinner, in two, in a cooler room, or with a slower resin.", NoSource);
        }

        if (heat.FaceHighC > MouldFaceC)
        {
            yield return Say("mould-face-hot", Severity.Warn, $"Where it touches the mould it {(fitted ? "may reach" : "reaches")} {Shown(heat.FaceHighC)}; above {MouldFaceC:0} °C resin may bond to silicone and wears it out.", NoSource);
        }

        if (heat.Best.SteepestFallKPerH > SteepKPerH && heat.PeakHighC > StrainedC)
        {
            yield return Say("steep-cooling", Severity.Warn, $"After its peak it cools by up to {heat.Best.SteepestFallKPerH:0} K an hour, which strains it. Cover it, and do not move it to the cold.", OurRule);
        }

        foreach (var finding in OfTheSheet())
        {
            yield return finding;
        }

        IEnumerable<Finding> OfTheSheet()
        {
            if (i > 0)
            {
                var hours = layer.PouredAtHours - input.Layers[i - 1].PouredAtHours;
                if (TooEarly(told.Layers[i - 1], hours, resins[i - 1].DataSheet?.NextPourFromHours) is { } early)
                {
                    yield return new("next-pour-too-early", early.Severity, Path(i), early.Message, early.Source);
                }

                if (resins[i - 1].DataSheet?.NextPourUntilHours is { } until && hours > until)
                {
                    yield return Say("outside-data-sheet", Severity.Warn, $"It is poured {hours:0.#} h after the layer under it, whose sheet's window ends after {until:0.#} h. Abrade and clean that surface first, or the two may part.", Sheet);
                }
            }

            if (resins[i].Depth is { } most && layer.ToMm - layer.FromMm > most + 1e-9)
            {
                yield return Say("outside-data-sheet", Severity.Stop, $"The layer is {layer.ToMm - layer.FromMm:0.#} mm deep and the data sheet allows {most:0.#} mm; the sheet goes before any model.", Sheet);
            }
        }

        Finding Say(string code, Severity severity, FormattableString message, string source) => new(code, severity, Path(i), FormattableString.Invariant(message), source);
    }

    /// <summary>What the room itself raises.</summary>
    internal static IEnumerable<Finding> OfRoom(HeatInput input, RoomCurve room)
    {
        var coldest = room.Range(input.Layers[0].PouredAtHours, input.UntilHours).MinC;
        if (coldest < ColdC)
        {
            yield return new("cold-room", Severity.Warn, "room", FormattableString.Invariant($"The room falls to {coldest:0.#} °C. Below {ColdC:0} °C a cure may stop short of what the sheet promises; warm the room, and look at the sheet for its lowest temperature."), OurRule);
        }
    }

    /// <summary>
    /// Frank-Kamenetskii's number of a layer at the temperature it starts from, by half its depth, and the critical one of its shape. The critical numbers of the slab
    /// (0.8785), through the depth and through each width, add up by the square of their lengths (a square rod then has 1.757 for the exact 1.702); each is lowered by
    /// Barzykin's factor for the film and the wall in front of it. The resin used up is left out, so the number is a hint and never a permission.
    /// </summary>
    internal static (double Delta, double Critical) FrankKamenetskii(HeatInput input, MouldBody mould, int i)
    {
        var layer = input.Layers[i];
        var kinetics = layer.Kinetics;
        var half = (layer.ToMm - layer.FromMm) / 2000;
        var kelvin = layer.PouredCelsius + 273.15;
        var fastest = Enumerable.Range(0, 100).Max(k => kinetics.Order(k / 100.0, layer.PouredCelsius));
        var watts = layer.DensityKgPerM3 * kinetics.HeatJPerKg * kinetics.RatePerS(layer.PouredCelsius) * fastest;
        var delta = kinetics.ActivationJPerMol * watts * half * half / (Kinetics.GasConstant * kelvin * kelvin * layer.ConductivityWPerMK);
        var across = Math.Sqrt(mould.AreaMm2((layer.FromMm + layer.ToMm) / 2)) / 2000;
        var wall = input.Wall.ThicknessMm / 1000 / input.Wall.ConductivityWPerMK;
        var side = 1 / ((1 / Math.Max(1e-6, input.Boundary.SideWPerM2K)) + wall);
        var critical = Slab(input.Boundary.TopWPerM2K, half) + (2 * half * half / (across * across) * Slab(side, across));
        return (delta, critical);

        double Slab(double film, double length)
        {
            var biot = Math.Max(1e-9, film * length / layer.ConductivityWPerMK);
            var root = Math.Sqrt((biot * biot) + 4);
            return SlabCritical * biot / 2 * (root - biot) * Math.Exp((root - biot - 2) / biot);
        }
    }

    // above the bound of run-away digits are noise of the grid
    private static string Shown(double celsius) => celsius > RunawayC ? FormattableString.Invariant($"more than {RunawayC:0} °C") : FormattableString.Invariant($"{celsius:0} °C");

    private static string Path(int i) => FormattableString.Invariant($"layers[{i}]");

    // gel and peak are over all time: what counts is what they are when the next one is poured
    private static (Severity Severity, string Message, string Source)? TooEarly(ForecastLayer under, double hours, double? printed)
    {
        var (heat, intervals) = (under.Best, under.Intervals);
        bool Not(double? gel) => !(gel <= hours);
        if (Not(heat.FirstGelAfterHours))
        {
            return (Severity.Stop, FormattableString.Invariant($"The layer under it has not gelled anywhere after {hours:0.#} h: what is poured would mix with it. Wait."), OurRule);
        }

        string? said = Not(heat.LastGelAfterHours) ? FormattableString.Invariant($"The layer under it has not gelled everywhere after {hours:0.#} h. Wait, or warm the room.")
            : intervals is not null && Not(intervals.LastGelAfterHours?.To) ? FormattableString.Invariant($"The layer under it may not have gelled everywhere after {hours:0.#} h. Wait, and touch it first.")
            : heat.PeakBeforeNextPourAfterHours >= hours * 0.999 ? FormattableString.Invariant($"The layer under it is still getting warmer after {hours:0.#} h; its heat would add to this one's. Wait until it is past its peak.")
            : null;
        return said is not null ? (Severity.Warn, said, OurRule)
            : printed is { } from && hours < from - 1e-9 ? (Severity.Warn, FormattableString.Invariant($"It is poured {hours:0.#} h after the layer under it, whose sheet asks for {from:0.#} h; the sheet goes before any model."), Sheet)
            : null;
    }
}
