namespace Studio.Engine.Layers;

/// <summary>What the additions, the scatter and the placed things of one layer take up and weigh.</summary>
internal static class Solids
{
    /// <summary>Solid share of a loose heap when nothing is given (random packing lies between 0.55 and 0.64; Jerkins et al. 2008, Scott and Kilgour 1969).</summary>
    public const double UsualPacking = 0.6;

    /// <summary>Volume the resin flows around [ml].</summary>
    public static double VolumeMl(ScatterSpec s) => s.BulkMl is { } bulk ? bulk * (s.PackingFraction ?? UsualPacking) : s.MassG!.Value / s.DensityGPerMl!.Value;

    /// <summary>Volume of the heap with the gaps in it [ml].</summary>
    public static double BulkMl(ScatterSpec s) => s.BulkMl ?? (VolumeMl(s) / (s.PackingFraction ?? UsualPacking));

    /// <summary>Volume displaced [ml].</summary>
    public static double VolumeMl(PlacedSpec p) => p.DisplacedMl ?? (p.MassG!.Value / p.DensityGPerMl!.Value);

    /// <summary>Scatter and placed together [ml].</summary>
    public static double VolumeMl(LayerSpec layer) => layer.Scatter.Sum(VolumeMl) + layer.Placed.Sum(VolumeMl);

    /// <summary>Volume of resin and its additions, for 1 ml of resin of that density.</summary>
    public static double MixedMlPerResinMl(LayerSpec layer, double resinGPerMl) =>
        1 + layer.Additions.Sum(a => a.PercentOfResin / 100 * resinGPerMl / a.DensityGPerMl);

    /// <summary>Everything loose or placed that was weighed [g].</summary>
    public static double WeighedG(LayerSpec layer) => layer.Scatter.Sum(s => s.MassG ?? 0) + layer.Placed.Sum(p => p.MassG ?? 0);

    /// <summary>What was weighed and has a density: its place in the layer, such as <c>placed[0]</c>, name, mass and density.</summary>
    public static IEnumerable<(string At, string Name, double MassG, double DensityGPerMl)> Weighed(LayerSpec layer) =>
        layer.Scatter.Select((s, j) => (At: $"scatter[{j}]", s.Name, s.MassG, s.DensityGPerMl))
            .Concat(layer.Placed.Select((p, j) => (At: $"placed[{j}]", p.Name, p.MassG, p.DensityGPerMl)))
            .Where(t => t.MassG > 0 && t.DensityGPerMl > 0)
            .Select(t => (t.At, t.Name, t.MassG!.Value, t.DensityGPerMl!.Value));

    /// <summary>What was weighed and is lighter than the resin: name and upward force in grams-force (Archimedes).</summary>
    public static IEnumerable<(string Name, double LiftGf)> Floating(LayerSpec layer, double resinGPerMl) =>
        Weighed(layer).Where(t => t.DensityGPerMl < resinGPerMl).Select(t => (t.Name, ((resinGPerMl / t.DensityGPerMl) - 1) * t.MassG));
}
