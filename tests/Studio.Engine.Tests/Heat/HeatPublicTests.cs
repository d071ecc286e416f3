using System.Text.Json;
using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>The public reference cases, computed by an independent solver on three meshes each and extrapolated; tolerances as they suggest.</summary>
public sealed class HeatPublicTests
{
    public static TheoryData<string> Cases => [.. All().Select(c => c.GetProperty("id").GetString()!)];

    // tolerance as the cases suggest: peak 1.5 K or 3 % of the rise, times 4 %, conversion 0.012
    [Theory]
    [MemberData(nameof(Cases))]
    [Trait("Slow", "solver")]
    public void Agrees_with_the_converged_reference(string id)
    {
        var said = All().Single(c => c.GetProperty("id").GetString() == id);
        var (input, mould) = Read(said);
        var round = input.Mould.Shape is "cone" or "sphere";
        var made = HeatRun.Run(input, mould, round ? new HeatFineness(16, 20, 5) : new HeatFineness(8, 10, 3), stop: TestContext.Current.CancellationToken);
        made.EnergyMiss.ShouldBe(0, 1e-9);
        foreach (var (i, got, want) in made.Layers.Zip(said.GetProperty("reference").GetProperty("layers").EnumerateArray()).Select((pair, i) => (i, pair.First, pair.Second)))
        {
            var covered = (i + 1 < input.Layers.Count ? input.Layers[i + 1].PouredAtHours : input.UntilHours) - input.Layers[i].PouredAtHours;
            var peak = want.GetProperty("peak_temperature_C").GetDouble();
            // the reference watches each layer until the next pour
            got.PeakBeforeNextPourCelsius.ShouldBe(peak, Math.Max(0.2, 0.015 * (peak - 23)));
            Near(got.PeakBeforeNextPourAfterHours, want, "peak_time_after_pour_h", 0.02, covered);
            Near(got.FirstGelAfterHours, want, "first_gel_after_pour_h", 0.02, covered);
            Near(got.LastGelAfterHours, want, "last_gel_after_pour_h", 0.02, covered);
            got.LeastConversion.ShouldBe(want.GetProperty("min_conversion_at_stage_end").GetDouble(), 0.012);
            got.MeanConversion.ShouldBe(want.GetProperty("mean_conversion_at_stage_end").GetDouble(), 0.004);
        }
    }

    [Theory]
    [InlineData("P2-pyramid-two-layers")]
    [InlineData("P3-cube-standard-thin")]
    public void The_preview_stays_within_half_a_kelvin_of_the_reference_below_65_degrees(string id)
    {
        var said = All().Single(c => c.GetProperty("id").GetString() == id);
        var (input, mould) = Read(said);
        foreach (var (got, want) in HeatRun.Run(input, mould, null, preview: true, stop: TestContext.Current.CancellationToken).Layers.Zip(said.GetProperty("reference").GetProperty("layers").EnumerateArray()))
        {
            got.PeakBeforeNextPourCelsius.ShouldBe(want.GetProperty("peak_temperature_C").GetDouble(), 0.5);
        }
    }

    // null in the reference: not before the layer was covered
    private static void Near(double? got, JsonElement layer, string name, double share, double covered)
    {
        var want = layer.GetProperty(name);
        if (want.ValueKind is JsonValueKind.Null)
        {
            (got ?? double.PositiveInfinity).ShouldBeGreaterThan(covered, name);
        }
        else
        {
            got.ShouldNotBeNull(name).ShouldBe(want.GetDouble(), share * want.GetDouble(), name);
        }
    }

    private static List<JsonElement> All()
    {
        using var file = File.OpenRead(Path.Combine(Sources.Root(), "tests", "Studio.Engine.Tests", "Heat", "heat-public.json"));
        return [.. JsonDocument.Parse(file).RootElement.GetProperty("cases").EnumerateArray()];
    }

    private static (HeatInput Input, MouldBody Mould) Read(JsonElement c)
    {
        var m = c.GetProperty("mould");
        double Mm(string name) => m.GetProperty(name).GetDouble();
        var spec = m.GetProperty("shape").GetString() switch
        {
            "cylinder" => new MouldSpec("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = Mm("width_mm"), ["topDiameterMm"] = Mm("width_mm"), ["heightMm"] = Mm("height_mm") }),
            "inverted_square_pyramid" => new MouldSpec("pyramid", new Dictionary<string, double> { ["sides"] = 4, ["baseMm"] = Mm("width_mm"), ["heightMm"] = Mm("height_mm"), ["tipMm"] = Mm("tip_flat_width_mm") }),
            "cube" => new MouldSpec("cuboid", new Dictionary<string, double> { ["widthMm"] = Mm("width_mm"), ["depthMm"] = Mm("width_mm"), ["heightMm"] = Mm("height_mm") }),
            _ => new MouldSpec("sphere", new Dictionary<string, double> { ["diameterMm"] = Mm("height_mm"), ["openingDiameterMm"] = 1e-3 }),
        };
        var b = c.GetProperty("boundary");
        var room = c.GetProperty("room");
        double from = 0;
        var layers = new List<HeatLayer>();
        foreach (var l in c.GetProperty("layers").EnumerateArray())
        {
            var r = c.GetProperty("resins").GetProperty(l.GetProperty("resin").GetString()!);
            double R(string name) => r.GetProperty(name).GetDouble();
            var to = from + l.GetProperty("depth_mm").GetDouble();
            layers.Add(new HeatLayer(
                new Kinetics
                {
                    RateAt23CPerS = R("rate_at_23C_per_s"),
                    Kappa = R("kappa"),
                    M = R("m"),
                    N = R("n"),
                    ActivationJPerMol = R("activation_energy_J_per_mol"),
                    HeatJPerKg = R("heat_of_reaction_J_per_kg"),
                    GlassStartC = R("Tg0_C"),
                    GlassEndC = R("Tg_inf_C"),
                    Lambda = R("lambda"),
                    VitrificationOffsetK = R("vitrification_offset_K"),
                    VitrificationWidthK = R("vitrification_width_K"),
                    GelConversion = R("gel_conversion"),
                },
                R("density_kg_per_m3"), R("specific_heat_J_per_kgK"), R("conductivity_W_per_mK"), from, to, l.GetProperty("pour_time_h").GetDouble(), l.GetProperty("pour_temperature_C").GetDouble()));
            from = to;
        }

        return (new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec
            {
                ThicknessMm = Mm("wall_thickness_mm"),
                FloorMm = Mm("floor_thickness_mm"),
                RoofMm = Mm("roof_thickness_mm"),
                ConductivityWPerMK = Mm("conductivity_W_per_mK"),
                DensityKgPerM3 = Mm("density_kg_per_m3"),
                HeatCapacityJPerKgK = Mm("specific_heat_J_per_kgK"),
                StartCelsius = c.GetProperty("initial_mould_temperature_C").GetDouble(),
            },
            Boundary = new BoundarySpec(b.GetProperty("h_top_W_per_m2K").GetDouble(), b.GetProperty("h_side_W_per_m2K").GetDouble(), b.GetProperty("h_bottom_W_per_m2K").GetDouble()),
            Room = [.. room.GetProperty("time_h").EnumerateArray().Zip(room.GetProperty("temperature_C").EnumerateArray(), (t, v) => new RoomReading(t.GetDouble(), v.GetDouble()))],
            Layers = layers,
            UntilHours = c.GetProperty("end_time_h").GetDouble(),
        }, MouldShapes.Make(spec).Value);
    }
}
