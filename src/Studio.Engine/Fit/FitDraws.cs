namespace Studio.Engine.Fit;

/// <summary>Standard normal draws, the same ones every time: in pairs of opposite sign, each number's variance made exactly one.</summary>
internal static class FitDraws
{
    private const ulong Start = 20251125;

    /// <summary>Numbers of one draw: those that are fitted, and those of what nothing that is seen can tell (<see cref="FitMembers"/>).</summary>
    public const int Width = FitNumbers.Count + 4;

    public static IReadOnlyList<double[]> Of(int count)
    {
        if (count < 4 || count % 2 != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, "Draws come in pairs; at least four.");
        }

        var state = Start;
        var half = Enumerable.Range(0, count / 2).Select(_ => Enumerable.Range(0, Width).Select(_ => Normal(ref state)).ToArray()).ToList();
        for (var i = 0; i < Width; i++)
        {
            var sd = Math.Sqrt(half.Sum(z => z[i] * z[i]) / half.Count);
            half.ForEach(z => z[i] /= sd);
        }

        return [.. half.SelectMany(z => new[] { z, [.. z.Select(x => -x)] })];
    }

    // Box and Muller (1958) over SplitMix64 (Steele, Lea and Flood 2014)
    private static double Normal(ref ulong state) => Math.Sqrt(-2 * Math.Log(1 - Even(ref state))) * Math.Cos(2 * Math.PI * Even(ref state));

    private static double Even(ref ulong state)
    {
        var z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
