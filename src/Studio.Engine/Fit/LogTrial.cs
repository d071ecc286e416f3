using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Fit;

/// <summary>The observed layer on the model: the piece up to it, with the resin that is tried in every layer of its lot.</summary>
internal sealed class LogTrial
{
    private const double OffsetSdK = 0.6;

    private static readonly HeatFineness Coarse = new(5, 6, 2);

    private readonly LayerLog log;
    private readonly MouldBody mould;
    private readonly IReadOnlyList<LogReading> readings;
    private readonly HeatInput piece;
    private readonly double doubt;
    private readonly double lagH;
    private readonly double roomC;
    private readonly double pouredC;
    private readonly Dictionary<FitResin, LayerHeat> ran = [];

    /// <summary>Lays the trial out.</summary>
    /// <param name="doubt">Readings' standard deviations are multiplied by this.</param>
    /// <param name="lagH">How far the thermometer lags behind what it is in [h].</param>
    public LogTrial(LayerLog log, MouldBody mould, IReadOnlyList<LogReading> readings, double doubt, double lagH = 0)
    {
        (this.log, this.mould, this.readings, this.doubt, this.lagH) = (log, mould, readings, doubt, lagH);
        var pouredAt = log.Piece.Layers[log.Layer].PouredAtHours;
        var lastH = readings.Count == 0 ? 0 : readings[^1].AfterHours;
        piece = log.Piece with
        {
            Layers = [.. log.Piece.Layers.Take(log.Layer + 1)],
            UntilHours = pouredAt + Math.Max(0.05, Math.Max(lastH * 1.001, 1.6 * (log.GelAfterHours ?? 0))),
            ProbeMm = log.Place is LogPlace.Height ? log.HeightMm : null,
        };
        pouredC = piece.Layers[^1].PouredCelsius;
        var room = new RoomCurve(piece.Room);
        roomC = Enumerable.Range(0, 25).Average(i => room.CelsiusAt(pouredAt + (i / 24.0 * (log.DemouldAfterHours ?? 1))));
    }

    /// <summary>At which temperature this log tells of the resin: the room's, for what the layer warms itself is part of what is told [°C].</summary>
    public double SeenC => roomC;

    public int Count => readings.Count + (log.GelAfterHours is null ? 0 : 1) + (log.DemouldAfterHours is null ? 0 : 1);

    /// <summary>What the resin would have shown at each used reading [°C].</summary>
    public double[] Foretold(FitResin resin)
    {
        var curve = Run(resin).Curve;
        return lagH > 0 ? Lagging(curve) : [.. readings.Select(r => At(curve, r.AfterHours))];
    }

    // of first order: τ·dy/dt = x − y, exactly for an x that is straight between the curve's moments
    private double[] Lagging(IReadOnlyList<HeatMoment> curve)
    {
        var ends = curve.Select(m => (m.AfterHours, C: At(curve, m.AfterHours))).ToList();
        var y = new List<(double AfterHours, double C)> { ends[0] };
        for (var i = 1; i < ends.Count; i++)
        {
            var hours = ends[i].AfterHours - ends[i - 1].AfterHours;
            var behind = hours > 0 ? (ends[i].C - ends[i - 1].C) / hours * lagH : 0;
            y.Add((ends[i].AfterHours, ends[i].C - behind + ((y[^1].C - ends[i - 1].C + behind) * Math.Exp(-hours / lagH))));
        }

        return [.. readings.Select(r => Straight(y, r.AfterHours))];
    }

    private static double Straight(List<(double AfterHours, double C)> line, double hours)
    {
        var i = line.FindIndex(p => p.AfterHours >= hours);
        return i < 0 ? line[^1].C : i == 0 ? line[0].C : line[i - 1].C + ((hours - line[i - 1].AfterHours) / (line[i].AfterHours - line[i - 1].AfterHours) * (line[i].C - line[i - 1].C));
    }

