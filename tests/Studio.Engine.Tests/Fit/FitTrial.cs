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

/// <summary>
/// Fits a made-up resin's sheet, then one log of a real layer, then a second log of the same layer in a room of 28 °C, and foretells five quantities from each.
/// </summary>
public sealed record FitTrial(MadeResin Made, DataSheet Sheet, ResinFit Fit, IReadOnlyList<Foretold> BySheet, IReadOnlyList<Foretold> ByLog, IReadOnlyList<Foretold> BySecond)
{
    public const string Layer = "layer's peak";
    public const string Warm = "the same at 28 °C";

    private static readonly HeatFineness Usual = new(5, 8, 2);

    public static FitTrial Run(MadeResin made, int members, bool second = true)
    {
        var sheet = made.Sheet();
        var fit = SheetFit.Run(sheet).Value;
        var one = LogFit.Run(fit.State, Log(made, fit.Best, 23)).Value.Fit.State;
        var two = second ? LogFit.Run(one, Log(made, fit.Best, 28)).Value.Fit.State : one;
        return new(made, sheet, fit, Foretell(made, fit.State, members), Foretell(made, one, members), second ? Foretell(made, two, members) : []);
    }

    public static double Depth(string kind) => kind switch { "deepPour" => 40, "casting" => 10, _ => 2.5 };

    private static LayerLog Log(MadeResin made, FitResin best, double roomC) => new()
    {
        Piece = MadeResin.Tray(best with { FilmFactor = 1 }, Depth(made.Kind), roomC, Until(made)),
        Layer = 0,
        SameLot = [0],
        Readings = made.Log(Depth(made.Kind), roomC, Until(made)),
    };

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
