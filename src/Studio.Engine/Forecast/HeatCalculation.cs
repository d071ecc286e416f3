using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>Will it overheat: the contract's <c>calc heat</c>.</summary>
public static class HeatCalculation
{
    /// <summary>Works out every layer.</summary>
    public static Outcome<HeatResult> Run(HeatSpec spec, CancellationToken stop = default) => Run(spec, new InputErrors(), stop);

    /// <summary>As <see cref="Run(HeatSpec, CancellationToken)"/>, after reading found errors of its own.</summary>
    internal static Outcome<HeatResult> Run(HeatSpec spec, InputErrors errors, CancellationToken stop = default)
    {
        errors.Settle();
        var mould = MouldShapes.Make(spec.Mould, "mould", errors);
        if (MouldShapes.Find(spec.Mould.Shape) is { Grid: null } shape)
        {
            errors.Add("mould.shape", $"{shape.NoGrid} Use one of: {string.Join(", ", MouldShapes.All.Where(s => s.Grid is not null).Select(s => s.Key))}.");
        }

        HeatCheck.Fields(spec, errors);
        var layers = HeatCheck.Layers(spec, mould, errors);
        var room = RoomCourse.Of(spec.Room, spec.Layers.Select(l => l.PouredAtHours).DefaultIfEmpty(0).Min(), spec.UntilHours, errors);
        if (spec.Former is { } former)
        {
            Former.Make(former, mould, errors);
        }

        return errors.None && layers is not null && room is not null ? Solve(spec, mould!, layers, room, stop) : Outcome<HeatResult>.Refused(errors.All);
    }

    private static Outcome<HeatResult> Solve(HeatSpec spec, MouldBody mould, IReadOnlyList<PlacedLayer> layers, RoomCourse room, CancellationToken stop)
    {
        try
        {
            // a resin that no layer uses is checked but not fitted
            var used = spec.Resins.Where(r => spec.Layers.Any(l => l.Resin == r.Key)).ToDictionary(r => r.Key, r => new KnownResin(r.Value), StringComparer.Ordinal);
            var piece = Piece(spec, layers, room, used);
            var told = HeatForecast.Run(
                piece, mould, [.. spec.Layers.Select(l => used[l.Resin].Foretold)],
                Grid(spec.Mould), stop);
            return Outcome<HeatResult>.Of(new HeatResult
            {
                Model = told.Model,
                EnergyBalance = Math.Round(told.Heat.EnergyMiss, 9), // what is smaller is rounding
                Fit = used.Where(r => r.Value.Fit is not null).ToDictionary(r => r.Key, r => r.Value.Fit!, StringComparer.Ordinal),
                Findings = [.. used.SelectMany(r => r.Value.Doubts($"resins.{r.Key}")), .. RoundBody.Findings(mould, piece.Layers), .. room.Findings, .. HeatFindings.OfRoom(piece, new RoomCurve(room.Readings))],
                Layers = [.. told.Layers.Select((l, i) => new HeatLayerResult(spec.Layers[i].Name, spec.Layers[i].PouredAtHours, l, [.. HeatFindings.OfLayer(piece, mould, told, [.. spec.Layers.Select(s => spec.Resins[s.Resin])], i)]))],
            });
        }
        catch (InvalidOperationException unsolved)
        {
            // a number that does not come out is not replaced by a guess
            return Outcome<HeatResult>.Refused([new InputError("", unsolved.Message + " No answer is given.")]);
        }
    }

    /// <summary>The grid of the most probable run, the same wherever a time rests on it.</summary>
    internal static ForecastGrid Grid(MouldSpec mould) => new(Preview: false, HeatModel.Sides(mould) == 0 ? new HeatFineness(16, 20, 5) : new HeatFineness(8, 10, 3));

    private static HeatInput Piece(HeatSpec spec, IReadOnlyList<PlacedLayer> layers, RoomCourse room, Dictionary<string, KnownResin> used)
    {
        var curve = new RoomCurve(room.Readings);
        return new()
        {
            Mould = spec.Mould,
            Wall = spec.Wall with { StartCelsius = spec.WallStartCelsius ?? curve.CelsiusAt(spec.Layers[0].PouredAtHours) },
            Former = spec.Former,
            Fill = spec.Fill,
            Boundary = spec.Boundary,
            Room = room.Readings,
            Layers = [.. spec.Layers.Select((l, i) => used[l.Resin].Layer(layers[i], l.PouredAtHours, l.PouredCelsius ?? curve.CelsiusAt(l.PouredAtHours)))],
            UntilHours = spec.UntilHours,
        };
    }
}