    /// <summary>
    /// In standard deviations: readings to a few per cent of their rise at best, observed times to 15 and 20 %. A thermometer may be off by some tenths of a kelvin all along: of the
    /// difference as much as is likely is taken for that, and counted once.
    /// </summary>
    public double[] Residuals(FitResin resin)
    {
        double[] off = [.. Foretold(resin).Zip(readings, (model, read) => model - read.Celsius)];
        double[] weights = [.. readings.Select(r => 1 / (Sd(r) * Sd(r)))];
        var all = off.Length == 0 ? 0 : off.Zip(weights, (o, w) => o * w).Sum() / (weights.Sum() + (1 / (OffsetSdK * OffsetSdK)));
        return [.. off.Zip(readings, (o, r) => (o - all) / Sd(r)), .. readings.Count == 0 ? (double[])[] : [all / OffsetSdK], .. Times(resin).Select(t => t.OffSd)];
    }

    /// <summary>For people: the observed times, and the root mean square of the readings.</summary>
    public IReadOnlyList<FitDatum> Tell(FitResin resin)
    {
        if (readings.Count == 0)
        {
            return Times(resin);
        }

        var foretold = Foretold(resin);
        var off = Math.Sqrt(foretold.Zip(readings, (m, r) => Math.Pow((m - r.Celsius) / Sd(r), 2)).Average());
        return [new("logPeakCelsius", readings.Max(r => r.Celsius), foretold.Max(), off), .. Times(resin)];
    }

    private static double At(IReadOnlyList<HeatMoment> curve, double hours, Func<HeatMoment, double> pick)
    {
        for (var i = 1; i < curve.Count; i++)
        {
            if (curve[i].AfterHours >= hours)
            {
                var (a, b) = (curve[i - 1], curve[i]);
                return pick(a) + ((hours - a.AfterHours) / (b.AfterHours - a.AfterHours) * (pick(b) - pick(a)));
            }
        }

        return pick(curve[^1]);
    }

    private double At(IReadOnlyList<HeatMoment> curve, double hours) => At(curve, hours, log.Place switch
    {
        LogPlace.Hottest => m => m.HottestC,
        LogPlace.Surface => m => m.SurfaceC,
        LogPlace.Height => m => m.ProbeC,
        _ => throw new InvalidOperationException($"No place {log.Place}."),
    });

    private double Sd(LogReading read) => doubt * Math.Sqrt((log.ReadingSdK * log.ReadingSdK) + Math.Pow(0.03 * (read.Celsius - pouredC), 2));

    private List<FitDatum> Times(FitResin resin)
    {
        var told = new List<FitDatum>();
        if (log.GelAfterHours is { } gel)
        {
            var model = Run(resin).LastGelAfterHours ?? (piece.UntilHours - piece.Layers[^1].PouredAtHours);
            told.Add(new("gelAfterHours", gel, model, Math.Log(model / gel) / 0.15));
        }

        if (log.DemouldAfterHours is { } demould)
        {
            var model = IsothermalClock.Hours(resin.Kinetics, roomC, resin.DemouldConversion);
            told.Add(new("demouldAfterHours", demould, model, Math.Log(model / demould) / 0.2));
        }

        return told;
    }

    private LayerHeat Run(FitResin resin)
    {
        var same = resin with { DemouldConversion = 0 };
        if (ran.TryGetValue(same, out var found))
        {
            return found;
        }

        var input = piece with
        {
            Boundary = SheetTrial.Films(piece.Boundary, resin.FilmFactor),
            Layers = [.. piece.Layers.Select((layer, i) => !log.SameLot.Contains(i) ? layer : layer with
            {
                Kinetics = resin.Kinetics,
                DensityKgPerM3 = resin.DensityKgPerM3,
                HeatCapacityJPerKgK = resin.HeatCapacityJPerKgK,
                ConductivityWPerMK = resin.ConductivityWPerMK,
            })],
        };
        return ran[same] = HeatRun.Run(input, mould, Coarse, preview: true).Layers[^1];
    }
}
