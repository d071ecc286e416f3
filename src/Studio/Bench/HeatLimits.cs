using Studio.Engine.Forecast;
using Studio.Pieces;

namespace Studio.Bench;

/// <summary>What a layer must not become hotter than: its resin, the mould, and what lies in it.</summary>
internal sealed class HeatLimits(IReadOnlyDictionary<int, Stores.Material> materials, IReadOnlyDictionary<int, string> keepsakeKinds)
{
    internal IReadOnlyList<HeatLimit> Of(Piece piece, PieceLayer layer, double fromMm, double toMm, HeatLimit? mould) =>
    [
        layer.Resin!.LimitC is { } own ? HeatLimit.Resin.From(own, $"data sheet of {layer.Resin.Name}") : HeatLimit.Resin,
        .. mould is null ? [] : new[] { mould },
        .. layer.Scatter.Select(s => s.MaterialId).OfType<int>().Distinct().Select(Material).OfType<HeatLimit>(),
        .. layer.Placed.Select(p => p.KeepsakeId).OfType<int>().Distinct().Select(Keepsake).OfType<HeatLimit>(),
        .. piece.Sheets.Exists(s => Lies(s.Place, fromMm, toMm)) ? new[] { HeatLimit.PrintedFilm } : [],
    ];

    private HeatLimit? Material(int id) => !materials.TryGetValue(id, out var m) ? null
        : m.LimitC is { } own ? new HeatLimit(m.Name, own, "its page in the stores")
        : m.Kind switch
        {
            "wax" => HeatLimit.Paraffin,
            "light" or "battery" => HeatLimit.Lights,
            "plastic" => HeatLimit.Acrylic,
            "film" => HeatLimit.PrintedFilm,
            _ => null,
        };

    private HeatLimit? Keepsake(int id) => keepsakeKinds.GetValueOrDefault(id) switch
    {
        "dried-flower" => HeatLimit.DriedFlowers,
        "electronics" or "battery" => HeatLimit.Lights,
        "plastic" => HeatLimit.Acrylic,
        _ => null,
    };

    private static bool Lies(Engine.Sheets.SheetSpec sheet, double fromMm, double toMm) => sheet.Placement == Engine.Sheets.SheetPlacement.Flat
        ? sheet.HeightMm >= fromMm && sheet.HeightMm <= toMm
        : sheet.FromMm < toMm && (sheet.ToMm ?? double.PositiveInfinity) > fromMm;
}
