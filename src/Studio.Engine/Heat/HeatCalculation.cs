using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>Will it overheat: the contract's <c>calc heat</c>.</summary>
public static class HeatCalculation
{
    private const double LongestHours = 5000;
    private const int MostLayers = 40;
    private static readonly string[] Shapes = ["pyramid", "cuboid", "cone", "prism", "sphere", "dome"];

    /// <summary>Works out every layer.</summary>
    public static Outcome<HeatResult> Run(HeatSpec spec) => Run(spec, new InputErrors());

    /// <summary>As <see cref="Run(HeatSpec)"/>, after reading found errors of its own.</summary>
    internal static Outcome<HeatResult> Run(HeatSpec spec, InputErrors errors)
    {
        errors.Settle();
        var mould = MouldShapes.Make(spec.Mould, "mould", errors);
        if (mould is not null && !Shapes.Contains(spec.Mould.Shape, StringComparer.Ordinal))
        {
            errors.Add("mould.shape", $"Heat cannot be worked out for the shape '{spec.Mould.Shape}', whose outline has no grid. Use one of: {string.Join(", ", Shapes)}.");
        }

        HeatCheck.Fields(spec, MostLayers, LongestHours, errors);
        var layers = HeatCheck.Layers(spec, mould, errors);
        if (spec.Former is { } former)
        {
            Former.Make(former, mould, errors);
        }

        return errors.None && layers is not null ? Solve(spec, mould!, layers) : Outcome<HeatResult>.Refused(errors.All);
    }

    private static Outcome<HeatResult> Solve(HeatSpec spec, Mould mould, IReadOnlyList<HeatLayer> layers)
    {
        var room = new RoomCurve(spec.Room);
        var input = new HeatInput
        {
            Mould = spec.Mould,
            Wall = spec.Wall with { StartCelsius = spec.WallStartCelsius ?? room.CelsiusAt(layers[0].PouredAtHours) },
            Former = spec.Former,
            Fill = spec.Fill,
            Boundary = spec.Boundary,
            Room = spec.Room,
            Layers = layers,
            UntilHours = spec.UntilHours,
        };
        try
        {
            var round = HeatModel.Sides(spec.Mould) == 0;
            var outcome = HeatRun.Run(input, mould, round ? new HeatFineness(16, 20, 5) : new HeatFineness(8, 10, 3));
            return Outcome<HeatResult>.Of(Told(spec, input, mould, outcome, room, round));
        }
        catch (InvalidOperationException unsolved)
        {
            // a number that does not come out is not replaced by a guess
            return Outcome<HeatResult>.Refused([new InputError("", unsolved.Message + " No answer is given.")]);
        }
    }

    private static HeatResult Told(HeatSpec spec, HeatInput input, Mould mould, HeatOutcome outcome, RoomCurve room, bool round) => new()
    {
        Model = round ? "body of revolution" : "three dimensions by symmetry",
        EnergyBalance = Math.Round(outcome.EnergyMiss, 9), // what is smaller is rounding
        Findings = [.. HeatFindings.OfRoom(input, room)],
        Layers = [.. outcome.Layers.Select((l, i) => new HeatLayerResult
        {
            Name = spec.Layers[i].Name,
            PeakCelsius = l.PeakCelsius,
            PeakAfterHours = l.PeakAfterHours,
            PeakHeightMm = l.PeakHeightMm,
            FirstGelAfterHours = l.FirstGelAfterHours,
            LastGelAfterHours = l.LastGelAfterHours,
            Conversion = new ConversionResult(l.LeastConversion, l.MeanConversion),
            MouldFacePeakCelsius = l.MouldFacePeakCelsius,
            Curve = [.. l.Curve.Select(m => new MomentResult(m.AfterHours, m.HottestC, m.SurfaceC))],
            Findings = [.. HeatFindings.OfLayer(spec, input, mould, outcome, i)],
        })],
    };
}
