using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Pieces;

/// <summary>A first box for lights that fits, for the maker to change.</summary>
public static class FormerStart
{
    private const double Share = 0.5;
    private const double FromShare = 0.7;
    private const double WallMm = 3;
    private const double RoomMm = 5;

    /// <summary>Half as wide as the narrowest place it passes, from seven tenths of the height.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="aboveMm">It starts no lower than this, such as the top of what is poured.</param>
    public static FormerSpec? In(MouldSpec mould, double aboveMm = 0)
    {
        if (MouldShapes.Make(mould) is not { Ok: true } made)
        {
            return null;
        }

        var height = made.Value.HeightMm;
        var from = Math.Min(Math.Round(Math.Max(height * FromShare, aboveMm)), height * 0.95);
        var narrowest = Math.Min(made.Value.Outline.HalfWidthMm(from), made.Value.Outline.HalfWidthMm(height));
        var least = 2 * (WallMm + 1);
        var side = Math.Max(least, Math.Floor(narrowest * 2 * Share));
        while (side > least && Math.Min(made.Value.ClearanceMm(side, side, from), made.Value.ClearanceMm(side, side, height)) < RoomMm)
        {
            side--; // a mould may be shallower than it is wide
        }

        return new FormerSpec { OuterWidthMm = side, OuterDepthMm = side, FromMm = from, WallMm = WallMm };
    }
}
