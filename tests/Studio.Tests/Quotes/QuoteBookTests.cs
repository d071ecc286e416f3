using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;

namespace Studio.Tests.Quotes;

public sealed class QuoteBookTests : IDisposable
{
    private readonly QuoteScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task A_sent_price_keeps_its_numbers_when_a_resin_gets_dearer()
    {
        var sent = await scene.SentAsync();
        await scene.ChangeAsync(db => db.Set<Resin>().Single().Packs = [new(1000, 90)]);
        var later = (await scene.Book.ViewAsync(sent.Quote.Id))!;
        later.Quote.Result!.Total.ShouldBe(97.60m);
        later.Quote.Lines.Single(l => l.Kind == "resin").Cost.ShouldBe(4.80m);
        var kept = await scene.Book.KeepAsync(QuoteScene.FormOf(later), "maker");
        kept.Ok.ShouldBeFalse();
        kept.Words.ShouldContain("new version");
    }

    [Fact]
    public async Task Opening_twice_gives_the_same_draft()
    {
        var first = await scene.OpenAsync();
        (await scene.OpenAsync()).Quote.Id.ShouldBe(first.Quote.Id);
        (await scene.ReadAsync(db => db.Set<Quote>().CountAsync())).ShouldBe(1);
    }

    [Fact]
    public async Task A_kept_draft_keeps_what_was_typed()
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        form.MarginPercent = 50;
        form.FamilyWords = "For your mantelpiece.";
        form.Bought.Add(new BoughtRow { Name = "Brass plate", Used = 1, PackSize = 1, PackPrice = 7.5m });
        (await scene.Book.KeepAsync(form, "maker")).Ok.ShouldBeTrue();
        var kept = (await scene.Book.ViewAsync(form.Id))!.Quote;
        kept.Form.MarginPercent.ShouldBe(50);
        kept.FamilyWords.ShouldBe("For your mantelpiece.");
        kept.Lines.Single(l => l.Name == "Brass plate").Cost.ShouldBe(7.50m);
        kept.Result!.Cost.ShouldBe(56.30m);
        (await scene.ReadAsync(db => db.Set<QuoteLine>().CountAsync(l => l.Name == "Overhead"))).ShouldBe(1, "old lines go with the old reckoning");
    }

    [Fact]
    public async Task Two_people_at_one_draft_lose_nothing_in_silence()
    {
        var one = QuoteScene.FormOf(await scene.OpenAsync());
        var other = QuoteScene.FormOf(await scene.OpenAsync());
        one.MarginPercent = 50;
        other.MarginPercent = 60;
        (await scene.Book.KeepAsync(one, "maker")).Ok.ShouldBeTrue();
        var second = await scene.Book.KeepAsync(other, "front desk");
        second.Ok.ShouldBeFalse();
        second.Words.ShouldBe(Saved.SomeoneElse);
        (await scene.Book.ViewAsync(one.Id))!.Quote.Form.MarginPercent.ShouldBe(50);
    }

    [Fact]
    public async Task Sent_and_agreed_moves_the_commission_and_writes_its_story()
    {
        var sent = await scene.SentAsync();
        (await CommissionAsync()).Stands.ShouldBe(Standing.Quoted);
        (await scene.Book.AcceptAsync(sent.Quote.Id, sent.Quote.Version, "Ansel", "by telephone", "maker")).Ok.ShouldBeTrue();
        (await CommissionAsync()).Stands.ShouldBe(Standing.Agreed);
        var story = await scene.ReadAsync(db => db.Set<CommissionEvent>().OrderBy(e => e.Id).Select(e => e.Words).ToListAsync());
        story.ShouldContain(w => w.Contains("£97.60", StringComparison.Ordinal) && w.Contains("sent", StringComparison.Ordinal));
        story.ShouldContain(w => w.Contains("Ansel said yes", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_second_send_or_yes_adds_nothing()
    {
        var sent = await scene.SentAsync();
        var id = sent.Quote.Id;
        (await scene.Book.SendAsync(id, sent.Quote.Version, "maker")).Ok.ShouldBeTrue();
        (await scene.Book.AcceptAsync(id, sent.Quote.Version, "Ansel", "in person", "maker")).Ok.ShouldBeTrue();
        (await scene.Book.AcceptAsync(id, sent.Quote.Version, "Ansel", "in person", "maker")).Ok.ShouldBeTrue();
        (await scene.ReadAsync(db => db.Set<CommissionEvent>().CountAsync(e => e.Kind == "quote"))).ShouldBe(2);
    }

    [Fact]
    public async Task A_new_version_replaces_the_old_one_once_it_is_sent()
    {
        var first = await scene.SentAsync();
        var renewed = await scene.Book.RenewAsync(first.Quote.Id, "maker");
        var second = (await scene.Book.ViewAsync(renewed.Id))!;
        second.Quote.VersionNo.ShouldBe(2);
        second.Quote.Result!.Total.ShouldBe(first.Quote.Result!.Total);
        (await scene.Book.RenewAsync(first.Quote.Id, "maker")).Id.ShouldBe(renewed.Id, "one draft at a time");
        (await scene.Book.SendAsync(second.Quote.Id, second.Quote.Version, "maker")).Ok.ShouldBeTrue();
        (await scene.Book.ViewAsync(first.Quote.Id))!.Quote.State.ShouldBe(QuoteState.Superseded);
        var late = await scene.Book.AcceptAsync(first.Quote.Id, first.Quote.Version + 1, "Ansel", "in person", "maker");
        late.Ok.ShouldBeFalse();
    }

    [Fact]
    public async Task A_drawing_changed_after_the_price_is_said()
    {
        var draft = await scene.OpenAsync();
        draft.DesignDiffers.ShouldBeEmpty();
        await scene.ChangeAsync(db => db.Set<PieceLayer>().Single().ThicknessMm = 30);
        // by hand: 300 ml, 330 g net, × 1.05 + 9 = 355.5 g
        (await scene.Book.ViewAsync(draft.Quote.Id))!.DesignDiffers.ShouldBe(["Clear: 355.5 g in the design, 240 g here"]);
        var taken = (await scene.Book.WithDesignAsync(QuoteScene.FormOf(draft)))!;
        taken.Bought.Single().Used.ShouldBe(355.5m);
    }

    [Fact]
    public async Task An_offer_whose_day_is_past_says_so()
    {
        var sent = await scene.SentAsync();
        sent.Expired.ShouldBeFalse();
        sent.Quote.ValidUntil.ShouldBe(new DateOnly(2026, 4, 1)); // thirty days from 2 March
        scene.Database.Clock.Advance(TimeSpan.FromDays(31));
        (await scene.Book.ViewAsync(sent.Quote.Id))!.Expired.ShouldBeTrue();
    }

    private Task<Commission> CommissionAsync() => scene.ReadAsync(db => db.Set<Commission>().SingleAsync());
}
