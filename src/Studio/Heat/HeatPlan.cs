using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Moulds;
using Studio.Resins;

namespace Studio.Heat;

/// <summary>A layer as the heat takes it.</summary>
public sealed record HeatPlanLayer
{
    public required string Name { get; init; }

    public required double FromMm { get; init; }

    public required double ToMm { get; init; }

    public required Resin Resin { get; init; }

    /// <summary>What is known of its resin's lot; its state is not null.</summary>
    public required CureKnowledge Known { get; init; }

    /// <summary>When it is poured [h] on the room's scale.</summary>
    public required double PouredAtHours { get; init; }

    /// <summary>Of the mix [°C].</summary>
    public required double PouredC { get; init; }

    /// <summary>What must not become hotter.</summary>
    public required IReadOnlyList<HeatLimit> Limits { get; init; }

    /// <summary>True when it is in the mould already.</summary>
    public bool Poured { get; init; }
}

/// <summary>A piece made ready for the heat equation.</summary>
/// <param name="Layers">In pouring order.</param>
/// <param name="Advice">As the engine takes it, for the forecast and for its advice.</param>
public sealed record HeatPlan(IReadOnlyList<HeatPlanLayer> Layers, AdviceInput Advice)
{
    private const double AfterLastHours = 72;
    private const int Pictures = 48;

    public HeatInput Input => Advice.Piece;

    /// <summary>Whole sentences: where another body stands for the mould, which, and what that costs.</summary>
    public IReadOnlyList<string> Taken { get; } = [.. RoundBody.Findings(Advice.Mould, Advice.Piece.Layers).Select(f => f.Message)];

    /// <summary>Why nothing is learnt of a resin from a log in this mould; null when something is.</summary>
    public static string? NoRefit(Moulds.Mould mould) => NoGrid(mould)
        ?? (MouldShapes.Find(mould.Shape) is { Grid.AreasOnly: true } ? "The heat of this mould is that of a round body with the same areas, which is warmer than the mould itself; the resin would be blamed for the difference. Log a thermometer in a mould with a drawn shape." : null);

    /// <summary>Why a mould's shape has no heat; null when it has.</summary>
    public static string? NoGrid(Moulds.Mould mould) => MouldShapes.Find(mould.Shape) switch
    {
        { Grid: not null } => null,
        { } shape => $"{shape.NoGrid} Go by the data sheet's greatest depth, and log a thermometer in the first pour.",
        null => $"There is no shape '{mould.Shape}', so its heat cannot be worked out.",
    };

    /// <summary>Puts a piece together.</summary>
    /// <param name="mould">With its wall.</param>
    /// <param name="former">What keeps the room for lights, if anything.</param>
    /// <param name="layers">From the lowest up; at least one.</param>
    /// <param name="room">On the scale of their pour times; at least one.</param>
    /// <param name="others">Resins that could be poured instead.</param>
    public static HeatPlan Of(Moulds.Mould mould, FormerSpec? former, IReadOnlyList<HeatPlanLayer> layers, IReadOnlyList<RoomReading> room, IReadOnlyList<OtherResin>? others = null)
    {
        var spec = mould.Spec;
        var (first, until) = (layers[0].PouredAtHours, layers[^1].PouredAtHours + AfterLastHours);
        var input = new HeatInput
        {
            Mould = spec,
            Wall = WallMaterials.Spec(mould.Wall, RoomAt(room, first)),
            Former = former,
            Fill = former is null ? null : new FillSpec(former.Solid, new BoundarySpec().VoidWPerM2K), // a solid one is taken for a plug of the wall's stuff
            Boundary = new BoundarySpec(),
            Room = room,
            UntilHours = until,
            Layers = [.. layers.Select(Layer)],
            PictureHours = [.. Enumerable.Range(0, Pictures).Select(i => first + ((until - first) * i / (Pictures - 1)))],
        };
        return new(layers, new AdviceInput
        {
            Piece = input,
            Mould = MouldShapes.Make(spec).Value,
            Resins = [.. layers.Select(l => Forecast(l.Resin, l.Known.State!))],
            Limits = [.. layers.Select(l => l.Limits)],
            Names = [.. layers.Select(l => l.Name)],
            Others = others ?? [],
            FirstFree = layers.Count(l => l.Poured),
        });
    }

    /// <summary>What is known of a resin with what its sheet allows.</summary>
    public static ForecastResin Forecast(Resin resin, Engine.Fit.FitState state)
    {
        var row = resin.Times.MinBy(t => Math.Abs(t.AtCelsius - state.AtCelsius));
        return new(state, resin.MaxPourMm) { NextPourFromHours = row?.NextPourFromHours, NextPourUntilHours = row?.NextPourUntilHours, MinRoomC = resin.MinC };
    }

    private static double RoomAt(IReadOnlyList<RoomReading> room, double hours) => (room.LastOrDefault(r => r.Hours <= hours) ?? room[0]).Celsius;

    private static HeatLayer Layer(HeatPlanLayer l)
    {
        var best = l.Known.State!.Best();
        return new(best.Kinetics, best.DensityKgPerM3, best.HeatCapacityJPerKgK, best.ConductivityWPerMK, l.FromMm, l.ToMm, l.PouredAtHours, l.PouredC);
    }
}
