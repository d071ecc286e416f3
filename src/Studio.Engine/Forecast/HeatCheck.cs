using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>Where a layer lies.</summary>
/// <param name="FromMm">Bottom [mm].</param>
/// <param name="ToMm">Top [mm].</param>
internal sealed record PlacedLayer(double FromMm, double ToMm);

/// <summary>Checks the input of <c>calc heat</c>.</summary>
internal static class HeatCheck
{
    private const double Tie = 1e-9;
    private const double LongestHours = 5000;
    private const int MostLayers = 40;

    /// <summary>Everything that takes no geometry.</summary>
    public static void Fields(HeatSpec spec, InputErrors errors)
    {
        Wall(spec.Wall, spec.WallStartCelsius, "mould.wall", errors);
        errors.Within("boundary.topWPerM2K", spec.Boundary.TopWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.sideWPerM2K", spec.Boundary.SideWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.bottomWPerM2K", spec.Boundary.BottomWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.voidWPerM2K", spec.Boundary.VoidWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("former.wPerM2K", spec.Fill?.WPerM2K, 0, 10_000, "W/(m² K)");
        if (spec.Layers.Count is 0 or > MostLayers)
        {
            errors.Add("layers", spec.Layers.Count == 0 ? "There is no layer. Give at least one." : FormattableString.Invariant($"There are {spec.Layers.Count} layers; at most {MostLayers} can be worked out at once."));
        }

        if (spec.Resins.Count == 0)
        {
            errors.Add("resins", "There is no resin. Give at least one, by an id that the layers name.");
        }

        foreach (var (id, resin) in spec.Resins)
        {
            Resin(resin, "resins." + id, errors);
        }

        Times(spec, errors);
    }

    /// <summary>A mould's wall.</summary>
    public static void Wall(WallSpec wall, double? startCelsius, string path, InputErrors errors)
    {
        errors.Positive(path + ".thicknessMm", wall.ThicknessMm, 1000, "mm");
        errors.Positive(path + ".floorMm", wall.FloorMm, 1000, "mm");
        errors.Within(path + ".roofMm", wall.RoofMm, 0, 1000, "mm");
        errors.Within(path + ".conductivityWPerMK", wall.ConductivityWPerMK, 0.01, 500, "W/(m K)");
        errors.Within(path + ".densityKgPerM3", wall.DensityKgPerM3, 10, 20_000, "kg/m³");
        errors.Within(path + ".heatCapacityJPerKgK", wall.HeatCapacityJPerKgK, 100, 10_000, "J/(kg K)");
        errors.Within(path + ".startCelsius", startCelsius, -30, 150, "°C");
    }

    /// <summary>Where the layers lie; null where one cannot be placed.</summary>
    public static IReadOnlyList<PlacedLayer>? Layers(HeatSpec spec, MouldBody? mould, InputErrors errors)
    {
        var placed = new List<PlacedLayer>();
        var from = 0.0;
        for (var i = 0; i < spec.Layers.Count; i++)
        {
            var (layer, path) = (spec.Layers[i], $"layers[{i}]");
            if (spec.Resins.Count > 0 && !spec.Resins.ContainsKey(layer.Resin))
            {
                errors.Add(path + ".resin", $"There is no resin '{layer.Resin}'. There are: {Choices.Few(spec.Resins.Keys)}.");
            }

            errors.Within(path + ".pouredCelsius", layer.PouredCelsius, -10, 80, "°C");
            if (errors.Within(path + ".pouredAtHours", layer.PouredAtHours, -1e6, 1e6, "h") && i > 0 && layer.PouredAtHours <= spec.Layers[i - 1].PouredAtHours)
            {
                errors.Add(path + ".pouredAtHours", FormattableString.Invariant($"The layer is poured at {layer.PouredAtHours} h, not after the one under it at {spec.Layers[i - 1].PouredAtHours} h. Give the pours in their order."));
            }

            // where one has no place, those above it have none either; their other fields are still looked at
            if (placed.Count == i && Place(layer, path, from, mould, errors) is { } to)
            {
                placed.Add(new(from, to));
                from = to;
            }
        }

        return placed.Count == spec.Layers.Count ? placed : null;
    }

    private static void Resin(HeatResin resin, string path, InputErrors errors)
    {
        if (resin is { Kinetics: null, DataSheet: null })
        {
            errors.Add(path, "A resin needs 'kinetics' or a 'dataSheet'. Give one of them.");
        }

        errors.Within(path + ".densityKgPerM3", resin.DensityKgPerM3, 200, 20_000, "kg/m³");
        errors.Within(path + ".heatCapacityJPerKgK", resin.HeatCapacityJPerKgK, 100, 10_000, "J/(kg K)");
        errors.Within(path + ".conductivityWPerMK", resin.ConductivityWPerMK, 0.01, 500, "W/(m K)");
        errors.Positive(path + ".maxPourMm", resin.MaxPourMm, 10_000, "mm");
        if (resin.Kinetics is { } kinetics)
        {
            KineticsCheck.Check(kinetics, path + ".kinetics", errors);
        }

        if (resin.DataSheet is { } sheet)
        {
            DataSheetCheck.Check(sheet, path + ".dataSheet", errors);
        }

        if (resin.ToFit is not { } fitted)
        {
            return;
        }

        foreach (var wrong in SheetRefusals.Of(fitted))
        {
            errors.Add($"{path}.dataSheet.{wrong.Path}", wrong.Message);
        }

        Unfitted("heatCapacityJPerKgK", resin.HeatCapacityJPerKgK, 1900, "J/(kg K)");
        Unfitted("conductivityWPerMK", resin.ConductivityWPerMK, 0.19, "W/(m K)");

        // the fit weighs the sheet's numbers with these two; another value would make it wrong
        void Unfitted(string name, double? given, double usual, string unit)
        {
            if (given is { } value && Math.Abs(value - usual) > Tie)
            {
                errors.Add($"{path}.{name}", FormattableString.Invariant($"A resin that is fitted to its data sheet is taken to have {usual} {unit}; leave this out, or give 'kinetics'."));
            }
        }
    }

    private static void Times(HeatSpec spec, InputErrors errors)
    {
        var pours = spec.Layers.Select(l => l.PouredAtHours).Where(double.IsFinite).DefaultIfEmpty(0).ToList();
        if (!(spec.UntilHours > pours.Max()) || spec.UntilHours > 1e7)
        {
            errors.Add("untilHours", FormattableString.Invariant($"Must be after the last pour at {pours.Max()} h."));
        }
        else if (spec.UntilHours - pours.Min() > LongestHours)
        {
            errors.Add("untilHours", FormattableString.Invariant($"Must be at most {LongestHours} h after the first pour."));
        }
    }

    private static double? Place(HeatLayerSpec layer, string path, double from, MouldBody? mould, InputErrors errors)
    {
        if ((layer.ThicknessMm is null) == (layer.ToMm is null))
        {
            errors.Add(path, "A layer needs exactly one of 'thicknessMm' and 'toMm'.");
            return null;
        }

        var sized = errors.Positive(path + ".thicknessMm", layer.ThicknessMm, Dimension.LongestMm, "mm") & errors.Positive(path + ".toMm", layer.ToMm, Dimension.LongestMm, "mm");
        if (!sized || mould is null)
        {
            return null;
        }

        var to = layer.ToMm ?? (from + layer.ThicknessMm!.Value);
        var rim = mould.HeightMm;
        if (to <= from + Tie)
        {
            errors.Add(path + ".toMm", FormattableString.Invariant($"The layer would end at {to} mm, not above the {from} mm where it starts."));
            return null;
        }

        if (to > rim + 1e-6)
        {
            errors.Add(path, FormattableString.Invariant($"The layer would end at {to} mm, above the rim at {rim} mm."));
            return null;
        }

        return Math.Min(to, rim);
    }
}
