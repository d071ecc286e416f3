using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>A preview is worked out again with every key that is typed: its loop must leave nothing to be collected.</summary>
public sealed class HeatStepperTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Steps_allocate_nothing(bool preview)
    {
        var kinetics = new Kinetics { RateAt23CPerS = 1e-4, Kappa = 0.03, ActivationJPerMol = 57_000, HeatJPerKg = 350_000, GlassEndC = 52 };
        var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 10 });
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10 },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, 23), new RoomReading(10, 18)],
            Layers = [new HeatLayer(kinetics, 1100, 1900, 0.19, 0, 50, 0, 23), new HeatLayer(kinetics, 1100, 1900, 0.19, 50, 80, 10, 23)],
            UntilHours = 24,
            PictureHours = [1, 2, 3],
        };
        var grid = HeatModel.Grid(input, MouldShapes.Make(spec).Value, new HeatFineness(4, 4, 1), preview);
        var stage = new HeatStage(grid, input, 2);
        double[][] conversion = [new double[grid.NodeCount], new double[grid.NodeCount]];
        var state = new StageState(input, stage, [.. Enumerable.Repeat(23.0, grid.NodeCount)], conversion);
        var watch = new HeatWatch(input.Layers[1], stage, 1, grid, state, 14);
        var album = new HeatAlbum(input, grid);
        var stepper = new HeatStepper(stage, state, new RoomCurve(input.Room), 1);
        state.Become(state.Temperature, state.Conversion, 0, 23);
        album.Turn(stage, 0);
        var at = Steps(20, 0); // code is compiled, the factor is made
        var before = GC.GetAllocatedBytesForCurrentThread();
        Steps(100, at);
        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBe(0);
        state.Conversion.Max().ShouldBeGreaterThan(0.3);

        double Steps(int count, double hours)
        {
            for (var k = 0; k < count; k++)
            {
                stepper.Try(hours, 256);
                hours += 256 / 3600.0;
                stepper.Accept(256, 20);
                watch.See(hours, state);
                album.See(hours, state);
            }

            return hours;
        }
    }
}
