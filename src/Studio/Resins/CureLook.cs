using System.Diagnostics;
using System.Globalization;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;
using Studio.Shell;

namespace Studio.Resins;

/// <summary>What a fit of a sheet gives, ready to be shown.</summary>
public sealed record CureShown
{
    /// <summary>The sheet that was fitted.</summary>
    public required DataSheet Sheet { get; init; }

    /// <summary>Why it could not be fitted, each with the engine's field name.</summary>
    public IReadOnlyList<InputError> Errors { get; init; } = [];

    public IReadOnlyList<CureLine> Lines { get; init; } = [];

    public IReadOnlyList<CureKnown> Known { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>A whole sentence: the peak of a stated layer with its interval.</summary>
    public string Example { get; init; } = "";

    public TimeSpan Took { get; init; }

    public bool Ok => Errors.Count == 0;
}

/// <summary>Fits a sheet for the page that it is typed on, one fit at a time however many people type.</summary>
public static class CureLook
{
    private const double ExampleSideMm = 100;
    private const double ExampleWallMm = 10;
    private const double ExampleRoomC = 23;
    private const double ExampleDeepMm = 10;
    private const double ExampleHours = 72;

    private static readonly SemaphoreSlim Gate = new(1);

    /// <summary>Fits, and runs the example; waits for its turn and can be given up while it waits and between runs.</summary>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static async Task<CureShown> RunAsync(DataSheet sheet, CancellationToken stop)
    {
        await Gate.WaitAsync(stop);
        try
        {
            var started = Stopwatch.GetTimestamp();
            var fit = await KnownCures.FitAsync(sheet);
            stop.ThrowIfCancellationRequested();
            return fit.Ok
                ? Shown(sheet, fit.Value, Stopwatch.GetElapsedTime(started)) with { Example = await Task.Run(() => Example(sheet, fit.Value.State, stop), stop) }
                : new CureShown { Sheet = sheet, Errors = fit.Errors };
        }
        finally
        {
            Gate.Release();
        }
    }

    private static CureShown Shown(DataSheet sheet, ResinFit fit, TimeSpan took) => new()
    {
        Sheet = sheet,
        Lines = [.. fit.Data.Select(CureWords.Line)],
        Known = [.. fit.Known.Select(k => CureWords.Known(k))],
        Findings = fit.Findings,
        Took = took,
    };

    private static string Example(DataSheet sheet, FitState state, CancellationToken stop)
    {
        var deep = sheet.MaxPourMm ?? ExampleDeepMm;
        var what = $"A layer of {Say.Length(deep)}{(sheet.MaxPourMm is null ? "" : ", the deepest that the sheet prints")}, in a square mould of {ExampleSideMm:0} mm with {ExampleWallMm:0} mm of silicone, in a room of {ExampleRoomC:0} °C";
        var spec = CuboidMould.Square(ExampleSideMm, deep + 5);
        var resin = state.Best();
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = ExampleWallMm, FloorMm = ExampleWallMm, StartCelsius = ExampleRoomC },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, ExampleRoomC)],
            Layers = [new HeatLayer(resin.Kinetics, resin.DensityKgPerM3, resin.HeatCapacityJPerKgK, resin.ConductivityWPerMK, 0, deep, 0, ExampleRoomC)],
            UntilHours = ExampleHours,
        };
        if (MouldShapes.Make(spec) is not { Ok: true } mould)
        {
            return "";
        }

        try
        {
            var layer = HeatForecast.Run(input, mould.Value, [new ForecastResin(state, sheet.MaxPourMm)], preview: true, stop).Layers[0];
            return layer.RunAway
                ? $"{what}: {CureWords.RunAway}. The model does not rule out that it heats itself beyond control; the sheet’s numbers, or their units, need a look."
                : string.Create(CultureInfo.InvariantCulture, $"{what}, would come to about {layer.PeakC:0} °C, nine times in ten between {layer.PeakLowC:0} and {layer.PeakHighC:0} °C, about {layer.PeakAfterHours:0.#} h after pouring.");
        }
        catch (InvalidOperationException)
        {
            return "An example could not be worked out: the equations have no answer for these numbers.";
        }
    }
}
