using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>The doubts of the trade about a heated layer, each a sentence that says what to do.</summary>
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
    private const double SlabCritical = 0.878458;

    /// <summary>Everything to be said about one layer.</summary>
    internal static IEnumerable<LayerWarning> OfLayer(HeatSpec spec, HeatInput input, Mould mould, HeatOutcome outcome, int i)
    {
        var (layer, heat) = (input.Layers[i], outcome.Layers[i]);
        var number = FrankKamenetskii(input, mould, i);
        if (heat.PeakCelsius > RunawayC || (number.Delta > number.Critical && heat.PeakCelsius > OverheatsC))
        {
            yield return Say("runaway", $"Run-away: do not pour. The reaction outruns the cooling (computed peak {heat.PeakCelsius:0} °C, Frank-Kamenetskii number {number.Delta:0.0#} against a critical {number.Critical:0.0#}). Pour thinner layers, in a cooler room, or with a slower resin.");
        }
        else if (heat.PeakCelsius > OverheatsC)
        {
            yield return Say("overheats", $"The layer would reach {heat.PeakCelsius:0} °C after {heat.PeakAfterHours:0.#} h; above {OverheatsC:0} °C clear resin yellows and may crack. Pour it thinner, in two, in a cooler room, or with a slower resin.");
        }

        if (heat.MouldFacePeakCelsius > MouldFaceC)
        {
            yield return Say("mould-face-hot", $"Where it touches the mould it reaches {heat.MouldFacePeakCelsius:0} °C; above {MouldFaceC:0} °C resin may bond to silicone and wears it out.");
        }

        if (heat.SteepestFallKPerH > SteepKPerH && heat.PeakCelsius > 50)
        {
            yield return Say("steep-cooling", $"After its peak it cools by up to {heat.SteepestFallKPerH:0} K an hour, which strains it. Cover it, and do not move it to the cold.");
        }

        if (i > 0 && TooEarly(outcome.Layers[i - 1], input.Layers[i].PouredAtHours - input.Layers[i - 1].PouredAtHours) is { } early)
        {
            yield return Say("next-pour-too-early", early);
        }

        if (spec.Resins[spec.Layers[i].Resin].MaxPourMm is { } most && layer.ToMm - layer.FromMm > most + 1e-9)
        {
            yield return Say("outside-data-sheet", $"The layer is {layer.ToMm - layer.FromMm:0.#} mm deep and the data sheet allows {most:0.#} mm; the sheet goes before any model.");
        }
    }

    /// <summary>What the room itself raises.</summary>
    internal static IEnumerable<LayerWarning> OfRoom(HeatInput input, RoomCurve room)
    {
        var coldest = room.Range(input.Layers[0].PouredAtHours, input.UntilHours).MinC;
        if (coldest < ColdC)
        {
            yield return Say("cold-room", $"The room falls to {coldest:0.#} °C. Below {ColdC:0} °C a cure may stop short of what the sheet promises; warm the room, and look at the sheet for its lowest temperature.");
        }
    }

    /// <summary>
    /// Frank-Kamenetskii's number of a layer at the temperature it starts from, by half its depth, and the critical one of its shape. The critical numbers of the slab
    /// (0.8785), through the depth and through each width, add up by the square of their lengths (a square rod then has 1.757 for the exact 1.702); each is lowered by
    /// Barzykin's factor for the film and the wall in front of it. The resin used up is left out, so the number is a hint and never a permission.
    /// </summary>
    internal static (double Delta, double Critical) FrankKamenetskii(HeatInput input, Mould mould, int i)
    {
        var layer = input.Layers[i];
        var kinetics = layer.Kinetics;
        var half = (layer.ToMm - layer.FromMm) / 2000;
        var kelvin = layer.PouredCelsius + 273.15;
        var fastest = Enumerable.Range(0, 100).Max(k => kinetics.Order(k / 100.0));
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

    private static string? TooEarly(LayerHeat under, double hours)
    {
        var end = under.Curve[^1];
        return under.FirstGelAfterHours is null ? FormattableString.Invariant($"The layer under it has not gelled anywhere after {hours:0.#} h: what is poured would mix with it. Wait.")
            : under.LastGelAfterHours is null ? FormattableString.Invariant($"The layer under it has not gelled everywhere after {hours:0.#} h. Wait, or warm the room.")
            : under.PeakAfterHours >= end.AfterHours * 0.999 ? FormattableString.Invariant($"The layer under it is still getting warmer after {hours:0.#} h; its heat would add to this one's. Wait until it is past its peak.")
            : null;
    }

    private static LayerWarning Say(string code, FormattableString message) => new(code, FormattableString.Invariant(message));

    private static LayerWarning Say(string code, string message) => new(code, message);
}
