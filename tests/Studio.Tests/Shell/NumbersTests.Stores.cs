using Bunit;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Office;
using Studio.Resins;
using Studio.Stores;
using Studio.Tests.Keepsakes;
using Studio.Tests.Resins;

namespace Studio.Tests.Shell;

/// <summary>The scenes of the keepsakes, the stores and the office.</summary>
public sealed partial class NumbersTests
{
    private Task<NumberScene> SettingsAsync()
    {
        var page = Render<SettingsPage>();
        return Task.FromResult(new NumberScene(page, () => page.Find("form").SubmitAsync()) { Good = ("Usual temperature of the room", "20") });
    }

    private async Task<NumberScene> IntakeAsync()
    {
        var commission = (await Scene.FindAsync(await Scene.PieceAsync())).CommissionId;
        var script = JSInterop.SetupModule("/intake.js");
        script.Mode = JSRuntimeMode.Loose;
        script.SetupModule(i => i.Identifier == "tray").Setup<int[]>("ids").SetResult([]);
        var words = script.SetupModule(i => i.Identifier == "words");
        words.Mode = JSRuntimeMode.Loose;
        Dictionary<string, string[]> filled = new(StringComparer.Ordinal)
        {
            ["kind"] = ["dried-flower"],
            ["description"] = ["heather from the hill"],
            ["permits"] = [Permissions.EmbedPart],
            ["place"] = ["Drawer 1"],
            ["submitKey"] = ["k1"],
        };
        script.Setup<Dictionary<string, string[]>?>("draft", _ => true).SetResult(new(filled, StringComparer.Ordinal) { ["count"] = ["5"], ["massG"] = ["20"] });
        words.Setup<Dictionary<string, string[]>>("values").SetResult(filled);
        var page = Render<IntakePage>(p => p.Add(i => i.CommissionId, commission));
        page.WaitForAssertion(() => Labelled(page, "Mass, if weighed").GetAttribute("value").ShouldBe("20"));
        return new(page, () => page.Find("form.intake").SubmitAsync()) { Good = ("Mass, if weighed", "21") };
    }

    private async Task<NumberScene> ActAsync(string act)
    {
        var view = await TakenInAsync();
        var page = Render<ActPanel>(p => p.Add(a => a.View, view).Add(a => a.Act, act));
        page.Find("[name=words]").Change("in the small mould");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = act is CustodyKind.Divided ? ("How many more", "2") : (act is CustodyKind.Weighed ? "The scale shows" : "How much", "2") };
    }

    private async Task<NumberScene> CorrectAsync()
    {
        var view = await TakenInAsync();
        var page = Render<CorrectPanel>(p => p.Add(c => c.View, view));
        page.Find("[name=reason]").Change("weighed again");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("Mass", "21") };
    }

    private async Task<NumberScene> RightAsync()
    {
        var view = await TakenInAsync();
        var form = new ActForm { Act = CustodyKind.SetIn, PieceId = view.Pieces[0].Id, Count = 2, MassG = 3, Place = "Drawer 1" };
        var done = await Of<KeepsakeBook>().DoAsync(view.Keepsake.Id, view.Keepsake.Version, form, "Mo");
        done.Ok.ShouldBeTrue(done.Words);
        view = (await Of<KeepsakeBook>().ViewAsync(view.Keepsake.EntryNumber))!;
        var page = Render<RightPanel>(p => p.Add(r => r.View, view).Add(r => r.Line, view.Chain.First(l => l.SetRight is not null)));
        page.Find("[name=why]").Change("counted again");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("How much", "2.5") };
    }

    private async Task<KeepsakeView> TakenInAsync()
    {
        var commission = (await Scene.FindAsync(await Scene.PieceAsync(keepsakes: 0))).CommissionId;
        var form = KeepsakeScene.Form(permits: Permissions.EmbedPart, massG: 20);
        form.Count = 5;
        var taken = await Of<KeepsakeBook>().TakeInAsync(commission, form, "Mo");
        taken.Ok.ShouldBeTrue(taken.Words);
        return (await Of<KeepsakeBook>().ViewAsync(taken.EntryNumber))!;
    }

    private async Task<IRenderedComponent<MouldPage>> CubeAsync()
    {
        var saved = await Of<MouldBook>().SaveAsync(new() { Name = "Cube", Shape = "cuboid", WallMaterial = WallMaterials.All[0].Key, WallMm = 6, Owned = 1, Dimensions = new(StringComparer.Ordinal) { ["widthMm"] = 60, ["depthMm"] = 60, ["heightMm"] = 60 } }, "Mo");
        saved.Ok.ShouldBeTrue(saved.Words);
        var page = Render<MouldPage>(p => p.Add(m => m.Id, saved.Id));
        page.WaitForElement("#mould-form");
        return page;
    }

    private async Task<NumberScene> MouldAsync()
    {
        var page = await CubeAsync();
        return new(page, () => page.Find("#mould-form").SubmitAsync()) { Good = ("How many you own", "2"), Others = [typeof(WaterPart), typeof(LevelPart)] };
    }

    private Task<NumberScene> FillAsync()
    {
        var page = Render<MouldPage>();
        page.Find("input[name=shape][value=measured]").Change("measured");
        Labelled(page, "Name").Change("Measured");
        foreach (var (row, height, water) in new[] { (0, "10", "50"), (1, "20", "110"), (2, "30", "180") })
        {
            page.FindAll($"#reading-{row} input")[0].Input(height);
            page.FindAll($"#reading-{row} input")[1].Input(water);
            page.Find($"#reading-{row}").KeyDown(Key.Enter);
        }

        return Task.FromResult(new NumberScene(page, () => page.Find("#mould-form").SubmitAsync()) { Good = ("How many you own", "2") });
    }

    private async Task<NumberScene> WaterAsync()
    {
        var page = (await CubeAsync()).FindComponent<WaterPart>();
        Labelled(page, "Filled to").Input("30");
        Labelled(page, "Water").Input("100");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("Water", "101") };
    }

    private async Task<NumberScene> LevelAsync() =>
        new((await CubeAsync()).FindComponent<LevelPart>(), () => Task.CompletedTask) { Good = (null!, "30"), Answer = "across at its widest" };

    private async Task<NumberScene> ResinAsync()
    {
        var saved = await Of<ResinBook>().SaveAsync(Sheets.Casting("Clear"), "Mo");
        var page = Render<ResinPage>(p => p.Add(r => r.Id, saved.Id));
        page.WaitForElement("form");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("Deepest pour", "21") };
    }

    private async Task<NumberScene> PotAsync()
    {
        var saved = await Of<PotBook>().SaveAsync(new() { Name = "Pot", RatedBar = 4, WorkingBar = 3, InnerDiameterMm = 300, InnerHeightMm = 300 }, "Mo");
        var page = Render<PotPage>(p => p.Add(r => r.Id, saved.Id));
        page.WaitForElement("form");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("You work at", "2.5") };
    }

    private async Task<NumberScene> MaterialAsync()
    {
        var saved = await Of<MaterialBook>().SaveAsync(new() { Name = "Mica", DensityGPerMl = 2.8, DensitySource = "weighed by me", PackingFraction = 0.5, PackSize = 50, PackPrice = 10 }, "Mo");
        var page = Render<MaterialPage>(p => p.Add(r => r.Id, saved.Id));
        page.WaitForElement("form");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("Price of a pack", "11") };
    }
}
