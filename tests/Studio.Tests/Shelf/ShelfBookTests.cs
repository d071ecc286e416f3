using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Drawing;
using Studio.Pieces;
using Studio.Shelf;
using Studio.Tests.Bench;

namespace Studio.Tests.Shelf;

public sealed class ShelfBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly ShelfBook book;

    public ShelfBookTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock);
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task Overdue_and_closing_come_first_then_ready_then_soonest()
    {
        var now = scene.Now;
        await scene.ReadingAsync(23, now.AddDays(-10));
        await scene.PieceAsync("drawn");
        await CastAsync("tomorrow", 2);
        await CastAsync("opens later", 1);
        await CastAsync("opens soon", 5);
        await CastAsync("open", 8);
        await CastAsync("closing", 23.5);
        await CastAsync("closed long ago", 40);
        await CastAsync("closed", 25);
        await CastAsync("may be demoulded", 30, layers: 1);

        // next pour from 6 h, closes 24 h, demould 24 h after the pour; 'tomorrow' is poured on a sheet with 48 h
        (await NamesAsync()).ShouldBe(["closed long ago", "closed", "closing", "open", "may be demoulded", "opens soon", "opens later", "drawn", "tomorrow"]);
    }

    [Fact]
    public async Task The_first_sentence_says_which_piece_when_and_why()
    {
        await scene.ReadingAsync(23, scene.Now.AddDays(-2));
        await CastAsync("Heather pyramid", 23.5);
        var lead = (await book.ReadAsync(TimeZoneInfo.Utc)).Lead;
        lead.Words.ShouldBe("Pour heather band into Heather pyramid before 09:30.");
        lead.Then.ShouldStartWith("30 minutes left.");
        lead.Pressing.ShouldBeTrue();
    }

    [Fact]
    public async Task Only_what_is_in_the_making_stands_on_it()
    {
        await scene.PieceAsync("asked", stands: Standing.Asked);
        await scene.PieceAsync("quoted", stands: Standing.Quoted);
        await scene.PieceAsync("agreed");
        await scene.PieceAsync("finished", stands: Standing.Making, stage: Making.Finished);
        await scene.PieceAsync("home", stands: Standing.Home, stage: Making.Home);
        (await NamesAsync()).ShouldBe(["agreed", "finished"], "what is finished stands there until it goes home");
        (await book.ReadAsync(TimeZoneInfo.Utc)).Waiting.ShouldHaveSingleItem().Piece.Name.ShouldBe("quoted");
    }

    [Fact]
    public async Task What_is_finished_asks_for_hands_when_its_day_is_near()
    {
        await scene.PieceAsync("Moor pyramid", stands: Standing.Ready, stage: Making.Finished);
        await NeededAsync(new DateOnly(2026, 3, 4));
        var view = await book.ReadAsync(TimeZoneInfo.Utc);
        view.Pieces.Single().Next.Words.ShouldStartWith("Finished: pack it, and let it go home. They need it");
        view.Pieces.Single().Next.Urgency.ShouldBe(Urgency.Now);
        view.Today.ShouldHaveSingleItem();

        await NeededAsync(new DateOnly(2026, 3, 1));
        (await book.ReadAsync(TimeZoneInfo.Utc)).Pieces.Single().Next.Urgency.ShouldBe(Urgency.Overdue);
        await NeededAsync(new DateOnly(2026, 5, 1));
        (await book.ReadAsync(TimeZoneInfo.Utc)).Today.ShouldBeEmpty();

        // finished before its full cure, or beside another that is not: nobody is told to pack it
        await NeededAsync(new DateOnly(2026, 3, 1));
        await scene.ChangeAsync<Commission>(_ => true, c => c.Stands = Standing.Making);
        var waits = (await book.ReadAsync(TimeZoneInfo.Utc)).Pieces.Single().Next;
        (waits.Words, waits.Urgency).ShouldBe(("Finished; its commission is not ready to go home.", Urgency.Waiting));
    }

    [Fact]
    public async Task A_drawn_piece_waits_for_the_deposit_and_the_keepsakes()
    {
        await scene.PieceAsync("no deposit", deposit: false);
        await scene.PieceAsync("no keepsake", keepsakes: 0);
        await scene.PieceAsync("ready");
        var view = await book.ReadAsync(TimeZoneInfo.Utc);
        view.Waiting.Select(w => (w.Piece.Name, w.For)).ShouldBe([("no deposit", "the deposit"), ("no keepsake", "the keepsakes")]);
        view.Lead.Words.ShouldBe("ready can begin whenever you are ready.");
        view.Pieces.Single(p => p.Piece.Name == "no deposit").Next.Urgency.ShouldBe(Urgency.Waiting);
    }

    [Fact]
    public async Task The_curing_layer_is_drawn_as_curing_and_said_in_words()
    {
        await scene.ReadingAsync(23);
        await CastAsync("Heather pyramid", 0);
        var piece = (await book.ReadAsync(TimeZoneInfo.Utc)).Pieces.Single();
        piece.Section!.Bands[0].Layer.State.ShouldBe(LayerState.Curing);
        piece.Section.Bands[1].Layer.State.ShouldBe(LayerState.Planned);
        piece.Curing.ShouldBe("clear base curing, liquid until 11:00");
    }

    [Fact]
    public async Task Seven_queries_read_it_however_many_pieces_there_are()
    {
        await scene.ReadingAsync(23);
        for (var i = 0; i < 12; i++)
        {
            await CastAsync("piece " + i, 1);
        }

        var counter = new Counter();
        var file = ((Microsoft.Data.Sqlite.SqliteConnection)studio.Open().Database.GetDbConnection()).DataSource;
        var options = new DbContextOptionsBuilder<SqliteStudioDb>();
        DataSetup.UseStudioSqlite(options, file).AddInterceptors(counter);
        var view = await new ShelfBook(new StudioDbFactory<SqliteStudioDb>(new Plain(options.Options), studio.Clock), studio.Clock).ReadAsync(TimeZoneInfo.Utc);
        view.Pieces.Count.ShouldBe(12);
        counter.Count.ShouldBe(7);
    }

    private Task NeededAsync(DateOnly day) => scene.ChangeAsync<Commission>(_ => true, c => c.NeededBy = day);

    private async Task<IEnumerable<string>> NamesAsync() => (await book.ReadAsync(TimeZoneInfo.Utc)).Pieces.Select(p => p.Piece.Name);

    private async Task CastAsync(string name, double hoursAgo, int layers = 3)
    {
        var sheet = name == "tomorrow" ? Scene.DeepPour : Scene.Casting;
        var id = await scene.PieceAsync(name, layers: layers, sheet: sheet);
        await scene.PourAsync(id, 0, scene.Now.AddHours(-hoursAgo), sheet);
    }

    private sealed class Counter : DbCommandInterceptor
    {
        public int Count { get; private set; }

        public override ValueTask<InterceptionResult<System.Data.Common.DbDataReader>> ReaderExecutingAsync(System.Data.Common.DbCommand command, CommandEventData eventData, InterceptionResult<System.Data.Common.DbDataReader> result, CancellationToken cancellationToken = default)
        {
            Count++;
            return new(result);
        }
    }

    private sealed class Plain(DbContextOptions<SqliteStudioDb> options) : IDbContextFactory<SqliteStudioDb>
    {
        public SqliteStudioDb CreateDbContext() => new(options);
    }
}
