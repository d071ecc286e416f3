using System.Diagnostics;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>Feeds one made-up resin to the fit as a maker would, and asks the forecast as a page does.</summary>
internal sealed record CoverageTrial(ResinTruth Truth, IReadOnlyList<ToldStage> Stages, string? Refused, double FitSeconds, double AllSeconds)
{
    public const string LayerPeak = "layer's peak, 23 °C";
    public const string FilmGel18 = "film's gel, 18 °C";

    // members for what needs no heat model; a forecast's heat takes its own two dozen
    private const int FilmMembers = 32;

    public static CoverageTrial Run(ResinTruth truth)
    {
        var clock = Stopwatch.GetTimestamp();
        var cpu = Environment.CpuUsage.TotalTime;
        var stages = new List<ToldStage>();
        var sheet = SheetFit.Run(Sheet(truth));
        if (sheet.Errors.Count > 0)
        {
            return new(truth, [], "sheet: " + sheet.Errors[0].Message, 0, 0);
        }

        var fit = sheet.Value;
        var seconds = (Environment.CpuUsage.TotalTime - cpu).TotalSeconds;
        stages.Add(Stage(0, fit, truth));
        var state = fit.State;
        foreach (var (readings, roomC, peakC) in new[] { (truth.LogAt23, 23.0, truth.PeakAt23C), (truth.LogAt28, 28.0, truth.PeakAt28C) })
        {
            // nobody pours for a log what runs away
            if (peakC > ToldQuantity.RunAwayC)
            {
                break;
            }

            cpu = Environment.CpuUsage.TotalTime;
            var refit = LogFit.Run(state, Log(truth, fit.Best, readings, roomC));
            if (refit.Errors.Count > 0)
            {
                return new(truth, stages, "log: " + refit.Errors[0].Message, seconds, Stopwatch.GetElapsedTime(clock).TotalSeconds);
            }

            seconds += (Environment.CpuUsage.TotalTime - cpu).TotalSeconds;
            stages.Add(Stage(stages.Count, refit.Value.Fit, truth));
            state = refit.Value.Fit.State;
        }

        return new(truth, stages, null, seconds, Stopwatch.GetElapsedTime(clock).TotalSeconds);
    }

    private static DataSheet Sheet(ResinTruth truth) => new()
    {
        Class = truth.Kind,
        CupMassG = truth.Sheet.CupG,
        GelMinutes = truth.Sheet.GelMinutes,
        PeakCelsius = truth.Sheet.PeakC,
        DemouldHours = truth.Sheet.DemouldHours,
        MaxPourMm = truth.Sheet.MaxPourMm,
        NextPourFromHours = truth.Sheet.NextPourHours,
        DensityKgPerM3 = truth.Sheet.DensityKgPerM3,
    };

    private static LayerLog Log(ResinTruth truth, FitResin best, IReadOnlyList<TrueReading> readings, double roomC) => new()
    {
        Piece = Layer(best, truth.LayerMm, roomC, truth.FollowedHours),
        Layer = 0,
        SameLot = [0],
        Readings = [.. readings.Select(r => new LogReading(r.Hours, r.Celsius))],
    };

    // the kinetics and the matter are put in by the fit and by the forecast
    private static HeatInput Layer(FitResin resin, double deepMm, double roomC, double untilHours) => new()
    {
        Mould = ConeMould.Cylinder(DrawnTrial.MouldMm, deepMm),
        Wall = new WallSpec { ThicknessMm = DrawnTrial.WallMm, FloorMm = DrawnTrial.WallMm, StartCelsius = roomC },
        Boundary = new BoundarySpec(),
        Room = [new RoomReading(0, roomC)],
        Layers = [new HeatLayer(resin.Kinetics, resin.DensityKgPerM3, resin.HeatCapacityJPerKgK, resin.ConductivityWPerMK, 0, deepMm, 0, roomC)],
        UntilHours = untilHours,
    };

    private static ToldStage Stage(int stage, ResinFit fit, ResinTruth truth)
    {
        // long enough for the slowest member to gel
        var until = 4 * truth.FollowedHours;
        var usual = Told(truth.LayerMm, 23);
        var films = fit.State.Members(FilmMembers);
        return new(stage,
        [
            Peak(LayerPeak, usual, truth.PeakAt23C),
            Peak("the same at 28 °C", Told(truth.LayerMm, 28), truth.PeakAt28C),
            Peak("half as deep again", Told(1.5 * truth.LayerMm, 23), truth.PeakDeeperC),
            new("its last gel, 23 °C", false, truth.LastGelHours, usual.Best.LastGelAfterHours ?? until, usual.Intervals?.LastGelAfterHours),
            Film(FilmGel18, truth.FilmGelAt18Hours, r => FilmHours(r.Kinetics, 18, r.Kinetics.GelConversion)),
            Film("film's gel, 23 °C", truth.FilmGelAt23Hours, r => FilmHours(r.Kinetics, 23, r.Kinetics.GelConversion)),
            Film("demould, 23 °C", truth.DemouldHours, r => FilmHours(r.Kinetics, 23, r.DemouldConversion)),
        ], [.. fit.Findings.Select(f => f.Code)], fit.Misfit);

        ForecastLayer Told(double mm, double roomC)
        {
            var input = Layer(fit.Best, mm, roomC, until);
            return HeatForecast.Run(input, MouldShapes.Make(input.Mould).Value, [new ForecastResin(fit.State, truth.Sheet.MaxPourMm)], preview: true, CancellationToken.None).Layers[0];
        }

        ToldQuantity Peak(string what, ForecastLayer told, double isC) => new(what, true, isC, told.PeakC, new(told.PeakLowC, told.PeakHighC));

        ToldQuantity Film(string what, double isHours, Func<FitResin, double> of) => new(what, false, isHours, of(fit.State.Best()), FitInterval.Of(films.Select(of)));
    }

    // a film at one temperature by the midpoint rule
    private static double FilmHours(Kinetics kinetics, double celsius, double conversion)
    {
        const int parts = 4000;
        double sum = 0;
        for (var i = 0; i < parts; i++)
        {
            sum += conversion / parts / kinetics.PerS(conversion * (i + 0.5) / parts, celsius);
        }

        return sum / 3600;
    }
}
