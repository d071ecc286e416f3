using Microsoft.EntityFrameworkCore;
using Studio.Engine.Custody;
using Studio.Keepsakes;

namespace Studio.Tests.Keepsakes;

public sealed class TakingInTests : IDisposable
{
    private readonly KeepsakeScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task Twenty_at_once_get_twenty_numbers_without_a_gap()
    {
        var taken = await Task.WhenAll(Enumerable.Range(0, 20).Select(i => Task.Run(() =>
            scene.Book.TakeInAsync(scene.CommissionId, KeepsakeScene.Form(description: $"button {i}"), KeepsakeScene.Maker))));
        taken.ShouldAllBe(t => t.Ok && !t.Again);
        taken.Select(t => EntryNumber.Parse(t.EntryNumber).Value.Running).Order().ShouldBe(Enumerable.Range(1, 20));
    }

    [Fact]
    public async Task The_same_form_sent_again_adds_nothing_and_tells_the_same_number()
    {
        var form = KeepsakeScene.Form();
        var first = await scene.Book.TakeInAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        var second = await scene.Book.TakeInAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        (second.Again, second.EntryNumber).ShouldBe((true, first.EntryNumber));
        (await scene.EventsAsync(first.Id)).Count.ShouldBe(1);
        (await CountAsync()).ShouldBe(1);
    }

    [Fact]
    public async Task The_same_form_sent_ten_times_at_once_is_one_keepsake()
    {
        var form = KeepsakeScene.Form();
        var taken = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => Task.Run(() => scene.Book.TakeInAsync(scene.CommissionId, form, KeepsakeScene.Maker))));
        taken.ShouldAllBe(t => t.Ok);
        taken.Select(t => t.EntryNumber).Distinct().ShouldHaveSingleItem();
        (await CountAsync()).ShouldBe(1);
    }

    [Fact]
    public async Task The_number_belongs_to_the_year_on_the_studios_own_wall()
    {
        // 31 December 2026, 23:30 UTC: in Auckland, 13 hours ahead in summer (IANA time zone data), the year has turned
        var settings = await scene.Settings.ReadAsync();
        settings.TimeZone = "Pacific/Auckland";
        (await scene.Settings.SaveAsync(settings, KeepsakeScene.Maker)).Ok.ShouldBeTrue();
        await scene.TakenInAsync();
        scene.Database.Clock.SetUtcNow(new DateTimeOffset(2026, 12, 31, 23, 30, 0, TimeSpan.Zero));
        var view = await scene.TakenInAsync();
        view.Keepsake.EntryNumber.ShouldStartWith("KS-27-00001-");
    }

    [Fact]
    public async Task The_first_link_says_how_from_whom_where_and_how_heavy()
    {
        var view = await scene.TakenInAsync(massG: 12.4);
        var link = (await scene.EventsAsync(view.Keepsake.Id)).ShouldHaveSingleItem();
        (link.Kind, link.By, link.Place, link.MassG).ShouldBe((CustodyKind.Received, KeepsakeScene.Maker, "Drawer 1", 12.4));
        view.Chain.ShouldHaveSingleItem().Words.ShouldBe("Came by hand from Isla Fraser and was put here: Drawer 1. It weighed 12.4 g.");
    }

    [Fact]
    public async Task The_commissions_story_tells_of_it_in_the_same_save()
    {
        var view = await scene.TakenInAsync();
        var story = (await scene.StoryAsync())!.Days.SelectMany(d => d.Lines).ShouldHaveSingleItem();
        story.Words.ShouldStartWith($"{view.Keepsake.EntryNumber}, heather from the hill: Came by hand");
    }

    [Fact]
    public async Task Photographs_go_with_their_keepsake_and_are_never_taken_from_another()
    {
        var photo = await scene.PhotoAsync();
        var (first, second) = (KeepsakeScene.Form(), KeepsakeScene.Form(description: "hive nails"));
        first.PhotoIds = second.PhotoIds = [photo, 9999];
        var one = await scene.Book.TakeInAsync(scene.CommissionId, first, KeepsakeScene.Maker);
        var two = await scene.Book.TakeInAsync(scene.CommissionId, second, KeepsakeScene.Maker);
        (await scene.ViewAsync(one.EntryNumber)).Photos.ShouldHaveSingleItem().Id.ShouldBe(photo);
        (await scene.ViewAsync(two.EntryNumber)).Photos.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_commission_that_is_gone_keeps_the_words_and_takes_no_number()
    {
        var refused = await scene.Book.TakeInAsync(4711, KeepsakeScene.Form(), KeepsakeScene.Maker);
        refused.Words.ShouldContain("Nothing you typed is lost");
        (await scene.TakenInAsync()).Keepsake.EntryNumber.ShouldStartWith("KS-26-00001-");
    }

    [Fact]
    public async Task A_database_that_lost_its_tables_is_said_in_words()
    {
        await using (var db = scene.Database.Open())
        {
            await db.Database.ExecuteSqlRawAsync("PRAGMA foreign_keys=OFF; DROP TABLE Keepsake;", TestContext.Current.CancellationToken);
        }

        var refused = await scene.Book.TakeInAsync(scene.CommissionId, KeepsakeScene.Form(), KeepsakeScene.Maker);
        refused.Words.ShouldBe(Studio.Data.Saved.NoDatabase);
    }

    private async Task<int> CountAsync()
    {
        await using var db = scene.Database.Open();
        return await db.Set<Keepsake>().CountAsync();
    }
}
