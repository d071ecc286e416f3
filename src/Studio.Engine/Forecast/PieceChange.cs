using Studio.Engine.Cure;
using Studio.Engine.Heat;

namespace Studio.Engine.Forecast;

/// <summary>A piece cut off above one layer, and that layer changed. What is poured already stays as it is.</summary>
internal static class PieceChange
{
    // a peak that comes after the next pour was planned must be seen as well
    private const double LeastWatchedHours = 120;

    // what is as warm as the room is taken to follow it
    private const double AsTheRoomK = 0.6;

    /// <summary>The piece up to a layer, watched long enough for its peak.</summary>
    public static HeatInput UpTo(HeatInput piece, int layer)
    {
        var next = layer + 1 < piece.Layers.Count ? piece.Layers[layer + 1].PouredAtHours : piece.UntilHours;
        return piece with
        {
            Layers = [.. piece.Layers.Take(layer + 1)],
            UntilHours = Math.Max(next, piece.Layers[layer].PouredAtHours + LeastWatchedHours),
            PictureHours = [],
            ProbeMm = null,
        };
    }

    /// <summary>The top layer of another depth.</summary>
    public static HeatInput Deep(HeatInput upTo, double depthMm)
    {
        var top = upTo.Layers[^1];
        return upTo with { Layers = [.. upTo.Layers.SkipLast(1), top with { ToMm = top.FromMm + depthMm }] };
    }

    /// <summary>The top layer in two of equal depth.</summary>
    public static HeatInput Split(HeatInput upTo, double waitHours)
    {
        var top = upTo.Layers[^1];
        var middle = (top.FromMm + top.ToMm) / 2;
        return upTo with
        {
            Layers = [.. upTo.Layers.SkipLast(1), top with { ToMm = middle }, top with { FromMm = middle, PouredAtHours = top.PouredAtHours + waitHours }],
            UntilHours = upTo.UntilHours + waitHours,
        };
    }

    /// <summary>The top layer poured later.</summary>
    public static HeatInput Later(HeatInput upTo, double hours)
    {
        var top = upTo.Layers[^1];
        return upTo with { Layers = [.. upTo.Layers.SkipLast(1), top with { PouredAtHours = top.PouredAtHours + hours }], UntilHours = upTo.UntilHours + hours };
    }

    /// <summary>A room that is cooler from the top layer's pour on; before the first pour the mould stands in it too.</summary>
    public static HeatInput Cooler(HeatInput upTo, double byK)
    {
        var (top, room) = (upTo.Layers[^1], new RoomCurve(upTo.Room));
        var (at, roomC) = (top.PouredAtHours, room.CelsiusAt(top.PouredAtHours));
        var first = upTo.Layers.Count == 1;
        return upTo with
        {
            Room =
            [
                .. upTo.Room.Where(r => r.Hours < at), new(at - 0.01, roomC), new(at, roomC - byK),
                .. upTo.Room.Where(r => r.Hours > at).Select(r => r with { Celsius = r.Celsius - byK }),
            ],
            Layers = [.. upTo.Layers.SkipLast(1), Math.Abs(top.PouredCelsius - roomC) < AsTheRoomK ? top with { PouredCelsius = top.PouredCelsius - byK } : top],
            Wall = first && Math.Abs(upTo.Wall.StartCelsius - roomC) < AsTheRoomK ? upTo.Wall with { StartCelsius = upTo.Wall.StartCelsius - byK } : upTo.Wall,
        };
    }

    /// <summary>Lowest temperature of the room from the top layer's pour on [°C].</summary>
    public static double ColdestC(HeatInput upTo) => new RoomCurve(upTo.Room).Range(upTo.Layers[^1].PouredAtHours, upTo.UntilHours).MinC;
}
