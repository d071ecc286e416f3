using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Settings;
using Studio.Tests.Bench;

namespace Studio.Tests.Clock;

public sealed class ClockBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly List<NewsOf> heard = [];
    private readonly IDisposable ear;

    public ClockBookTests()
    {
        scene = new(studio.Factory, studio.Clock);
        ear = studio.News.Listen(heard.Add);
    }

    public void Dispose()
    {
        ear.Dispose();
        studio.Dispose();
    }

    [Fact]
    public async Task It_announces_a_change_once()
    {
        var id = await CastingAsync();
        await Book().AdvanceAsync();
        (await Book().AdvanceAsync()).ShouldBe(0);

        studio.Clock.Advance(TimeSpan.FromHours(6));
        heard.Clear();
        (await Book().AdvanceAsync()).ShouldBe(1);
        (await Book().AdvanceAsync()).ShouldBe(0);
        heard.ShouldBe([new NewsOf(News.Piece, id)]);
        (await StoryAsync()).ShouldHaveSingleItem().Words.ShouldBe("Heather pyramid: the window for heather band opened.");
    }

    [Fact]
    public async Task Run_late_it_tells_the_newest_state_with_the_instant_when_it_truly_came()
    {
        var id = await CastingAsync();
        var poured = scene.Now;
        await Book().AdvanceAsync();
        studio.Clock.Advance(TimeSpan.FromDays(5));
        (await Book().AdvanceAsync()).ShouldBe(1);
        var told = (await StoryAsync()).ShouldHaveSingleItem();
        told.Words.ShouldBe("Heather pyramid: the window for heather band closed before it was poured.");
        told.At.ShouldBe(poured.AddHours(24));
        (await scene.FindAsync(id)).ClockSaidAt.ShouldBe(poured.AddHours(24));
    }

    [Fact]
    public async Task Run_many_times_at_once_it_tells_once()
    {
        await CastingAsync();
        studio.Clock.Advance(TimeSpan.FromHours(7));
        var told = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => Book().AdvanceAsync(), Xunit.TestContext.Current.CancellationToken)));
        told.Sum().ShouldBe(1);
        (await StoryAsync()).Count.ShouldBe(1);
        heard.Count(n => n.Topic == News.Piece).ShouldBe(1);
    }

    [Fact]
    public async Task A_piece_somebody_edits_meanwhile_is_not_taken_from_them()
    {
        var id = await CastingAsync();
        var version = (await scene.FindAsync(id)).Version;
        studio.Clock.Advance(TimeSpan.FromHours(7));
        await Book().AdvanceAsync();
        (await scene.FindAsync(id)).Version.ShouldBe(version);
    }

    [Fact]
    public async Task Pages_are_right_without_it()
    {
        var id = await CastingAsync();
        studio.Clock.Advance(TimeSpan.FromHours(6));
        (await Book().OfPieceAsync(id))!.Next.Kind.ShouldBe(ActKind.PourNext);
        (await Book().OfPieceAsync(4711)).ShouldBeNull();
    }

    [Fact]
    public async Task A_reading_that_moves_the_window_away_again_is_followed()
    {
        var id = await CastingAsync();
        studio.Clock.Advance(TimeSpan.FromHours(6));
        await Book().AdvanceAsync();
        await scene.ReadingAsync(10, scene.Now.AddHours(-5));
        (await Book().AdvanceAsync()).ShouldBe(1);
        (await scene.FindAsync(id)).ClockSaid.ShouldStartWith(nameof(ActKind.WaitForWindow));
    }

    private ClockBook Book() => new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News));

    private async Task<int> CastingAsync()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        return id;
    }

    private async Task<List<CommissionEvent>> StoryAsync() => [.. (await scene.AllAsync<CommissionEvent>()).Where(e => e.By == "the clock")];
}
