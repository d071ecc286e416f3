using Studio.Engine.Parts;
using Studio.Pieces;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>Whether a piece holds button cells, by what the catalogue says of its fittings and by no word of their names.</summary>
/// <param name="Lit">Something in it gives light.</param>
/// <param name="Holds">At least one fitting is or takes a button cell.</param>
/// <param name="Unknown">Fittings of which nobody has said it, by name.</param>
public sealed record CellCaution(bool Lit, bool Holds, IReadOnlyList<CellUnknown> Unknown)
{
    private static readonly string[] Asked = ["light", "battery"];

    public static CellCaution Of(Piece piece, IReadOnlyList<Material> materials)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var fitted = piece.Fittings.Where(f => f.Count > 0).Select(f => (Fitting: f, Material: materials.FirstOrDefault(m => m.Id == f.MaterialId))).ToList();
        return new(
            piece.Former is not null || fitted.Exists(f => f.Material is { } m && Asked.Contains(m.Kind, StringComparer.Ordinal)),
            fitted.Exists(f => f.Material?.ButtonCell == true) || (piece.Parts?.Light is { } light && Cells.Find(light.Cell)?.Button == true),
            [.. fitted.Where(f => f.Material is null || (f.Material.ButtonCell is null && Asked.Contains(f.Material.Kind, StringComparer.Ordinal))).Select(f => new CellUnknown(f.Fitting.Name, f.Material?.Id))]);
    }
}

/// <summary>A fitting of which nobody has said whether it holds a button cell.</summary>
/// <param name="MaterialId">Where that is said; null where the stores do not hold it.</param>
public sealed record CellUnknown(string Name, int? MaterialId);
