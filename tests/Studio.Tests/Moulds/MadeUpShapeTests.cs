using Bunit;
using FluentValidation;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Drawing;
using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;
using Studio.Heat;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Settings;
using Studio.SignIn;
using Studio.Tips;

namespace Studio.Tests.Moulds;

/// <summary>A shape that nobody but these tests knows: form, drawing, grams, words and heat follow from its own file.</summary>
public sealed class MadeUpShapeTests : BunitContext
{
    private readonly StudioDatabase database = new();

    public MadeUpShapeTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        this.AddAuthorization().SetAuthorized("maker");
        Services.AddSingleton(database.Factory).AddSingleton(database.News).AddSingleton<TimeProvider>(database.Clock);
        Services.AddSingleton(new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses()));
        Services.AddScoped<TipBook>().AddScoped<SettingsBook>();
        Services.AddScoped(s => new Who(s.GetRequiredService<AuthenticationStateProvider>(), new AlwaysStands()));
        Services.AddSingleton<IValidator<MouldForm>>(new MouldValidator());
        Render<MudPopoverProvider>();
    }

    private static MouldSpec Tumbler => new(TumblerMould.Kind.Key, new Dictionary<string, double>(StringComparer.Ordinal) { ["acrossMm"] = 80, ["heightMm"] = 100 });

    protected override void Dispose(bool disposing)
    {
        MouldShapes.Beside.Value = null;
        base.Dispose(disposing);
        if (disposing)
        {
            database.Dispose();
        }
    }

    [Fact]
    public void The_mould_page_offers_it_draws_it_and_asks_for_its_measures()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind;
        var page = Render<MouldPage>();
        page.Find("input[name=shape][value=tumbler]").Change("tumbler");
        page.FindAll("label").Select(l => l.TextContent).ShouldContain(l => l.StartsWith("Width across", StringComparison.Ordinal));
        page.Markup.ShouldContain("It stands by itself.");
        MouldBook.Examples.Single(e => e.Key == "tumbler").Sketch.ShouldNotBeNull().WidestMm.ShouldBe(50, 1e-9);
    }

    [Fact]
    public void It_is_said_in_its_own_words()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind;
        MouldWords.Shape(Tumbler).ShouldBe("Wide tumbler");
        MouldWords.Sizes(Tumbler, "metric").ShouldBe("Width across 80 mm, height 100 mm");
    }

    // a circle of 80 mm has 5026.548 mm²; in a section through the middle the layer up to 50 mm is 80 × 50 mm
    [Fact]
    public void Its_section_is_drawn()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind;
        var view = SectionView.For(Tumbler, [new SectionLayer("Base", 0, 50, "#cfd8d6", LayerState.Poured)]).ShouldNotBeNull();
        view.WidestMm.ShouldBe(80, 0.05);
        Tests.Drawing.SectionViewTests.Area(view.Bands.ShouldHaveSingleItem().Rings).ShouldBe(80 * 50, 80 * 50 * 1e-3);
    }

    [Fact]
    public void Its_grams_are_its_volume_times_the_density()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind;
        var result = LayersCalculation.Run(new LayersInput
        {
            Mould = Tumbler,
            Resins = new Dictionary<string, ResinSpec>(StringComparer.Ordinal) { ["clear"] = new() { Mix = new MixSpec { PartsA = 2, PartsB = 1, By = "weight" }, DensityGPerMl = 1.1 } },
            Layers = [new LayerSpec { Name = "Base", Resin = "clear", ToMm = 50 }],
        });
        result.Ok.ShouldBeTrue();
        result.Value.Layers[0].ResinG.ShouldBe(Math.PI / 4 * 80 * 80 * 50 / 1000 * 1.1, 0.05);
    }

    // it is a cylinder by another name, so its heat must be the cylinder's
    [Fact]
    public void Its_heat_is_worked_out_where_it_lays_a_grid()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind;
        HeatPlan.NoGrid(new Mould { Shape = "tumbler" }).ShouldBeNull();
        HottestC(Tumbler).ShouldBe(HottestC(ConeMould.Cylinder(80, 100)), 1e-6);
    }

    [Fact]
    public void Where_it_lays_none_it_says_why()
    {
        MouldShapes.Beside.Value = TumblerMould.Kind with { Grid = null, NoGrid = "The heat of a tumbler cannot be worked out: its wall is hollow." };
        HeatPlan.NoGrid(new Mould { Shape = "tumbler" }).ShouldBe("The heat of a tumbler cannot be worked out: its wall is hollow. Go by the data sheet's greatest depth, and log a thermometer in the first pour.");
        var refused = HeatCalculation.Run(new HeatSpec { Mould = Tumbler, Wall = new WallSpec { ThicknessMm = 5 }, Resins = new Dictionary<string, HeatResin>(StringComparer.Ordinal), Layers = [], Room = [new(0, 20)], UntilHours = 1 }, Xunit.TestContext.Current.CancellationToken);
        refused.Errors.Single(e => e.Path == "mould.shape").Message.ShouldStartWith("The heat of a tumbler cannot be worked out: its wall is hollow. Use one of: pyramid, cuboid, ");
    }

    [Fact]
    public void A_shape_that_says_nothing_of_heat_has_none_and_says_so()
    {
        MouldShapes.Beside.Value = new MouldShape("tumbler", "Tumbler", [], _ => throw new NotSupportedException());
        HeatPlan.NoGrid(new Mould { Shape = "tumbler" }).ShouldNotBeNull().ShouldStartWith("The heat of this shape is not worked out yet: nobody has laid a grid into it.");
    }

    private static double HottestC(MouldSpec spec)
    {
        var kinetics = new Kinetics { RateAt23CPerS = 4e-5, Kappa = 0.04, ActivationJPerMol = 55e3, HeatJPerKg = 360e3 };
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 5, FloorMm = 5 },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, 23)],
            Layers = [new HeatLayer(kinetics, 1100, 1900, 0.19, 0, 50, 0, 23)],
            UntilHours = 20,
        };
        return HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(4, 4, 1), stop: Xunit.TestContext.Current.CancellationToken).Layers[0].PeakCelsius;
    }

    private sealed class TumblerMould : TaperedMould
    {
        private readonly double acrossMm;

        private TumblerMould(double acrossMm, double heightMm)
            : base(Kind, heightMm, (Math.PI / 4 * acrossMm * acrossMm, 0, 0), 0)
        {
            this.acrossMm = acrossMm;
            Outline = new Outline(_ => acrossMm / 2, _ => Circle(acrossMm / 2, 180));
        }

        public static MouldShape Kind { get; } = new("tumbler", "Tumbler", [Dimension.Length("acrossMm", "Width across"), Dimension.Height], d => new TumblerMould(d["acrossMm"], d["heightMm"]))
        {
            Called = s => s.Dimensions["acrossMm"] > 60 ? "Wide tumbler" : "Tumbler",
            Note = "It stands by itself.",
            Grid = MouldGrid.Round,
        };

        public override Outline Outline { get; }

        protected override double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm) =>
            (acrossMm / 2) - Math.Sqrt((halfWidthMm * halfWidthMm) + (halfDepthMm * halfDepthMm));
    }
}
