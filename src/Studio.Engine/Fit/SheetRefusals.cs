using Studio.Engine.Cure;
namespace Studio.Engine.Fit;

/// <summary>Numbers that no data sheet can print.</summary>
internal static class SheetRefusals
{
    public static IReadOnlyList<InputError> Of(DataSheet sheet)
    {
        var errors = new List<InputError>();
        if (ResinClass.Find(sheet.Class) is null)
        {
            errors.Add(new("class", $"There is no class '{sheet.Class}'. There are: {string.Join(", ", ResinClass.All.Select(c => c.Key))}."));
        }

        if (sheet.PrintedAtC is > 45 and <= 113)
        {
            errors.Add(new("atCelsius", FormattableString.Invariant($"{sheet.PrintedAtC:0.#} °C is no temperature to cast at. If the sheet means °F, give {(sheet.PrintedAtC - 32) / 1.8:0.#}.")));
        }
        else
        {
            Within("atCelsius", sheet.PrintedAtC, 0, 45, "°C");
        }

        Within("potLifeMinutes", sheet.PotLifeMinutes, 1, 10_000, "min");
        Within("gelMinutes", sheet.GelMinutes, 1, 20_000, "min");
        Within("cupMassG", sheet.CupMassG, 5, 50_000, "g");
        Within("peakCelsius", sheet.PeakCelsius, double.IsFinite(sheet.PrintedAtC) ? sheet.PrintedAtC + 1 : 1, 600, "°C");
        Within("maxPourMm", sheet.MaxPourMm, 0.5, 300, "mm");
        Within("demouldHours", sheet.DemouldHours, 0.1, 1000, "h");
        Within("fullCureHours", sheet.FullCureHours, 0.5, 5000, "h");
        Within("glassEndC", sheet.GlassEndC, 25, 200, "°C");
        Within("densityKgPerM3", sheet.DensityKgPerM3, 700, 2500, "kg/m³");
        return errors;

        void Within(string name, double? given, double least, double most, string unit)
        {
            if (given is { } value && !(value >= least && value <= most))
            {
                errors.Add(new(name, FormattableString.Invariant($"Must lie between {least:0.##} and {most:0.##} {unit}; {value:0.##} was given. Look at the sheet's unit.")));
            }
        }
    }
}
