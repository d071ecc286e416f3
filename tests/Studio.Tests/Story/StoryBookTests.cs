using System.Globalization;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;
using Studio.Story;

namespace Studio.Tests.Story;

public sealed class StoryBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();

    private StoryBook Book => new(studio.Factory, studio.Clock, new SettingsBook(studio.Factory, studio.News), new KeepsakeBook(studio.Factory, new SettingsBook(studio.Factory, studio.News), studio.News, new PieceNames(), new PourNames()), new PieceTimeBook(studio.Factory, studio.Clock, new SettingsBook(studio.Factory, studio.News), new Studio.Quotes.Promises()));

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task The_list_stands_by_the_day_needed_and_finished_ones_come_last()
    {
        await ArrangeAsync();

        (await Numbers(new CommissionQuestion("", [], Finished: true, 50))).ShouldBe(["26-003", "26-001", "26-002", "26-005", "26-004"]);
    }

    [Fact]
    public async Task Without_a_choice_only_open_ones_are_listed_and_a_search_says_that_finished_ones_match_too()
    {
        await ArrangeAsync();

        var open = await Book.ListAsync(new CommissionQuestion("", [], Finished: false, 50));
        open.AlsoFinished.ShouldBeFalse();
        open.Lines.Select(l => l.Number).ShouldBe(["26-003", "26-001", "26-002"]);
        (await Book.ListAsync(new CommissionQuestion("lantern", [], Finished: false, 50))).AlsoFinished.ShouldBeTrue();
    }

    [Theory]
    [InlineData("26-002", "26-002")]
    [InlineData("teague", "26-002")]
    [InlineData("bram heather", "26-001")]
    [InlineData("BUTTONS", "26-003")]
    public async Task A_commission_is_found_by_number_customer_remembered_and_title(string typed, string number)
    {
        await ArrangeAsync();
        (await Numbers(new CommissionQuestion(typed, [], Finished: true, 50))).ShouldBe([number]);
    }

    [Fact]
    public async Task Several_places_can_be_shown_together()
    {
        await ArrangeAsync();
        (await Numbers(new CommissionQuestion("", [Standing.Home, Standing.Agreed], Finished: false, 50))).ShouldBe(["26-001", "26-004"]);
    }

    [Fact]
    public async Task Thousands_of_commissions_come_fifty_at_a_time_with_their_keepsakes_counted()
    {
        await using (var db = studio.Open())
        {
            var customer = new Customer { Name = "Many" };
            for (var i = 1; i <= 3000; i++)
            {
                var commission = new Commission { Number = "26-" + i.ToString("000", CultureInfo.InvariantCulture), Customer = customer, Title = "Piece", NeededBy = new DateOnly(2026, 1, 1).AddDays(i) };
                db.Add(new Keepsake { Commission = commission, EntryNumber = $"KS-{i}", SubmitKey = $"k{i}", Description = "A nail" });
            }

            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var list = await Book.ListAsync(new CommissionQuestion("piece", [], Finished: false, 50));

        (list.Lines.Count, list.More).ShouldBe((50, true));
        list.Lines[0].Number.ShouldBe("26-001");
        list.Lines.ShouldAllBe(l => l.Keepsakes == 1 && l.Pieces == 0);
    }

    [Fact]
    public async Task The_day_book_runs_newest_first_by_the_studios_days_and_tells_a_keepsake_once()
    {
        await ArrangeAsync();
        await using (var db = studio.Open())
        {
            db.Add(new StudioSettings { TimeZone = "Europe/London" });
            var keepsake = new Keepsake { CommissionId = 1, EntryNumber = "KS-26-00001-X", SubmitKey = "a", Description = "Hive nails" };
            db.Add(keepsake);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
            var taken = new DateTime(2026, 3, 1, 10, 0, 0, DateTimeKind.Utc);
            db.Add(new KeepsakeEvent { KeepsakeId = keepsake.Id, At = taken, By = "Wren", Kind = CustodyKind.Received, Words = "by hand", Count = 1 });
            db.Add(new KeepsakeEvent { KeepsakeId = keepsake.Id, At = taken.AddDays(1), By = "Ash", Kind = CustodyKind.Weighed, MassG = 14.2 });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var story = (await Book.ReadAsync(1))!;

        story.Days.Select(d => d.Day).ShouldBe([new DateOnly(2026, 3, 2), new DateOnly(2026, 3, 1)]);
        story.Days.SelectMany(d => d.Lines).Select(l => l.Words).ShouldBe(["KS-26-00001-X, Hive nails: Weighed: 14.2 g.", "KS-26-00001-X, Hive nails: Came by hand."]);
    }

    [Fact]
    public async Task There_is_no_story_of_a_commission_that_is_not_there() => (await Book.ReadAsync(404)).ShouldBeNull();

    private async Task<IEnumerable<string>> Numbers(CommissionQuestion question) => (await Book.ListAsync(question)).Lines.Select(l => l.Number);

    private async Task ArrangeAsync()
    {
        await using var db = studio.Open();
        Customer isla = new() { Name = "Isla Harrow" }, ruan = new() { Name = "Ruan Teague" };
        db.AddRange(
            new Commission { Number = "26-001", Customer = isla, Title = "A pyramid with heather", Remembers = "Bram Harrow", NeededBy = new DateOnly(2026, 4, 1), Stands = Standing.Agreed },
            new Commission { Number = "26-002", Customer = ruan, Title = "A block with ferry brass", Remembers = "Jory" },
            new Commission { Number = "26-003", Customer = isla, Title = "A disc of buttons", NeededBy = new DateOnly(2026, 2, 1), Stands = Standing.Making },
            new Commission { Number = "26-004", Customer = isla, Title = "A lantern", NeededBy = new DateOnly(2025, 2, 1), Stands = Standing.Home },
            new Commission { Number = "26-005", Customer = isla, Title = "A lantern, again", Stands = Standing.LetGo });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }
}
