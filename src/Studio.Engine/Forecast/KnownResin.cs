using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Resins;

namespace Studio.Engine.Forecast;

/// <summary>A resin of <c>calc heat</c> that a layer uses, its sheet fitted.</summary>
internal sealed class KnownResin
{
    private const double UsualDensity = 1100;
    private const double UsualCapacity = 1900;
    private const double UsualConductivity = 0.19;

    private readonly HeatResin resin;

    /// <summary>Fits the sheet where no kinetics are given.</summary>
    public KnownResin(HeatResin resin) => (this.resin, Fit) = (resin, resin.ToFit is { } sheet ? SheetFit.Run(sheet).Value : null);

    /// <summary>Null where the kinetics were given.</summary>
    public ResinFit? Fit { get; }

    public ForecastResin Foretold => new(Fit?.State, resin.Depth) { NextPourFromHours = resin.DataSheet?.NextPourFromHours, NextPourUntilHours = resin.DataSheet?.NextPourUntilHours };

    /// <summary>A layer of it.</summary>
    public HeatLayer Layer(PlacedLayer place, double pouredAtHours, double pouredCelsius) => Fit?.Best is { } best
        ? new(best.Kinetics, best.DensityKgPerM3, best.HeatCapacityJPerKgK, best.ConductivityWPerMK, place.FromMm, place.ToMm, pouredAtHours, pouredCelsius)
        : new(
            resin.Kinetics!, resin.DensityKgPerM3 ?? resin.DataSheet?.DensityKgPerM3 ?? UsualDensity, resin.HeatCapacityJPerKgK ?? UsualCapacity,
            resin.ConductivityWPerMK ?? UsualConductivity, place.FromMm, place.ToMm, pouredAtHours, pouredCelsius);

    /// <summary>What is doubtful in the sheet and beside it, and what the fit found.</summary>
    /// <param name="path">The resin's path, such as <c>resins.clear</c>.</param>
    public IEnumerable<Finding> Doubts(string path)
    {
        var sheet = path + ".dataSheet";
        var found = Fit?.Findings.Select(f => f with { Path = f.Path.Length == 0 ? sheet : $"{sheet}.{f.Path}" }).ToList() ?? [];
        var read = resin.DataSheet is not { } given ? [] : Fit is null ? SheetSlips.Of(given, sheet) : SheetClass.Doubts(given, sheet);
        var beside = SheetSlips.Beside(resin.DensityKgPerM3, path).Append(SheetFigure.Doubt("maxPourMm", resin.MaxPourMm, resin.DataSheet?.Class, path + ".maxPourMm")).OfType<Finding>();
        return [.. found, .. read.Where(d => !found.Exists(f => f.Path == d.Path)), .. beside];
    }
}
