using Studio.Engine.Fit;
using Studio.Engine.Heat;

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

    /// <summary>What is doubtful in the sheet that was fitted, and what the fit found.</summary>
    public IEnumerable<Finding> Doubts(string path)
    {
        if (Fit is null)
        {
            return [];
        }

        var found = Fit.Findings.Select(f => f with { Path = f.Path.Length == 0 ? path : $"{path}.{f.Path}" }).ToList();
        return [.. found, .. SheetClass.Doubts(resin.DataSheet!, path).Where(d => !found.Exists(f => f.Path == d.Path))];
    }
}
