namespace Studio.Engine.Moulds;

/// <summary>Checks the readings of a water fill.</summary>
public static class FillCheck
{
    private const double MostMl = 1e9;
    private const int MostReadings = 10_000;

    /// <summary>Adds an error for every reading that cannot be used.</summary>
    /// <returns>True when all can be.</returns>
    public static bool Usable(IReadOnlyList<FillReading> readings, string path, InputErrors errors)
    {
        if (readings.Count > MostReadings)
        {
            errors.Add(path, $"There are {readings.Count} readings; more than {MostReadings} cannot be worked with.");
            return false;
        }

        if (!readings.Any(r => r.HeightMm > 0))
        {
            errors.Add(path, "A measured mould needs at least one reading above its lowest point: pour a known amount of water in and give its height.");
            return false;
        }

        var good = true;
        for (var i = 0; i < readings.Count; i++)
        {
            good &= One(readings, i, $"{path}[{i}]", errors);
        }

        return good;
    }

    private static bool One(IReadOnlyList<FillReading> readings, int i, string path, InputErrors errors)
    {
        var (now, before) = (readings[i], i == 0 ? null : readings[i - 1]);
        if (!(errors.Within(path + ".heightMm", now.HeightMm, 0, Dimension.LongestMm, "mm") & errors.Within(path + ".volumeMl", now.VolumeMl, 0, MostMl, "ml")))
        {
            return false;
        }

        if (before is null)
        {
            return now switch
            {
                { HeightMm: 0, VolumeMl: > 0 } => Complain(path + ".volumeMl", $"At the lowest point there is no water yet; {now.VolumeMl} ml was given. Begin with 0 mm and 0 ml."),
                { HeightMm: > 0, VolumeMl: 0 } => Complain(path + ".volumeMl", $"No water cannot stand {now.HeightMm} mm high. Give the water poured in up to there."),
                _ => true,
            };
        }

        if (now.HeightMm <= before.HeightMm)
        {
            return Complain(path + ".heightMm", $"The readings must rise: {now.HeightMm} mm comes after {before.HeightMm} mm. Put them in the order they were taken, each once.");
        }

        return now.VolumeMl > before.VolumeMl || Complain(path + ".volumeMl", $"Higher water is more water: {now.VolumeMl} ml at {now.HeightMm} mm comes after {before.VolumeMl} ml at {before.HeightMm} mm. Read this mark again.");

        bool Complain(string at, FormattableString message)
        {
            errors.Add(at, FormattableString.Invariant(message));
            return false;
        }
    }
}
