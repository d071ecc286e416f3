namespace Studio.Engine.Cure;

/// <summary>Everything about the clock's input that cannot be used, all at once.</summary>
internal static class CureInputCheck
{
    // a hundred years of hours either way: more is a slip of the pen
    private const double MostHours = 1e6;
    private const int MostLayers = 200;

    internal static void Check(CureInput input, InputErrors errors)
    {
        Resins(input.Resins, errors);
        if (input.Layers.Count is 0 or > MostLayers)
        {
            errors.Add("layers", input.Layers.Count == 0 ? "There is no layer. Give at least one." : $"There are {input.Layers.Count} layers; at most {MostLayers} can be worked with.");
        }

        var order = new PourOrder(input.Layers);
        for (var i = 0; i < input.Layers.Count; i++)
        {
            Layer(input, i, order, errors);
        }

        Room(input.Room, errors);
        errors.Within("untilHours", input.UntilHours, -MostHours, MostHours, "h");
    }

    /// <summary>The resins, the same for <c>calc time</c>.</summary>
    internal static void Resins(IReadOnlyDictionary<string, CureResin> resins, InputErrors errors)
    {
        if (resins.Count == 0)
        {
            errors.Add("resins", "There is no resin. Give at least one, by an id that the layers name.");
        }

        foreach (var (id, resin) in resins)
        {
            Resin(resin, "resins." + id, errors);
        }
    }

    /// <summary>The room's readings, the same for <c>calc time</c>.</summary>
    internal static void Room(IReadOnlyList<RoomReading> room, InputErrors errors)
    {
        if (room.Count == 0)
        {
            errors.Add("room", "There is no reading of the room. Give at least one; nothing is guessed.");
        }

        for (var i = 0; i < room.Count; i++)
        {
            if (!double.IsFinite(room[i].Hours) || !double.IsFinite(room[i].Celsius))
            {
                continue; // said when it was read
            }

            if (Math.Abs(room[i].Hours) > MostHours)
            {
                errors.Within($"room[{i}].hours", room[i].Hours, -MostHours, MostHours, "h");
            }
        }
    }

    private static void Resin(CureResin resin, string path, InputErrors errors)
    {
        if (resin is { Kinetics: null, DataSheet: null })
        {
            errors.Add(path, "A resin needs 'kinetics' or a 'dataSheet', or both.");
        }

        errors.Positive(path + ".densityKgPerM3", resin.DensityKgPerM3, 1e5, "kg/m³");
        errors.Positive(path + ".heatCapacityJPerKgK", resin.HeatCapacityJPerKgK, 1e6, "J/(kg K)");
        errors.Positive(path + ".conductivityWPerMK", resin.ConductivityWPerMK, 1e4, "W/(m K)");
        if (resin.Kinetics is { } kinetics)
        {
            KineticsCheck.Check(kinetics, path + ".kinetics", errors);
        }

        if (resin.DataSheet is { } sheet)
        {
            DataSheetCheck.Check(sheet, path + ".dataSheet", errors);
        }
    }

    private static void Layer(CureInput input, int index, PourOrder order, InputErrors errors)
    {
        var (layer, path) = (input.Layers[index], $"layers[{index}]");
        errors.Named(path + ".name", layer.Name);
        if (input.Resins.Count > 0 && !input.Resins.ContainsKey(layer.Resin))
        {
            errors.Add(path + ".resin", $"There is no resin '{layer.Resin}'. There are: {Choices.Few(input.Resins.Keys)}.");
        }

        errors.Positive(path + ".thicknessMm", layer.ThicknessMm, 10_000, "mm");
        errors.Within(path + ".pouredCelsius", layer.PouredCelsius, -20, 80, "°C");
        errors.Within(path + ".pouredAtHours", layer.PouredAtHours, -MostHours, MostHours, "h");
        if (layer.PouredAtHours is null == layer.AfterGelOf is null)
        {
            errors.Add(path, "A layer needs exactly one of 'pouredAtHours' and 'afterGelOf', to say when it is poured.");
        }
        else if (layer.AfterGelOf is { } named)
        {
            After(input.Layers, index, named, order, errors);
        }
    }

    private static void After(IReadOnlyList<CureLayer> layers, int index, string named, PourOrder order, InputErrors errors)
    {
        var at = $"layers[{index}].afterGelOf";
        switch (order.Called(named))
        {
            case 0:
                errors.Add(at, $"There is no layer '{named}'. There are: {Choices.Few(layers.Select(l => l.Name))}.");
                break;
            case > 1:
                errors.Add(at, $"More than one layer is called '{named}'. Give each a name of its own.");
                break;
            case 1 when order.InCircle(index):
                errors.Add(at, $"Layer '{layers[index].Name}' waits for itself by way of '{named}'. Give one of them 'pouredAtHours'.");
                break;
        }
    }
}
