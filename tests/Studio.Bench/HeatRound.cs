using System.Globalization;
using Studio.Engine.Heat;
using Studio.Engine.Tests.Forecast;

namespace Studio.Bench.Tools;

/// <summary>What a round body of the same areas is wrong by, beside three dimensions.</summary>
internal static class HeatRound
{
    /// <summary>Prints each layer in three dimensions and of the round body.</summary>
    /// <param name="of">A word of the names that are run; empty for all.</param>
    public static int Run(string of)
    {
        foreach (var one in RoundCases.All.Where(c => c.Name.Contains(of, StringComparison.Ordinal)))
        {
            if (one.Run() is not var (sides, round))
            {
                Console.WriteLine($"{one.Name}: no answer");
                continue;
            }

            for (var i = 0; i < sides.Count; i++)
            {
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{one.Name};{i};{Words(sides[i])};{Words(round[i])}"));
            }
        }

        return 0;
    }

    private static string Words(LayerHeat l) => string.Create(
        CultureInfo.InvariantCulture,
        $"{l.PeakCelsius:0.00};{l.PeakAfterHours:0.000};{l.MouldFacePeakCelsius:0.00};{l.FirstGelAfterHours:0.000};{l.LastGelAfterHours:0.000};{l.LeastConversion:0.0000};{l.MeanConversion:0.0000}");
}
