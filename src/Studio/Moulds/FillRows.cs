using System.Text.Json.Serialization;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One line of a water fill as it is typed.</summary>
public sealed class FillRow
{
    public double? HeightMm { get; set; }

    /// <summary>Water in ml, or its grams: one gram is one millilitre.</summary>
    public double? Water { get; set; }

    [JsonIgnore]
    public bool Empty => HeightMm is null && Water is null;
}

/// <summary>A water fill as it is typed, row by row.</summary>
public sealed class FillRows
{
    public List<FillRow> Rows { get; set; } = [new()];

    /// <summary>True when each row says what was added since the one before, false when it says all that is in.</summary>
    public bool Added { get; set; }

    /// <summary>True when the water was weighed.</summary>
    public bool Weighed { get; set; }

    /// <summary>Rows that can be read, each with its number; what was added without reading a height counts towards the next.</summary>
    [JsonIgnore]
    public IReadOnlyList<(int Row, FillReading Reading)> Complete
    {
        get
        {
            var (sum, list) = (0.0, new List<(int, FillReading)>());
            for (var i = 0; i < Rows.Count; i++)
            {
                sum = Added ? sum + (Rows[i].Water ?? 0) : Rows[i].Water ?? double.NaN;
                if (Rows[i] is { HeightMm: { } height, Water: not null })
                {
                    list.Add((i, new FillReading(height, sum)));
                }
            }

            return list;
        }
    }

    /// <summary>The fill from the bottom up, all that was in at each height.</summary>
    [JsonIgnore]
    public IReadOnlyList<FillReading> Readings => [.. Complete.Select(c => c.Reading)];

    public static FillRows Of(IEnumerable<FillReading> readings)
    {
        var rows = readings.Select(r => new FillRow { HeightMm = r.HeightMm, Water = r.VolumeMl }).ToList();
        return rows.Count == 0 ? new() : new() { Rows = rows };
    }

    /// <summary>Says every amount the other way: added since the row before, or in all. Nothing typed is lost.</summary>
    public void Count(bool added)
    {
        if (added == Added)
        {
            return;
        }

        Added = added;
        var before = 0.0;
        foreach (var row in Rows.Where(r => r.Water is not null))
        {
            var typed = row.Water!.Value;
            row.Water = Math.Round(added ? typed - before : typed + before, 9);
            before = added ? typed : row.Water.Value;
        }
    }

    /// <summary>What keeps rows from being used: the row, the field's name and a sentence.</summary>
    public IEnumerable<(int Row, string Field, string Message)> Complaints()
    {
        for (var i = 0; i < Rows.Count; i++)
        {
            if (Rows[i] is { HeightMm: null, Water: not null } && !(Added && i + 1 < Rows.Count))
            {
                yield return (i, "height", "How high did the water stand then?");
            }
            else if (Rows[i] is { HeightMm: not null, Water: null })
            {
                yield return (i, "water", "How much water was it?");
            }
        }
    }
}
