using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Customers;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Papers;
using Studio.Quotes;
using Studio.Tests.Papers;

namespace Studio.Tests.Quotes;

/// <summary>A quote that left is kept as it left: what is opened later is that paper, marked as a copy with what became of it.</summary>
public sealed class KeptQuoteTests : IDisposable
{
    private readonly QuoteScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task A_paper_that_left_keeps_every_word_whatever_is_renamed()
    {
        await scene.ChangeAsync(db => db.Add(new Keepsake { CommissionId = 1, EntryNumber = "KS-26-00001-H", Description = "heather from the hill", Permits = "embed-all", ReceivedAt = db.Now, SubmitKey = "k" }));
        var sent = await scene.SentAsync("to be drawn in as soon as it is here");
        var left = PaperWords.Pages((await scene.Papers.AsSentAsync(sent.Quote.Id)).ShouldNotBeNull().Content);
        (await scene.Book.AcceptAsync(sent.Quote.Id, sent.Quote.Version, "Ansel", "in person", "maker")).Ok.ShouldBeTrue();
        string.Join(' ', left).ShouldContain("heather from the hill");
        await RenameAsync();
        const string Mark = " Copy. Accepted on 2 March 2026";
        var again = PaperWords.Pages((await scene.PaperAsync(sent.Quote.Id)).Content);
        again.ShouldAllBe(p => p.EndsWith(Mark, StringComparison.Ordinal));
        again.Select(p => p[..^Mark.Length]).ShouldBe(left);
    }

    // SHA-256 by the platform's own implementation (FIPS 180-4)
    [Fact]
    public async Task What_was_kept_is_what_left_with_its_hash_who_and_when()
    {
        var sent = await scene.SentAsync();
        var paper = sent.Paper.ShouldNotBeNull();
        var left = (await scene.Papers.AsSentAsync(sent.Quote.Id)).ShouldNotBeNull();
        Convert.ToHexStringLower(SHA256.HashData(left.Content)).ShouldBe(paper.Hash);
        (paper.Kind, paper.Number, paper.RefId, paper.By, paper.State, paper.FileName).ShouldBe((PaperKinds.Quote, "26-001, version 1", sent.Quote.Id, "maker", "sent", "quote-26-001-1.pdf"));
        paper.At.ShouldBe(sent.Quote.SentAt!.Value);
        var words = PaperWords.Of(left.Content);
        words.ShouldNotContain("Draft");
        words.ShouldNotContain("Copy");
    }

    [Fact]
    public async Task The_head_says_what_became_of_it()
    {
        (await WordsAsync((await scene.OpenAsync()).Quote.Id)).ShouldContain("Draft");
        var first = await scene.SentAsync();
        (await WordsAsync(first.Quote.Id)).ShouldContain("Copy. Sent on 2 March 2026");
        scene.Database.Clock.Advance(TimeSpan.FromDays(31));
        (await WordsAsync(first.Quote.Id)).ShouldContain("Copy. Lapsed: it stood until 1 April 2026");
        var second = (await scene.Book.ViewAsync((await scene.Book.RenewAsync(first.Quote.Id, "maker")).Id))!;
        (await scene.Book.SendAsync(second.Quote.Id, second.Quote.Version, "maker")).Ok.ShouldBeTrue();
        (await WordsAsync(first.Quote.Id)).ShouldContain("Copy. Replaced by version 2");
        (await WordsAsync(second.Quote.Id)).ShouldContain("Replaces version 1");
        (await scene.Book.DeclineAsync(second.Quote.Id, second.Quote.Version + 1, "maker")).Ok.ShouldBeTrue();
        (await WordsAsync(second.Quote.Id)).ShouldContain("Copy. Declined");
    }

    [Fact]
    public async Task One_that_was_sent_before_papers_were_kept_says_that_it_is_drawn_again()
    {
        var sent = await scene.SentAsync();
        await scene.ChangeAsync(db => db.RemoveRange(db.Set<IssuedPaper>()));
        scene.Database.Clock.Advance(TimeSpan.FromDays(2));
        var view = (await scene.Book.ViewAsync(sent.Quote.Id))!;
        view.DrawnAgain.ShouldBeTrue();
        var words = await WordsAsync(sent.Quote.Id);
        words.ShouldContain("Drawn again on 4 March 2026: the paper that was sent was not kept.");
        words.ShouldContain("Sent on 2 March 2026");
        words.ShouldNotContain("Copy");
    }

    // the file is written first, the row in the same save as the quote's: where that save fails there is neither
    [Fact]
    public async Task What_could_not_be_sent_keeps_no_paper()
    {
        var draft = await scene.OpenAsync();
        (await scene.Book.SendAsync(draft.Quote.Id, draft.Quote.Version + 1, "maker")).Ok.ShouldBeFalse();
        (await scene.ReadAsync(db => db.Set<IssuedPaper>().CountAsync())).ShouldBe(0);
        (await scene.ReadAsync(db => db.Set<Quote>().SingleAsync())).State.ShouldBe(QuoteState.Draft);
    }

    [Fact]
    public async Task A_second_press_keeps_no_second_paper()
    {
        var sent = await scene.SentAsync();
        (await scene.Book.SendAsync(sent.Quote.Id, sent.Quote.Version, "maker")).Ok.ShouldBeTrue();
        (await scene.ReadAsync(db => db.Set<IssuedPaper>().CountAsync())).ShouldBe(1);
    }

    private Task RenameAsync() => scene.ChangeAsync(db =>
    {
        db.Set<Customer>().Single().Name = "Somebody Else";
        db.Set<Keepsake>().Single().Description = "a stone";
        db.Set<Commission>().Single().Remembers = "Another";
        var mould = db.Set<Mould>().Single();
        (mould.Name, mould.Dimensions) = ("Renamed", new() { ["sides"] = 4, ["edgeMm"] = 300, ["heightMm"] = 50 });
    });

    private async Task<string> WordsAsync(int id) => PaperWords.Of((await scene.PaperAsync(id)).Content);
}
