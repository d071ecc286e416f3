using Studio.Engine.Moulds;

namespace Studio.Engine.Layers;

/// <summary>The space of one layer.</summary>
/// <param name="GrossMl">The mould alone [ml].</param>
/// <param name="FormerMl">Taken by the former [ml].</param>
/// <param name="SolidsMl">Taken by scatter and placed things [ml].</param>
/// <param name="CentroidMm">Height of the middle of the mould's space less the former [mm].</param>
/// <param name="ClearanceMm">Smallest room between former and wall [mm]; null where there is no former.</param>
internal sealed record LayerRoom(double GrossMl, double FormerMl, double SolidsMl, double CentroidMm, double? ClearanceMm)
{
    /// <summary>Former, scatter and placed [ml].</summary>
    public double DisplacedMl => FormerMl + SolidsMl;

    /// <summary>Measures the space between two heights.</summary>
    public static LayerRoom Of(LayerSpec layer, LayerLevel level, MouldBody mould, Former? former)
    {
        var (from, to) = (level.FromMm, level.ToMm);
        var grossMl = mould.VolumeMl(to) - mould.VolumeMl(from);
        var formerMl = former?.VolumeMl(from, to) ?? 0;
        var moment = mould.MomentMlMm(to) - mould.MomentMlMm(from) - (former?.MomentMlMm(from, to) ?? 0);
        var open = grossMl - formerMl;
        return new LayerRoom(grossMl, formerMl, Solids.VolumeMl(layer), open > 0 ? moment / open : from, former?.ClearanceMm(from, to));
    }
}
