using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Parts;

namespace Studio.Engine.Tests.Parts;

/// <summary>A pyramid of 150 mm base and height with a box of 80 by 60 mm, 40 mm deep, walls of 3 mm.</summary>
internal static class Box
{
    public static readonly FormerSpec Former = new() { OuterWidthMm = 80, OuterDepthMm = 60, FromMm = 110, WallMm = 3 };

    public static MouldBody Pyramid(double baseMm = 150, double heightMm = 150) => Made("pyramid", ("baseMm", baseMm), ("heightMm", heightMm));

    public static MouldBody Made(string shape, params (string Name, double Value)[] sizes) =>
        MouldShapes.Make(new MouldSpec(shape, sizes.ToDictionary(s => s.Name, s => s.Value))).Value;

    public static PartsInput Input(CutSpec? cut = null, CoverSpec? cover = null, FeetSpec? feet = null) =>
        new() { Mould = Pyramid(), Former = Former, Cut = cut ?? new CutSpec { ProudMm = 0 }, Cover = cover, Feet = feet };

    public static string[] Codes(this PartsPlan plan) => [.. plan.Findings.Select(f => f.Code)];

    public static SheetPart Part(this PartsPlan plan, string key) => plan.Parts.Single(p => p.Key == key);
}
