using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Studio.Bench;
using Studio.Calibration;
using Studio.Climate;
using Studio.Commissions;
using Studio.Engine.Custody;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Moulds;
using Studio.Office;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;
using Studio.Steps;
using Studio.Stores;
using Studio.Tests.Bench;

namespace Studio.Tests.Shell;

/// <summary>Every form of the studio in which a number is typed, ready to be filled in.</summary>
public sealed partial class NumbersTests
{
    private static readonly Dictionary<string, (Type Host, Func<NumbersTests, Task<NumberScene>> Open)> Scenes = new(StringComparer.Ordinal)
    {
        ["payment"] = (typeof(PaymentsPart), t => t.PaymentAsync()),
        ["let go, with what was spent"] = (typeof(StepsPart), t => t.LetGoAsync()),
        ["failed, with what it cost"] = (typeof(BenchFail), t => t.FailAsync()),
        ["going home"] = (typeof(GoingHomePage), t => t.HomeAsync()),
        ["price"] = (typeof(QuotePage), t => t.PriceAsync("#keep-quote")),
        ["price that goes out"] = (typeof(QuotePage), t => t.PriceAsync("#mark-sent")),
        ["delivery of a price"] = (typeof(QuotePage), t => t.DeliveryAsync()),
        ["what if"] = (typeof(WishPart), t => t.WhatIfAsync()),
        ["pour"] = (typeof(BenchPage), t => t.PourAsync()),
        ["pour set right"] = (typeof(PourTrace), t => t.SetRightAsync()),
        ["room"] = (typeof(RoomForm), t => t.RoomAsync()),
        ["log"] = (typeof(LogPage), t => t.LogAsync()),
        ["settings"] = (typeof(SettingsPage), t => t.SettingsAsync()),
        ["sensor"] = (typeof(SensorPart), t => t.SensorAsync()),
        ["broker"] = (typeof(BrokerPart), t => t.BrokerAsync()),
        ["intake"] = (typeof(IntakePage), t => t.IntakeAsync()),
        ["keepsake weighed"] = (typeof(ActPanel), t => t.ActAsync(CustodyKind.Weighed)),
        ["keepsake divided"] = (typeof(ActPanel), t => t.ActAsync(CustodyKind.Divided)),
        ["keepsake used"] = (typeof(ActPanel), t => t.ActAsync(CustodyKind.Used)),
        ["keepsake corrected"] = (typeof(CorrectPanel), t => t.CorrectAsync()),
        ["what went in, set right"] = (typeof(RightPanel), t => t.RightAsync()),
        ["mould"] = (typeof(MouldPage), t => t.MouldAsync()),
        ["mould by its fill"] = (typeof(MouldPage), t => t.FillAsync()),
        ["water check"] = (typeof(WaterPart), t => t.WaterAsync()),
        ["level"] = (typeof(LevelPart), t => t.LevelAsync()),
        ["resin"] = (typeof(ResinPage), t => t.ResinAsync()),
        ["pot"] = (typeof(PotPage), t => t.PotAsync()),
        ["material"] = (typeof(MaterialPage), t => t.MaterialAsync()),
        ["piece"] = (typeof(PiecePage), t => t.PieceAsync(layer: false)),
        ["piece's layer"] = (typeof(LayerRow), t => t.PieceAsync(layer: true)),
        ["bubble"] = (typeof(BubblePart), t => t.BubbleAsync()),
    };

    private Scene? arranged;

    private Scene Scene => arranged ??= new(House.Factory, House.Clock);

    private T Of<T>()
        where T : notnull => Services.GetRequiredService<T>();

    private static void Click<T>(IRenderedComponent<T> page, string words)
        where T : IComponent => page.FindAll("button").First(b => b.TextContent.Trim().StartsWith(words, StringComparison.Ordinal)).Click();

