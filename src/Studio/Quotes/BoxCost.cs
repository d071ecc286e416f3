using Studio.Engine.Parts;
using Studio.Pieces;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>Sheet for the box that keeps room for lights and its cover: the parts as they are cut, by their mass.</summary>
public sealed class BoxCost : ICostLine
{
    public const string Key = "box";

    /// <summary>The catalogue's sheet, of which a box is made where nothing else is the only plastic.</summary>
    public const string CatalogueSheet = "Acrylic sheet";

    public string Kind => Key;

    public string Label => "Box for the lights";

    public IEnumerable<BoughtLine> Bought(QuoteSource source)
    {
        var ml = Parts(source.Piece).Sum(p => p.WidthMm * p.HeightMm * p.SheetMm * p.Count) / 1000;
        if (ml <= 0)
        {
            yield break;
        }

        var sheet = Sheet([.. source.Materials.Where(m => m is { Kind: "plastic", Unit: "g", Retired: false, DensityGPerMl: > 0 })]);
        yield return sheet is null
            ? new("Sheet for the box", "ml", Rounded(ml), null, null, "The sheet for the box has no price. Enter it as a plastic under Stores, by its mass, or its price here.")
            : sheet is { PackSize: > 0, PackPrice: > 0 }
                ? new(sheet.Name, "g", Rounded(ml * sheet.DensityGPerMl!.Value), (decimal)sheet.PackSize, sheet.PackPrice) { MaterialId = sheet.Id }
                : new(sheet.Name, "g", Rounded(ml * sheet.DensityGPerMl!.Value), null, null, $"{sheet.Name} has no price by the gram. Enter its pack under Stores.") { MaterialId = sheet.Id };
    }

    /// <summary>What is cut from sheet for a piece; nothing where no box is drawn or it cannot be worked out.</summary>
    public static IReadOnlyList<SheetPart> Parts(Piece piece) => piece.Former is null ? [] : PieceBook.Parts(piece).Parts;

    private static Material? Sheet(IReadOnlyList<Material> plastics) =>
        plastics.FirstOrDefault(m => m.Name == CatalogueSheet) ?? (plastics.Count == 1 ? plastics[0] : null);

    private static decimal Rounded(double amount) => decimal.Round((decimal)amount, 1, MidpointRounding.AwayFromZero);
}
