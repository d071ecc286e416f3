using Bunit;
using Studio.Bench;
using Studio.Calibration;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Engine.Custody;
using Studio.Engine.Fit;
using Studio.Engine.Parts;
using Studio.Film;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Tests.Parts;

namespace Studio.Tests.Shell;

/// <summary>The scenes of the design, the bench and the room.</summary>
public sealed partial class NumbersTests
{
    private async Task<NumberScene> PourAsync()
    {
        var id = await Scene.PieceAsync();
        await Scene.ReadingAsync(23);
        await Scene.ChangeAsync<Keepsake>(_ => true, k => (k.Permits, k.Count, k.HeldCount) = (Permissions.EmbedPart, 5, 5));
        await Scene.ChangeAsync<KeepsakeEvent>(_ => true, e => e.Count = 5);
        var keepsake = (await Scene.AllAsync<Keepsake>()).Single().Id;
        await Scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Placed = [new(keepsake, "brass button", 4, 8.5, null)]);
        var page = Render<BenchPage>(p => p.Add(b => b.Id, id));
        page.WaitForElement(".things");
        page.Find("#next-step").Click();
        page.Find("#next-step").Click();
        foreach (var part in new[] { "A", "B" })
        {
            page.Find("#scale").Input(page.Find("#left-" + part).TextContent);
            page.Find("#add-reading").Click();
        }

        page.Find("#next-step").Click();
        Labelled(page, "How many went in").Change("2");
        page.Find($"#set-{keepsake}-rest").Change("Keepsake drawer 2");
        page.WaitForAssertion(() => page.Find("#next-step").HasAttribute("disabled").ShouldBeFalse(), TimeSpan.FromSeconds(20));
        return new(page, () => PressAsync(page, "#next-step")) { Good = ("Room", "23.5") };
    }

    private async Task<NumberScene> SetRightAsync()
    {
        var piece = await Scene.PieceAsync();
        await Scene.PourAsync(piece, 0, Scene.Now.AddHours(-1));
        var sheet = (await Of<BenchBook>().ReadAsync(piece))!;
        var page = Render<PourTrace>(p => p.Add(t => t.Sheet, sheet).Add(t => t.Pour, sheet.Pours[0]));
        Click(page, "Set the entry right");
        Labelled(page, "Lot").Change("L 77");
        Labelled(page, "Why it is set right").Change("the label says so");
        return new(page, () => page.FindAll("button").First(b => b.TextContent == "Keep the correction").ClickAsync(new())) { Good = ("Grams of A", "101") };
    }

    private Task<NumberScene> RoomAsync()
    {
        var page = Render<RoomForm>();
        return Task.FromResult(new NumberScene(page, () => PressAsync(page, "#log-room")) { Good = ("Now", "21") });
    }

    private async Task<NumberScene> LogAsync()
    {
        var piece = await Scene.PieceAsync();
        await Scene.PourAsync(piece, 0, Scene.Now.AddHours(-1));
        await using (var db = House.Open())
        {
            db.Add(new Sensor { Name = "Probe", EveryMinutes = 10 });
            await db.SaveChangesAsync();
        }

        var pour = (await Scene.AllAsync<Pour>()).Single().Id;
        var page = Render<LogPage>(p => p.Add(l => l.Id, pour));
        page.WaitForElement("#log-form");
        page.FindAll("input[name=place]")[LogWords.Places.ToList().FindIndex(p => p.Key is LogPlace.Height)].Change(true);
        Labelled(page, "After the pour").Change("10");
        Labelled(page, "It showed").Change("24");
        page.Find("#add-reading").Click();
        Labelled(page, "Its height").Change("5");
        return new(page, () => page.Find("#log-form").SubmitAsync()) { Good = ("Its height", "6") };
    }

    private Task<NumberScene> SensorAsync()
    {
        var page = Render<SensorPart>(p => p.Add(s => s.Form, new SensorForm { Name = "Shelf" }));
        return Task.FromResult(new NumberScene(page, () => page.Find("form").SubmitAsync()) { Good = ("Sends every", "15") });
    }

    private Task<NumberScene> BrokerAsync()
    {
        var page = Render<BrokerPart>();
        Labelled(page, "Broker").Change("broker.local");
        return Task.FromResult(new NumberScene(page, () => page.Find("form").SubmitAsync()) { Good = ("Port", "1884") });
    }

    private async Task<NumberScene> PieceAsync(bool layer)
    {
        var page = await DesignAsync();
        page.Find("#layer-1 .head").Click();
        return new(page, () => PressAsync(page, "#keep"))
        {
            Good = layer ? ("Thickness", "55") : ("Waste, left in each cup", "6"),
            Only = layer ? typeof(LayerRow) : null,
            Others = layer ? [] : [typeof(BubblePart), typeof(LayerRow)],
        };
    }

    private async Task<NumberScene> BubbleAsync()
    {
        var page = (await DesignAsync()).FindComponent<BubblePart>();
        await page.Find("details").TriggerEventAsync("ontoggle", EventArgs.Empty);
        page.WaitForElement(".layers-said li");
        return new(page, () => Task.CompletedTask) { Good = (null!, "1"), Answer = "Layer 1, Blue" };
    }

    // the whistle pyramid with one of everything that is asked for a number
    private async Task<IRenderedComponent<PiecePage>> DesignAsync()
    {
        var piece = PartsSamples.Piece();
        piece.Commission = new Commission { Number = "26-014", Title = "A pyramid", Remembers = "A ferry pilot", Customer = new Customer { Name = "Invented" } };
        piece.Parts = piece.Parts! with
        {
            Light = new LightSpec { CurrentMa = 20 },
            Fittings = [new FittingSpec { Name = "Battery box", WidthMm = 30, DepthMm = 20, HeightMm = 10 }],
        };
        piece.Fittings = [new(null, "Light string", 1)];
        piece.Tasks = [new("Sand and polish", 60)];
        piece.Sheets = [FilmStart.In(piece, null)];
        piece.Layers[1].Additions = [new(null, "Mica", 1, 2.8)];
        piece.Layers[1].Placed = [new(null, "Shell", 4, 2.7, null), new(null, "Photograph", null, null, 1)];
        await using (var db = House.Open())
        {
            db.Add(piece);
            await db.SaveChangesAsync();
        }

        var page = Render<PiecePage>(p => p.Add(x => x.Id, piece.Id));
        page.WaitForElement("#keep");
        return page;
    }
}