    private static IElement Labelled<T>(IRenderedComponent<T> page, string label)
        where T : IComponent => page.Find("#" + page.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal)).GetAttribute("for"));

    private static Task PressAsync<T>(IRenderedComponent<T> page, string selector)
        where T : IComponent => page.Find(selector).ClickAsync(new());

    private async Task<int> QuoteAsync(bool accepted, bool delivered = false)
    {
        var piece = await Scene.PieceAsync(deposit: false, keepsakes: 0);
        await Scene.ChangeAsync<Commission>(_ => delivered, c => (c.Handover, c.DeliveryAddress) = ("delivery", "4 Heather Brae"));
        await Scene.ChangeAsync<Resin>(_ => true, r => r.Packs = [new(1000, 20)]);
        var id = (await Of<QuoteBook>().OpenAsync(piece, "Mo")).Id;
        if (accepted)
        {
            (await Of<QuoteBook>().SendAsync(id, (await Of<QuoteBook>().ViewAsync(id))!.Quote.Version, "Mo")).Ok.ShouldBeTrue();
            (await Of<QuoteBook>().AcceptAsync(id, (await Of<QuoteBook>().ViewAsync(id))!.Quote.Version, "Isla", "in person", "Mo")).Ok.ShouldBeTrue();
        }

        return id;
    }

    private async Task<NumberScene> PaymentAsync()
    {
        var id = await QuoteAsync(accepted: true);
        var commission = (await Of<QuoteBook>().ViewAsync(id))!.Quote.CommissionId;
        var page = Render<PaymentsPart>(p => p.Add(m => m.CommissionId, commission).Add(m => m.Money, Of<MoneyBook>().ReadAsync(commission).GetAwaiter().GetResult()).Add(m => m.Zone, TimeZoneInfo.Utc));
        return new(page, () => page.Find("form.pay").SubmitAsync()) { Good = ("Amount", "5") };
    }

    private async Task<NumberScene> LetGoAsync()
    {
        var commission = (await Scene.FindAsync(await Scene.PieceAsync())).CommissionId;
        var page = Render<StepsPart>(p => p.Add(s => s.View, Of<StepBook>().ReadAsync(commission).GetAwaiter().GetResult()!).Add(s => s.Currency, "GBP"));
        Click(page, "They decided against it");
        page.Find("#step-why").Input("they moved away");
        return new(page, () => page.Find("form.asks").SubmitAsync()) { Good = ("What was spent", "12") };
    }

    private async Task<NumberScene> FailAsync()
    {
        var piece = await Scene.PieceAsync();
        await Scene.PourAsync(piece, 0, Scene.Now.AddHours(-1));
        var page = Render<BenchFail>(p => p.Add(f => f.PieceId, piece).Add(f => f.Inside, []).Add(f => f.Currency, "GBP"));
        page.Find("#fail-why").Change("bubbles");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("What it cost", "12") };
    }

    private async Task<NumberScene> HomeAsync()
    {
        var view = await TakenInAsync();
        var page = Render<GoingHomePage>(p => p.Add(h => h.CommissionId, view.Keepsake.CommissionId));
        page.WaitForElement(".parcel input[type=checkbox]").Change(true);
        page.WaitForElement("input[type=radio]");
        page.FindAll("input[type=radio]")[1].Change(true);
        Labelled(page, "How many").Change("1");
        return new(page, () => page.Find("form").SubmitAsync()) { Good = ("How much", "2") };
    }

    private async Task<NumberScene> PriceAsync(string button)
    {
        var id = await QuoteAsync(accepted: false);
        var page = Render<QuotePage>(p => p.Add(q => q.Id, id));
        page.WaitForElement("#margin-percent");
        return new(page, () => PressAsync(page, button == "#mark-sent" && page.FindAll(button).Count == 0 ? "#keep-quote" : button)) { Good = ("Margin", "42"), Others = [typeof(WishPart)] };
    }

    private async Task<NumberScene> DeliveryAsync()
    {
        var id = await QuoteAsync(accepted: false, delivered: true);
        var page = Render<QuotePage>(p => p.Add(q => q.Id, id));
        page.WaitForElement("#delivery-as").Change("priced");
        return new(page, () => PressAsync(page, "#keep-quote")) { Good = ("Delivery costs them", "12"), Only = typeof(QuotePromises) };
    }

    private async Task<NumberScene> WhatIfAsync()
    {
        var id = await QuoteAsync(accepted: false);
        var page = Render<QuotePage>(p => p.Add(q => q.Id, id));
        page.WaitForElement("#margin-percent");
        return new(page.FindComponent<WishPart>(), () => Task.CompletedTask) { Good = (null!, "400"), Answer = "Then you keep" };
    }
}
