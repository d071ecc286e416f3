using Studio.Engine.Moulds;
using Studio.Resins;

namespace Studio.Pieces;

/// <summary>With what layers a new piece begins; the maker chooses, nothing is assumed.</summary>
public static class PieceStart
{
    public const string Empty = "empty";
    public const string Clear = "clear";
    public const string Colours = "colours";

    private const double ColourShare = 0.2;

    /// <summary>Key, label, what it means.</summary>
    public static IReadOnlyList<(string Key, string Label, string Means)> All { get; } =
    [
        (Empty, "An empty mould", "You add every layer yourself."),
        (Clear, "Clear to the rim", "In as many pours as the resin's data sheet asks for; then draw the lines you want."),
        (Colours, "Colour, clear, colour", "A coloured layer, clear ones for what they gave you, a coloured one, none deeper than the resin's data sheet allows. Move the lines as you like."),
    ];

    /// <summary>The layers of a choice, in pouring order.</summary>
    public static List<PieceLayer> Layers(string start, MouldSpec mould, IReadOnlyList<Resin> resins)
    {
        if (resins.Count == 0 || MouldShapes.Make(mould) is not { Ok: true } made)
        {
            return [];
        }

        var height = made.Value.HeightMm;
        var deep = resins.FirstOrDefault(r => r.Class == "deepPour") ?? resins[0];
        var thin = resins.FirstOrDefault(r => r.Class == "casting") ?? resins[0];
        var colour = Math.Min(Math.Max(1, Math.Round(height * ColourShare)), thin.MaxPourMm ?? height);
        List<PieceLayer> layers = start switch
        {
            Clear => [.. Pours(deep, 0, height)],
            Colours when height > 3 * colour => [Layer("First colour", thin, colour, "#7d6a94"), .. Pours(deep, colour, height - colour), Layer("Last colour", thin, height, "#b98a3d")],
            Colours => [Layer("First colour", thin, height / 3, "#7d6a94"), .. Pours(deep, height / 3, height * 2 / 3), Layer("Last colour", thin, height, "#b98a3d")],
            _ => [],
        };
        for (var i = 0; i < layers.Count; i++)
        {
            layers[i].Order = i;
        }

        return layers;
    }

    // equal pours, none deeper than the sheet allows; whole millimetres where that leaves room
    private static IEnumerable<PieceLayer> Pours(Resin resin, double fromMm, double toMm)
    {
        var count = Math.Max(1, (int)Math.Ceiling((toMm - fromMm) / (resin.MaxPourMm ?? (toMm - fromMm))));
        var each = (toMm - fromMm) / count;
        for (var i = 1; i <= count; i++)
        {
            var exact = fromMm + ((toMm - fromMm) * i / count);
            var top = i == count || each < 2 || resin.MaxPourMm - each < 1 ? exact : Math.Floor(exact);
            yield return Layer(count == 1 ? "Clear, for the keepsakes" : $"Clear, pour {i} of {count}", resin, top, "#dbe6e8");
        }
    }

    private static PieceLayer Layer(string name, Resin resin, double toMm, string colour) =>
        new() { Name = name, ResinId = resin.Id, ToMm = toMm, Colour = colour };
}
