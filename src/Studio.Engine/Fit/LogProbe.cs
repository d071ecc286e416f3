using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>A thermometer that was pulled out, or never was in curing resin.</summary>
internal static class LogProbe
{
    private const int Looked = 2000;
    private const double LeastRiseK = 5;
    private const double NearRoomK = 2;
    private const double LeftShare = 0.25;

    // all films together, on the strong side; a layer cannot lose three quarters of its warmth within depth × ρc / this
    private const double FilmsWPerM2K = 20;

    /// <summary>After which time the thermometer tells of the room [h after the pour]; infinite where it stays in the resin.</summary>
    public static double PulledOutH(List<LogReading> order, LayerLog log, List<Finding> findings)
    {
        if (order.Count < 4 || log.Piece.Room.Count == 0)
        {
            return double.PositiveInfinity;
        }

        var layer = log.Piece.Layers[log.Layer];
        var room = new RoomCurve(log.Piece.Room);
        var seen = order.Where((_, i) => i % ((order.Count / Looked) + 1) == 0).ToList();
        var above = seen.ConvertAll(r => r.Celsius - room.CelsiusAt(layer.PouredAtHours + r.AfterHours));
        var withinH = (layer.ToMm - layer.FromMm) / 1000 * layer.DensityKgPerM3 * layer.HeatCapacityJPerKgK / FilmsWPerM2K / 3600;
        var mostLater = new double[seen.Count];
        for (var i = seen.Count - 1; i >= 0; i--)
        {
            mostLater[i] = Math.Max(Math.Abs(above[i]), i + 1 < seen.Count ? mostLater[i + 1] : 0);
        }

        for (var i = 1; i < seen.Count; i++)
        {
            var (rise, fromH) = (above[i - 1], seen[i - 1].AfterHours);
            for (var j = i; rise > LeastRiseK && j < seen.Count && seen[j].AfterHours <= fromH + withinH; j++)
            {
                if (mostLater[j] < Math.Max(NearRoomK, LeftShare * rise))
                {
                    findings.Add(new("log-probe-pulled-out", Severity.Warn, "readings", FormattableString.Invariant(
                        $"From {seen[j].AfterHours:0.0#} h on the thermometer reads the room: it fell by {rise - above[j]:0} K within {(seen[j].AfterHours - fromH) * 60:0} min, faster than this layer can cool. It seems to have been pulled out; what it read from then on is left out."), "our rule"));
                    return fromH;
                }
            }
        }

        return double.PositiveInfinity;
    }

    /// <summary>Tells of a log that shows no warmth where the forecast has some.</summary>
    public static void NoCure(IReadOnlyList<LogReading> used, double[] foretold, List<Finding> findings)
    {
        if (used.Count >= 4 && foretold.Max() - foretold[0] > LeastRiseK && used.Max(r => r.Celsius) - used.Min(r => r.Celsius) < 1.5)
        {
            findings.Add(new("log-shows-no-cure", Severity.Warn, "readings", FormattableString.Invariant(
                $"The thermometer saw no warmth, though the layer should have become {foretold.Max() - foretold[0]:0} K warmer. Look whether it was in the resin at all before you accept the refit."), "our rule"));
        }
    }
}
