namespace Studio.Bench.Tools.OtherResins;

/// <summary>
/// One made-up resin. Its ranges are its own: wider than the fit's priors, none of them taken from the engine (activation energies as the study's table of published values,
/// the rest as handbooks have it, from memory).
/// </summary>
internal sealed record DrawnResin
{
    public static readonly string[] Forms = ["amine scheme", "two energies", "moving energy"];

    public required string Form { get; init; }

    public required DrawnMatter Matter { get; init; }

    public required DrawnKinetics Kinetics { get; init; }

    /// <summary>Conversion at which it no longer flows.</summary>
    public required double Gel { get; init; }

    /// <summary>Conversion at which its maker lets it leave the mould.</summary>
    public required double Demould { get; init; }

    /// <summary>How far the laboratory's figures scatter [ratio].</summary>
    public required double Scatter { get; init; }

    /// <summary>Peak of a slab that its maker will bear [°C].</summary>
    public required double BearableC { get; init; }

    /// <summary>On the maker's bench.</summary>
    public required DrawnFilms Laboratory { get; init; }

    /// <summary>In the workroom.</summary>
    public required DrawnFilms Workroom { get; init; }

    /// <summary>The workroom's silicone.</summary>
    public required DrawnWall Silicone { get; init; }

    /// <summary>Draws a resin on a time scale of 1 per second, to be set by its cup.</summary>
    public static DrawnResin Draw(Draws draws, int form)
    {
        var line = new GlassLine(draws.Once("tgLogarithmic", 0.5), draws.Even("tgStartC", -50, -25), draws.Even("tgEndC", 42, 75), draws.Even("tgBend", 0.35, 0.65));
        var chemistry = Chemical(draws, form);
        return new()
        {
            Form = Forms[form],
            Matter = new(
                draws.Even("density", 1030, 1180), draws.Even("conductivity", 0.15, 0.24), draws.Even("heat", 280e3, 450e3),
                draws.Even("heatCapacity", 1700, 2100), draws.Even("heatCapacityPerK", 1.5, 4), draws.Even("heatCapacityStep", 200, 500), line),
            Kinetics = new(chemistry, Slow(draws, line, chemistry), 1),
            Gel = draws.Even("gel", 0.50, 0.65),
            Demould = draws.Even("demould", 0.70, 0.86),
            Scatter = draws.Even("scatter", 0.08, 0.12),
            BearableC = draws.Even("bearableC", 45, 75),
            Laboratory = Films(draws, "laboratory"),
            Workroom = Films(draws, "workroom"),
            Silicone = new(draws.Even("siliconeConductivity", 0.22, 0.30), draws.Even("siliconeDensity", 1100, 1250), draws.Even("siliconeHeatCapacity", 1200, 1400)),
        };
    }

    private static Chemistry Chemical(Draws draws, int form) => form switch
    {
        0 => new AmineScheme(draws.Even("reactivity", 0.15, 0.9), draws.Even("amineRatio", 0.92, 1.08))
        {
            Impurity = draws.Log("impurity", 0.01, 0.12),
            Uncatalysed = draws.Log("uncatalysed", 0.001, 0.03),
            UncatalysedKJ = draws.Even("uncatalysedKJ", 60, 100),
            CatalysedKJ = draws.Even("catalysedKJ", 42, 68),
        },
        1 => new TwoEnergies(draws.Log("kappa", 0.008, 0.12), draws.Even("firstKJ", 60, 100), draws.Even("secondKJ", 42, 68), draws.Even("m", 0.6, 1.4), draws.Even("n", 1.3, 2.4)),
        _ => new MovingEnergy(
            draws.Log("seed", 0.015, 0.12), draws.Even("startKJ", 52, 75), draws.Even("endKJ", 42, 66), draws.Even("over", 0.08, 0.3), draws.Even("m", 0.6, 1.3), draws.Even("n", 1.3, 2.3)),
    };

    // the diffusion's constant is taken beside the chemistry's own at the room's temperature and half way
    private static Slowing Slow(Draws draws, GlassLine line, Chemistry chemistry) => draws.Once("freeVolume", 0.5)
        ? new FreeVolume(line, draws.Log("diffusionAtGlass", 0.5, 15) * chemistry.Rate(0.5, 23) / 0.5, draws.Even("diffusionSteep", 25, 42), draws.Even("diffusionSpreadK", 40, 60))
        : new CriticalConversion(line.ConversionAt(23 + draws.Even("stopsOverK", 2, 12)), draws.Even("stopsPerK", 0.002, 0.006), draws.Even("stopsSharp", 18, 45));

    // a common part and one of each film's own, within 35 %
    private static DrawnFilms Films(Draws draws, string where)
    {
        var common = draws.Log(where + "Films", 1 / 1.2, 1.2);
        return new(10 * common * Own("Top"), 8 * common * Own("Side"), 5 * common * Own("Bottom"));

        double Own(string film) => draws.Log(where + film, 1 / 1.125, 1.125);
    }
}
