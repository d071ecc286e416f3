using Studio.Keepsakes;

namespace Studio.Pieces;

/// <summary>How much room a keepsake takes, to begin with: the maker weighs and corrects.</summary>
public static class PlacedStart
{
    // typical densities [g/ml]: brass and iron from Gere, Mechanics of Materials, table H-1; glass from Callister table B.1; oak from the CRC handbook; cotton from Morton and Hearle table 5.1
    private static readonly Dictionary<string, double> Densities = new(StringComparer.Ordinal)
    {
        ["brass"] = 8.5,
        ["iron"] = 7.85,
        ["glass"] = 2.5,
        ["wood"] = 0.7,
        ["textile"] = 1.52,
    };

    /// <summary>A keepsake set in: by its mass where a density is known, else as something that takes next to no room, as paper does.</summary>
    public static LayerPlaced Of(Keepsake keepsake)
    {
        var name = $"{keepsake.Description} ({keepsake.EntryNumber})";
        return keepsake.MassG is { } mass && Densities.TryGetValue(keepsake.Kind, out var density)
            ? new LayerPlaced(keepsake.Id, name, mass, density, null)
            : new LayerPlaced(keepsake.Id, name, null, null, 0);
    }

    /// <summary>A copy of a keepsake: ours, not theirs, so it is not the keepsake any more.</summary>
    public static LayerPlaced Copy(Keepsake keepsake) => new(null, $"Copy of {keepsake.Description} ({keepsake.EntryNumber})", null, null, 0) { CopyOf = keepsake.Id };
}
