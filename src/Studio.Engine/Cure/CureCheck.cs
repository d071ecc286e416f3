namespace Studio.Engine.Cure;

/// <summary>What the clock refuses, and which readings it leaves out.</summary>
internal static class CureCheck
{
    private const int MostNamed = 20;

    // a workroom is not this hot; a warm cupboard may be
    private const double HotC = 45;

    internal static bool Plausible(double celsius) => celsius is >= RoomCurve.LowestC and <= RoomCurve.HighestC;

    internal static void Readings(IReadOnlyList<RoomReading> room)
    {
        for (var i = 0; i < room.Count; i++)
        {
            if (!double.IsFinite(room[i].Hours) || !double.IsFinite(room[i].Celsius))
            {
                throw new ArgumentException($"room[{i}] must be a finite time [h] and a finite temperature [°C].", nameof(room));
            }
        }
    }

    internal static void Layers(IReadOnlyList<PouredLayer> layers, double untilHours)
    {
        if (double.IsNaN(untilHours))
        {
            throw new ArgumentException("Must be a number of hours.", nameof(untilHours));
        }

        foreach (var layer in layers)
        {
            Require.Within(layer.PouredAtHours, double.MinValue, double.MaxValue, "h", nameof(layer.PouredAtHours));
            Sheet(layer.Sheet);
            if (layer.Kinetics is { } kinetics)
            {
                KineticsCheck.Require(kinetics);
            }
        }
    }

    /// <summary>Each reading that is left out, the first few by name; a warm one that is kept but may be of another scale.</summary>
    internal static IReadOnlyList<Finding> RoomFindings(IReadOnlyList<RoomReading> room)
    {
        var findings = new List<Finding>();
        var (leftOut, hot) = (0, -1);
        for (var i = 0; i < room.Count; i++)
        {
            if (Plausible(room[i].Celsius))
            {
                hot = hot < 0 && room[i].Celsius > HotC ? i : hot;
            }
            else if (++leftOut <= MostNamed)
            {
                findings.Add(LeftOut($"room[{i}]", FormattableString.Invariant($"A reading of {room[i].Celsius:0.##} °C is left out of the calculation. {Guess(room[i].Celsius)}")));
            }
        }

        if (leftOut > MostNamed)
        {
            findings.Add(LeftOut("room", FormattableString.Invariant($"{leftOut - MostNamed} more readings below −30 or above 60 °C are left out likewise.")));
        }

        if (hot >= 0)
        {
            findings.Add(new("hot-room-doubtful", Severity.Warn, $"room[{hot}]", FormattableString.Invariant(
                $"{room[hot].Celsius:0.##} °C is hot for a workroom; as °F it would be {Celsius(room[hot].Celsius):0.#} °C. If it is °F, everything told here is too early: log it again in °C."), "our rule"));
        }

        return findings;
    }

    private static Finding LeftOut(string path, string message) =>
        new("room-reading-implausible", Severity.Warn, path, message, "our rule: a workroom is between −30 and 60 °C");

    // 85 °C: power-on value of a common digital thermometer chip, from memory
    private static string Guess(double celsius) => celsius switch
    {
        85 => "Some sensors report 85 °C before their first measurement; look at the thermometer and log the room again.",
        > RoomCurve.HighestC and <= 110 => FormattableString.Invariant($"If it is °F, it is {Celsius(celsius):0.#} °C: log the room again in °C."),
        _ => "Look at the thermometer and log the room again.",
    };

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    private static void Sheet(CureSheet sheet)
    {
        Require.Within(sheet.FactorPer10C, 1, 10, "times per 10 °C", nameof(sheet.FactorPer10C));
        var min = Require.Within(sheet.MinC ?? -50, -50, 150, "°C", nameof(sheet.MinC));
        Require.Within(sheet.MaxC ?? 150, min, 150, "°C", nameof(sheet.MaxC));
        foreach (var times in sheet.Times)
        {
            Require.Within(times.AtCelsius, -50, 150, "°C", nameof(times.AtCelsius));
            Hours(times.GelHours);
            Hours(times.NextPourFromHours);
            Hours(times.NextPourUntilHours);
            Hours(times.DemouldHours);
            Hours(times.FullCureHours);
        }
    }

    private static void Hours(double? hours) => Require.Positive(hours ?? 1, "h", "printed hours");
}
