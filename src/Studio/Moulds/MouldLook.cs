using System.Runtime.CompilerServices;
using Studio.Engine;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould cut through the middle, as it stands for casting.</summary>
/// <param name="HeightMm">From the lowest point to the rim.</param>
/// <param name="WidestMm">Half of the widest place.</param>
/// <param name="Wall">The right-hand wall from the bottom up: height and half width.</param>
public sealed record MouldSketch(double HeightMm, double WidestMm, IReadOnlyList<WallPoint> Wall)
{
    /// <summary>The section as polygons, for a mould that is not alike on both sides; null where the wall says it all.</summary>
    public IReadOnlyList<IReadOnlyList<SketchPoint>>? Rings { get; init; }

    /// <summary>The longer of width and height, for scaling a drawing.</summary>
    public double LongestMm => Math.Max(2 * WidestMm, HeightMm);
}

/// <summary>Where the wall stands at a height.</summary>
public sealed record WallPoint(double ZMm, double HalfWidthMm);

/// <summary>A corner of a section [mm]: x from the middle to the right.</summary>
public sealed record SketchPoint(double XMm, double ZMm);

/// <summary>A shape that can be chosen, with a section of sound proportions.</summary>
public sealed record MouldExample(string Key, string Words, MouldSketch? Sketch);

/// <summary>What the measures typed so far make.</summary>
/// <param name="CapacityMl">To the rim, scaled where the mould is; null while they make no mould.</param>
public sealed record MouldGlance(double? CapacityMl, MouldSketch? Sketch, IReadOnlyList<Finding> Doubts)
{
    /// <summary>The mould itself, for the view that turns; null while the measures make none.</summary>
    public Engine.Moulds.MouldBody? Made { get; init; }

    /// <summary>How far the capacity may be off by the water check [ml]; null where there was none.</summary>
    public double? SpreadMl { get; init; }

    /// <summary>What the fill makes; null for other shapes, and while there are no two points.</summary>
    public FillCurve? Curve { get; init; }

    /// <summary>Readings to look at again, at their rows: <c>readings[2]</c>.</summary>
    public IReadOnlyList<Finding> Wild { get; init; } = [];

    /// <summary>Why there is no mould yet, where that is more than something missing.</summary>
    public IReadOnlyList<InputError> Troubles { get; init; } = [];
}

/// <summary>Volume over height: the line between the readings, and the readings themselves.</summary>
public sealed record FillCurve(IReadOnlyList<FillPoint> Line, IReadOnlyList<FillPoint> Dots)
{
    public double HighestMm => Line[^1].HeightMm;

    public double MostMl => Line[^1].VolumeMl;
}

/// <summary>A point of the curve.</summary>
/// <param name="Row">The row it was typed in, counted from 0; −1 for points of the line.</param>
/// <param name="Wild">It does not go with the others.</param>
public sealed record FillPoint(double HeightMm, double VolumeMl, int Row = -1, bool Wild = false);

/// <summary>Draws moulds from the engine's outlines.</summary>
internal static class MouldSketches
{
    private const int StraightSteps = 24;
    private const int MeshSteps = 72;
    private const int LineSteps = 60;

    private static readonly ConditionalWeakTable<MouldShape, MouldExample> Drawn = [];

    /// <summary>Every shape of the engine in sound proportions: a new one of plain measures appears without a line of its own.</summary>
    public static IReadOnlyList<MouldExample> Examples => [.. MouldShapes.All.Select(s => Drawn.GetValue(s, known => new(known.Key, known.DisplayName, Example(known))))];

    public static MouldSketch Of(Engine.Moulds.MouldBody mould)
    {
        var steps = mould.Shape.Needs is MouldNeeds.Mesh ? MeshSteps : StraightSteps;
        IReadOnlyList<double> heights = mould.Shape.Needs is not MouldNeeds.Mesh && mould.SurfaceHeightsMm.Count > 2 ? mould.SurfaceHeightsMm : [.. Enumerable.Range(0, steps + 1).Select(i => mould.HeightMm * i / steps)];
        var wall = heights.Select(z => new WallPoint(z, mould.Outline.HalfWidthMm(z))).ToList();
        IReadOnlyList<IReadOnlyList<SketchPoint>>? rings = mould.Outline.SectionMm is { Count: > 0 } cut ? [.. cut.Select(r => (IReadOnlyList<SketchPoint>)[.. r.Select(p => new SketchPoint(p.XMm, p.YMm))])] : null;
        return new(mould.HeightMm, rings?.Max(r => r.Max(p => Math.Abs(p.XMm))) ?? wall.Max(p => p.HalfWidthMm), wall) { Rings = rings };
    }

    public static FillCurve? Curve(FillRows fill, Engine.Moulds.MouldBody? mould, IReadOnlyCollection<string> wild)
    {
        var dots = fill.Complete.Select(c => new FillPoint(c.Reading.HeightMm, c.Reading.VolumeMl, c.Row, wild.Contains($"readings[{c.Row}]", StringComparer.Ordinal))).ToList();
        return mould is null ? null : new([.. Enumerable.Range(0, LineSteps + 1).Select(i => mould.HeightMm * i / LineSteps).Select(z => new FillPoint(z, mould.VolumeMl(z)))], dots);
    }

    private static MouldSketch? Example(MouldShape shape)
    {
        var spec = new MouldSpec(shape.Key, shape.Dimensions.ToDictionary(d => d.Name, d => d.Example, StringComparer.Ordinal)) { Readings = shape.Needs is MouldNeeds.Readings ? Bulb : null };
        return shape.Needs is MouldNeeds.Mesh ? Gem : MouldShapes.Make(spec) is { Ok: true } made ? Of(made.Value) : null;
    }

    // drawings only: a bulb with a neck that no plain measure describes, and a cut gem for what a mesh may be
    private static IReadOnlyList<FillReading> Bulb =>
        [new(8, 18), new(18, 70), new(30, 160), new(42, 252), new(54, 322), new(64, 356), new(76, 380), new(90, 412)];

    private static MouldSketch Gem => new(90, 50, [new(0, 0), new(58, 50), new(70, 50), new(90, 30)]);
}
