using CsCheck;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.Layers;

/// <summary>Laws that hold whatever the numbers.</summary>
public sealed class LayersPropertyTests
{
    private const double Close = 1e-9;

    private static readonly Gen<MouldSpec> Moulds = Gen.OneOf(
        Gen.Select(Gen.Int[3, 12], Gen.Double[20, 120], Gen.Double[20, 120], Gen.Double[0, 120], (n, b, h, t) => Spec("pyramid", ("sides", n), ("baseMm", b), ("heightMm", h), ("tipMm", t))),
        Gen.Select(Gen.Double[20, 120], Gen.Double[20, 120], Gen.Double[20, 120], Gen.Double[0, 20], (w, d, h, a) => Spec("cuboid", ("widthMm", w), ("depthMm", d), ("heightMm", h), ("draftDegrees", a))),
        Gen.Select(Gen.Int[3, 12], Gen.Double[20, 120], Gen.Double[20, 120], (n, e, h) => Spec("prism", ("sides", n), ("edgeMm", e), ("heightMm", h))),
        Gen.Select(Gen.Double[0, 120], Gen.Double[20, 120], Gen.Double[20, 120], (b, t, h) => Spec("cone", ("bottomDiameterMm", b), ("topDiameterMm", t), ("heightMm", h))));

    private static readonly Gen<ResinSpec> Resins = Gen.Select(
        Gen.Double[1, 100], Gen.Double[1, 100], Gen.Double[0.9, 1.3], Gen.Double[0.9, 1.3], Gen.Bool, Gen.Double[200, 2000], (a, b, densityA, densityB, byWeight, most) => new ResinSpec
        {
            Mix = new MixSpec { PartsA = a, PartsB = b, By = byWeight ? "weight" : "volume", DensityAGPerMl = densityA, DensityBGPerMl = densityB },
            MaxBatchG = most,
        });

    private static readonly Gen<double[]> Cuts = Gen.Double[0.01, 1].Array[1, 6];

    private static readonly Gen<LayersInput> Inputs = Gen.Select(Moulds, Resins, Cuts, Gen.Double[0, 20], Gen.Double[0, 10], (mould, resin, cuts, percent, perBatch) => new LayersInput
    {
        Mould = mould,
        Resins = new Dictionary<string, ResinSpec> { ["r"] = resin },
        Layers = [.. cuts.Distinct().Order().Select((c, i) => new LayerSpec
        {
            Name = $"{i}",
            Resin = "r",
            ToMm = c / cuts.Max() * mould.Dimensions["heightMm"],
            Additions = [new AdditionSpec { Name = "powder", PercentOfResin = 3 * i, DensityGPerMl = 2 }],
        })],
        Waste = new WasteSpec { Percent = percent, PerBatchG = perBatch },
    });

    [Fact]
    public void Layers_to_the_rim_add_up_to_the_mould() => Inputs.Sample(input =>
    {
        var result = Result(input);
        Same(result.Layers.Sum(l => l.GrossMl), result.CapacityMl).ShouldBeTrue();
        result.Layers.Zip(result.Layers.Skip(1)).ShouldAllBe(p => p.First.ToMm == p.Second.FromMm);
    });

    [Fact]
    public void Parts_add_up_to_the_mix_and_batches_add_up_to_the_parts() => Inputs.Sample(input =>
        Result(input).Layers.ShouldAllBe(l =>
            Same(l.PartAG + l.PartBG, l.MixG)
            && Same(l.Batches.Sum(b => b.PartAG), l.PartAG)
            && Same(l.Batches.Sum(b => b.PartBG), l.PartBG)));

    [Fact]
    public void No_batch_is_too_heavy_and_one_batch_fewer_would_be() => Inputs.Sample(input =>
    {
        var most = input.Resins["r"].MaxBatchG!.Value;
        Result(input).Layers.ShouldAllBe(l =>
            l.Batches.All(b => b.PartAG + b.PartBG <= most * (1 + (2 * Close)))
            && (l.Batches.Count == 1 || ((l.MixG - (l.Batches.Count * input.Waste!.PerBatchG)) / (l.Batches.Count - 1)) + input.Waste.PerBatchG > most));
    });

    [Fact]
    public void Resin_and_additions_fill_what_is_left() => Inputs.Sample(input =>
        Result(input).Layers.Zip(input.Layers).ShouldAllBe(p =>
            Same(p.First.ResinMl + p.First.DisplacedMl + p.First.Additions.Zip(p.Second.Additions).Sum(a => a.First.Grams / a.Second.DensityGPerMl), p.First.GrossMl)));

    [Fact]
    public void Asking_for_the_resin_of_a_layer_finds_its_level_again() => Inputs.Sample(input =>
    {
        var there = Result(input);
        var back = Result(input with { Layers = [.. input.Layers.Select((l, i) => l with { ToMm = null, ResinMl = there.Layers[i].ResinMl })] });
        back.Layers.Zip(there.Layers).ShouldAllBe(p => Math.Abs(p.First.ToMm - p.Second.ToMm) < 1e-6 && Same(p.First.ResinMl, p.Second.ResinMl));
    });

    [Fact]
    public void A_mould_twice_as_large_takes_eight_times_as_much() => Inputs.Sample(input =>
    {
        var twice = input with
        {
            Mould = input.Mould with { Dimensions = input.Mould.Dimensions.ToDictionary(d => d.Key, d => d.Key is "sides" or "draftDegrees" ? d.Value : 2 * d.Value) },
            Layers = [.. input.Layers.Select(l => l with { ToMm = 2 * l.ToMm })],
        };
        var (large, small) = (Result(twice), Result(input));
        Same(large.FinishedMassG, 8 * small.FinishedMassG).ShouldBeTrue();
        Same(large.CentreOfMassMm, 2 * small.CentreOfMassMm).ShouldBeTrue();
    });

    [Fact]
    public void Centre_of_mass_lies_within_the_piece() => Inputs.Sample(input => Result(input).CentreOfMassMm.ShouldBeInRange(0, Result(input).Layers[^1].ToMm));

    [Fact]
    public void No_text_throws() => Gen.OneOf(Gen.String, Gen.Char["{}[]:,\"0123456789.eE-+nulltruefas \n\\ud8"].Array.Select(c => new string(c)))
        .Sample(text => Calculations.All.Keys.ShouldAllBe(what => Calculations.Run(what, text, null).ExitCode == 2));

    private static LayersResult Result(LayersInput input) => LayersCalculation.Run(input).Value;

    private static bool Same(double a, double b) => Math.Abs(a - b) <= Close * Math.Max(Math.Max(Math.Abs(a), Math.Abs(b)), 1e-6);

    private static MouldSpec Spec(string shape, params (string Name, double Value)[] dimensions) => new(shape, dimensions.ToDictionary(d => d.Name, d => d.Value));
}
