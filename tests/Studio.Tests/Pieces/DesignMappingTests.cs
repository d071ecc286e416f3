using Studio.Engine;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;
using Studio.Pieces;
using Mould = Studio.Moulds.Mould;

namespace Studio.Tests.Pieces;

public sealed class DesignMappingTests
{
    [Fact]
    public void A_design_comes_to_exactly_what_the_engine_says_of_the_same_numbers()
    {
        var byHand = LayersCalculation.Run(new LayersInput
        {
            Mould = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150 }),
            Resins = new Dictionary<string, ResinSpec>
            {
                ["c"] = new() { DensityGPerMl = 1.1, Mix = new MixSpec { PartsA = 100, PartsB = 44, By = "weight" }, MaxPourMm = 20, PotLifeMinutes = 45 },
                ["d"] = new() { DensityGPerMl = 1.1, Mix = new MixSpec { PartsA = 100, PartsB = 43, By = "weight" }, MaxPourMm = 50, PotLifeMinutes = 300 },
            },
            Waste = new WasteSpec { Percent = 3, PerBatchG = 5 },
            Layers =
            [
                new LayerSpec { Name = "Blue", Resin = "c", ToMm = 40, Additions = [new AdditionSpec { Name = "Blue pigment", PercentOfResin = 2, DensityGPerMl = 1.5 }] },
                new LayerSpec { Name = "Clear", Resin = "d", ThicknessMm = 60, Scatter = [new ScatterSpec { Name = "Quartz", MassG = 30, DensityGPerMl = 2.65 }] },
                new LayerSpec { Name = "Top", Resin = "c", ResinMl = 200 },
            ],
        }).Value;
        var figures = PieceBook.Figures(PieceSamples.Piece());
        figures.Result!.FinishedMassG.ShouldBe(byHand.FinishedMassG);
        figures.Result.CentreOfMassMm.ShouldBe(byHand.CentreOfMassMm);
        figures.Result.Layers.Select(l => (l.FromMm, l.ToMm, l.MixG, l.PartAG, l.PartBG, l.FaceMarkMm))
            .ShouldBe(byHand.Layers.Select(l => (l.FromMm, l.ToMm, l.MixG, l.PartAG, l.PartBG, l.FaceMarkMm)));
        figures.Findings.Select(f => (f.Path, f.Code)).ShouldContain(("layers[0]", "pour-too-deep"));
    }

    // V = base area · height / 3 (Machinery's Handbook, volumes of solids), and a pyramid filled to a share of its depth holds that share cubed
    [Fact]
    public void A_half_full_pyramid_takes_the_grams_of_an_eighth()
    {
        var piece = PieceSamples.Piece();
        piece.Layers = [piece.Layers[0]];
        (piece.Layers[0].ToMm, piece.Layers[0].Additions, piece.WastePercent, piece.WastePerBatchG) = (75, [], 0, 0);
        PieceBook.Figures(piece).Result!.Layers[0].MixG.ShouldBe(150.0 * 150 * 150 / 3 / 8 / 1000 * 1.1, 1e-9);
    }

    [Fact]
    public void Every_field_that_needs_another_look_is_named_at_once_and_without_contract_words()
    {
        var piece = PieceSamples.Piece();
        piece.Name = " ";
        piece.Layers[0].ToMm = -3;
        (piece.Layers[1].ThicknessMm, piece.Layers[1].Scatter) = (null, [new LayerScatter(null, "Quartz", null, null, null, null)]);
        (piece.Layers[2].ResinId, piece.Layers[2].Resin) = (0, null);
        piece.Former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 40, FromMm = 100 };
        piece.Fittings = [new PieceFitting(null, "Light string", 0)];
        piece.Tasks = [new PieceTask("", -1)];
        var figures = PieceBook.Figures(piece);
        figures.Errors.Select(e => e.Path).ShouldBe(
            ["layers[0].toMm", "layers[1]", "layers[1].scatter[0]", "layers[2].resin", "former.wallMm", "name", "fittings[0].count", "tasks[0].name", "tasks[0].minutes"], ignoreOrder: true);
        figures.Errors.ShouldAllBe(e => !e.Message.Contains('\'') && !e.Message.Contains("Mm", StringComparison.Ordinal));
        figures.Keepable.ShouldBeFalse();
        figures.Result.ShouldBeNull();
    }

    [Fact]
    public void A_sheet_without_a_density_is_complained_of_where_the_resin_is_chosen()
    {
        var piece = PieceSamples.Piece();
        piece.Layers[0].Resin!.DensityGPerMl = null;
        PieceBook.Figures(piece).Errors.Select(e => e.Path).ShouldContain("layers[0].resin");
    }

    [Fact]
    public void An_empty_mould_is_no_mistake()
    {
        var piece = PieceSamples.Piece();
        piece.Layers = [];
        PieceBook.Figures(piece).Keepable.ShouldBeTrue();
        PieceBook.Section(piece, null, _ => Studio.Drawing.LayerState.Planned)!.Bands.ShouldBeEmpty();
    }

    [Fact]
    public void Splitting_a_mix_is_a_note_and_too_deep_a_pour_a_warning()
    {
        var piece = PieceSamples.Piece();
        piece.Layers[1].Resin!.MaxBatchG = 150;
        var findings = PieceBook.Figures(piece).Findings;
        findings.Single(f => f.Code == "batch-split").Severity.ShouldBe(Severity.Note);
        findings.First(f => f.Code == "pour-too-deep").Severity.ShouldBe(Severity.Warn);
    }

    [Theory]
    [InlineData("pyramid", "baseMm", 150, "heightMm", 150)]
    [InlineData("cuboid", "widthMm", 150, "depthMm", 40)]
    [InlineData("cone", "bottomDiameterMm", 0, "topDiameterMm", 70)]
    public void The_first_box_for_lights_fits_with_room_to_the_wall(string shape, string a, double x, string b, double y)
    {
        var piece = PieceSamples.Piece();
        piece.Mould = new Mould { Shape = shape, Dimensions = new Dictionary<string, double> { ["heightMm"] = 120, [a] = x, [b] = y } };
        piece.Layers = PieceStart.Layers("clear", piece.Mould.Spec, [piece.Layers[1].Resin!]);
        piece.Layers.ForEach(l => l.Resin = PieceSamples.Piece().Layers[1].Resin);
        piece.Former = FormerStart.In(piece.Mould.Spec);
        var figures = PieceBook.Figures(piece);
        figures.Errors.ShouldBeEmpty();
        figures.Findings.ShouldNotContain(f => f.Code == "former-too-close");
    }

    [Theory]
    [InlineData("clear")]
    [InlineData("colours")]
    public void What_a_piece_begins_with_asks_for_no_deeper_pour_than_the_sheets_allow(string start)
    {
        foreach (var height in new[] { 12.0, 60, 95, 150, 240 })
        {
            var piece = PieceSamples.Piece();
            piece.Mould = PieceSamples.Pyramid(150, height);
            var (casting, deep) = (piece.Layers[0].Resin!, piece.Layers[1].Resin!);
            piece.Layers = PieceStart.Layers(start, piece.Mould.Spec, [casting, deep]);
            piece.Layers.ForEach(l => l.Resin = l.ResinId == 1 ? casting : deep);
            var figures = PieceBook.Figures(piece);
            figures.Result!.Layers[^1].ToMm.ShouldBe(height);
            figures.Findings.ShouldNotContain(f => f.Code == "pour-too-deep");
        }
    }
}
