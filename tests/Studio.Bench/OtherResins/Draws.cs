namespace Studio.Bench.Tools.OtherResins;

/// <summary>Numbers drawn for one resin, kept by name so that a resin that was foretold badly can be looked at.</summary>
internal sealed class Draws(int seed)
{
    private readonly Random random = new(seed);

    public Dictionary<string, double> Kept { get; } = new(StringComparer.Ordinal);

    /// <summary>Evenly between two numbers.</summary>
    public double Even(string name, double from, double to) => Kept[name] = from + ((to - from) * random.NextDouble());

    /// <summary>Evenly in the logarithm.</summary>
    public double Log(string name, double from, double to) => Kept[name] = from * Math.Pow(to / from, random.NextDouble());

    public bool Once(string name, double share) => (Kept[name] = random.NextDouble() < share ? 1 : 0) > 0;

    /// <summary>Standard normal (Box and Muller 1958).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
