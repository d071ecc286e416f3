namespace Studio.Engine.Cure;

/// <summary>What the clock refuses, and which readings it leaves out.</summary>
internal static class CureCheck
{
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
        }
    }

    internal static IReadOnlyList<Finding> RoomFindings(IReadOnlyList<RoomReading> room) =>
        [.. room.Index().Where(r => !Plausible(r.Item.Celsius)).Select(r => new Finding(
            "room-reading-implausible", Severity.Warn, $"room[{r.Index}]",
            FormattableString.Invariant($"A reading of {r.Item.Celsius:0.##} °C is left out of the calculation. {Guess(r.Item.Celsius)}"),
            "our rule: a workroom is between −30 and 60 °C"))];

    // 85 °C: power-on value of a common digital thermometer chip, from memory
    private static string Guess(double celsius) => celsius == 85
        ? "Some sensors report 85 °C before their first measurement; look at the thermometer and log the room again."
        : "Look at the thermometer and log the room again.";

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
