using Studio.Engine.Cure;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>Checks the input of the heat equation.</summary>
internal static class HeatCheck
{
    private const double Tie = 1e-9;

    /// <summary>Everything that takes no geometry.</summary>
    public static void Fields(HeatSpec spec, int mostLayers, double longestHours, InputErrors errors)
    {
        var wall = spec.Wall;
        errors.Positive("mould.wall.thicknessMm", wall.ThicknessMm, 1000, "mm");
        errors.Positive("mould.wall.floorMm", wall.FloorMm, 1000, "mm");
        errors.Within("mould.wall.roofMm", wall.RoofMm, 0, 1000, "mm");
        errors.Within("mould.wall.conductivityWPerMK", wall.ConductivityWPerMK, 0.01, 500, "W/(m K)");
        errors.Within("mould.wall.densityKgPerM3", wall.DensityKgPerM3, 10, 20_000, "kg/m³");
        errors.Within("mould.wall.heatCapacityJPerKgK", wall.HeatCapacityJPerKgK, 100, 10_000, "J/(kg K)");
        errors.Within("mould.wall.startCelsius", spec.WallStartCelsius, -30, 150, "°C");
        errors.Within("boundary.topWPerM2K", spec.Boundary.TopWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.sideWPerM2K", spec.Boundary.SideWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.bottomWPerM2K", spec.Boundary.BottomWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("boundary.voidWPerM2K", spec.Boundary.VoidWPerM2K, 0, 10_000, "W/(m² K)");
        errors.Within("former.wPerM2K", spec.Fill?.WPerM2K, 0, 10_000, "W/(m² K)");
        Room(spec.Room, errors);
        if (spec.Layers.Count is 0 || spec.Layers.Count > mostLayers)
        {
            errors.Add("layers", spec.Layers.Count == 0 ? "There is no layer. Give at least one." : FormattableString.Invariant($"There are {spec.Layers.Count} layers; at most {mostLayers} can be worked out at once."));
        }

        if (spec.Resins.Count == 0)
        {
            errors.Add("resins", "There is no resin. Give at least one, by an id that the layers name.");
        }

        var last = spec.Layers.Select(l => l.PouredAtHours).DefaultIfEmpty(0).Max();
        if (!(spec.UntilHours > last) && errors.Clean("untilHours"))
        {
            errors.Add("untilHours", FormattableString.Invariant($"Must be after the last pour at {last} h."));
        }
        else if (spec.UntilHours - spec.Layers.Select(l => l.PouredAtHours).DefaultIfEmpty(0).Min() > longestHours)
        {
            errors.Add("untilHours", FormattableString.Invariant($"Must be at most {longestHours} h after the first pour."));
        }
    }

    /// <summary>The layers with their heights; null where one cannot be placed.</summary>
    public static IReadOnlyList<HeatLayer>? Layers(HeatSpec spec, Mould? mould, InputErrors errors)
    {
        var layers = new List<HeatLayer>();
        var room = spec.Room.Count > 0 && errors.Clean("room") ? new RoomCurve(spec.Room) : null;
        var (from, at) = (0.0, double.NegativeInfinity);
        for (var i = 0; i < spec.Layers.Count; i++)
        {
            var (layer, path) = (spec.Layers[i], $"layers[{i}]");
            if (Place(layer, path, from, mould, errors) is not { } to)
            {
                return null;
            }

            if (!spec.Resins.TryGetValue(layer.Resin, out var resin))
            {
                errors.Add(path + ".resin", $"There is no resin '{layer.Resin}'. There are: {string.Join(", ", spec.Resins.Keys)}.");
            }

            errors.Within(path + ".pouredCelsius", layer.PouredCelsius, -10, 80, "°C");
            errors.Within(path + ".pouredAtHours", layer.PouredAtHours, -1e6, 1e6, "h");
            if (layer.PouredAtHours <= at)
            {
                errors.Add(path + ".pouredAtHours", FormattableString.Invariant($"The layer is poured at {layer.PouredAtHours} h, not after the one under it at {at} h. Give the pours in their order."));
            }

            if (resin is not null && room is not null)
            {
                layers.Add(new HeatLayer(resin.Kinetics, resin.DensityKgPerM3, resin.HeatCapacityJPerKgK, resin.ConductivityWPerMK, from, to, layer.PouredAtHours, layer.PouredCelsius ?? room.CelsiusAt(layer.PouredAtHours)));
            }

            (from, at) = (to, layer.PouredAtHours);
        }

        return layers.Count == spec.Layers.Count ? layers : null;
    }

    private static double? Place(HeatLayerSpec layer, string path, double from, Mould? mould, InputErrors errors)
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

    private static void Room(IReadOnlyList<RoomReading> room, InputErrors errors)
    {
        if (room.Count == 0)
        {
            errors.Add("room", "There is no reading of the room. Give at least one.");
        }

        for (var i = 0; i < room.Count && errors.All.Count < 50; i++)
        {
            errors.Within($"room[{i}].hours", room[i].Hours, -1e7, 1e7, "h");
            if (!(room[i].Celsius >= RoomCurve.LowestC && room[i].Celsius <= RoomCurve.HighestC))
            {
                errors.Add($"room[{i}].celsius", FormattableString.Invariant($"A room at {room[i].Celsius} °C is not believed; it must lie between {RoomCurve.LowestC} and {RoomCurve.HighestC} °C. Some sensors report 85 when they fail, and a temperature in °F must be turned into °C first."));
            }
        }
    }
}
