using Studio.Engine.Moulds;
using Studio.Resins;

namespace Studio.Pieces;

/// <summary>With what layers a new piece begins; the maker chooses, nothing is assumed.</summary>
public static class PieceStart
{
    public const string Empty = "empty";
    public const string One = "one";
    public const string Three = "three";

    private const double BaseShare = 0.25;
    private const double ClearShare = 0.8;

    /// <summary>Key, label, what it means.</summary>
    public static IReadOnlyList<(string Key, string Label, string Means)> All { get; } =
    [
        (Empty, "An empty mould", "You add every layer yourself."),
        (One, "One clear layer", "Filled to the rim in one; then draw the lines you want."),
        (Three, "Three layers", "A coloured one, a thick clear one for what they gave you, a coloured one. Move the lines as you like."),
    ];

    /// <summary>The layers of a choice, in pouring order.</summary>
    public static List<PieceLayer> Layers(string start, MouldSpec mould, IReadOnlyList<Resin> resins)
    {
        if (resins.Count == 0 || MouldShapes.Make(mould) is not { Ok: true } made)
        {
            return [];
        }

        var height = made.Value.HeightMm;
        var clear = resins.FirstOrDefault(r => r.Class == "deepPour") ?? resins[0];
        var thin = resins.FirstOrDefault(r => r.Class == "casting") ?? resins[0];
        return start switch
        {
            One => [Layer(0, "Clear", clear, height, "#dbe6e8")],
            Three =>
            [
                Layer(0, "First colour", thin, Whole(height * BaseShare), "#7d6a94"),
                Layer(1, "Clear, with the keepsakes", clear, Whole(height * ClearShare), "#dbe6e8"),
                Layer(2, "Last colour", thin, height, "#b98a3d"),
            ],
            _ => [],
        };
    }

    private static double Whole(double mm) => Math.Max(1, Math.Round(mm));

    private static PieceLayer Layer(int order, string name, Resin resin, double toMm, string colour) =>
        new() { Order = order, Name = name, ResinId = resin.Id, ToMm = toMm, Colour = colour };
}
