using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Fit;

/// <summary>One quantity of one made-up resin: its truth, what the fit foretells, and the interval.</summary>
public sealed record Foretold(string What, double True, double Said, FitInterval Interval)
{
    public bool Held => Interval.Holds(True);

    public double Error => Math.Abs(Said - True);

    public double Width => Interval.To - Interval.From;
}

/// <summary>Fits a made-up resin's sheet, then one log of a real layer, and foretells four quantities from each.</summary>
public static class FitTrial
{
    private static readonly HeatFineness Usual = new(5, 8, 2);

    public const string Layer = "layer's peak";
    public const string Warm = "the same at 28 °C";

    public static (DataSheet Sheet, ResinFit Fit, IReadOnlyList<Foretold> BySheet, LogRefit Refit, IReadOnlyList<Foretold> ByLog) Run(MadeResin made, int members)
    {
        var sheet = made.Sheet();
        var fit = SheetFit.Run(sheet).Value;
        var depth = Depth(made.Kind);
        var until = Until(made);
        var log = new LayerLog
        {
            Piece = MadeResin.Tray(fit.Best with { FilmFactor = 1 }, depth, 23, until),
            Layer = 0,
            SameLot = [0],
            Readings = made.Log(depth, 23, until),
        };
        var refit = LogFit.Run(fit.State, log).Value;
        return (sheet, fit, Foretell(made, fit.State, members), refit, Foretell(made, refit.Fit.State, members));
    }

    public static double Depth(string kind) => kind switch { "deepPour" => 40, "casting" => 10, _ => 2.5 };

    private static double Until(MadeResin made) => MadeResin.FilmHours(made.Truth.Kinetics, 23, 0.72) + 1;

    private static IReadOnlyList<Foretold> Foretell(MadeResin made, FitState state, int members)
    {
        var (depth, until) = (Depth(made.Kind), Until(made));
        var drawn = state.Members(members);
        return
        [
            Peak(Layer, depth, 23),
            Peak(Warm, depth, 28),
            Peak("half as deep again", 1.5 * depth, 23),
            One("film's gel at 18 °C", r => MadeResin.FilmHours(r.Kinetics, 18, 0.577)),
            One("demould at 23 °C", r => MadeResin.FilmHours(r.Kinetics, 23, r.DemouldConversion)),
        ];

        Foretold Peak(string what, double mm, double roomC)
        {
            double Of(FitResin r) => MadeResin.Run(MadeResin.Tray(r, mm, roomC, until), Usual).PeakCelsius;
            return new(what, made.True(mm, roomC, until).PeakCelsius, Of(state.Best()), FitInterval.Of(drawn.Select(Of)));
        }

        Foretold One(string what, Func<FitResin, double> of) => new(what, of(made.Truth), of(state.Best()), FitInterval.Of(drawn.Select(of)));
    }
}
