using Studio.Climate;
using Studio.Data;

namespace Studio.Tests.Climate;

public sealed class RoomBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly RoomBook book;

    public RoomBookTests() => book = new(studio.Factory, studio.Clock, studio.News);

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_reading_is_kept_told_and_shown()
    {
        var heard = new List<string>();
        using var ear = studio.News.Listen(n => heard.Add(n.Topic));
        var saved = await book.LogAsync(new RoomEntry(18.5, 55), "Maker");
        saved.Ok.ShouldBeTrue();
        heard.ShouldBe([News.Room]);
        var now = await book.NowAsync();
        now.ShouldNotBeNull();
        now.Celsius.ShouldBe(18.5);
        now.HumidityPercent.ShouldBe(55);
        now.Place.ShouldBe(RoomBook.CastingRoom);
        now.At.ShouldBe(studio.Clock.GetUtcNow().UtcDateTime);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(-30.1)]
    [InlineData(60.1)]
    [InlineData(85.0)]
    [InlineData(-273.0)]
    [InlineData(-127.0)]
    [InlineData(double.NaN)]
    [InlineData(1e9)]
    public async Task What_no_workroom_can_be_is_refused_even_when_sure(double? celsius)
    {
        var saved = await book.LogAsync(new RoomEntry(celsius, Sure: true), "Maker");
        saved.Ok.ShouldBeFalse();
        saved.Ask.ShouldBeFalse();
        saved.Words.ShouldNotBeEmpty();
        (await book.NowAsync()).ShouldBeNull();
    }

    [Theory]
    [InlineData(4.9)]
    [InlineData(40.1)]
    [InlineData(-30)]
    [InlineData(60)]
    public async Task An_unusual_room_is_asked_about_and_kept_when_sure(double celsius)
    {
        (await book.LogAsync(new RoomEntry(celsius), "Maker")).Ask.ShouldBeTrue();
        (await book.NowAsync()).ShouldBeNull();
        (await book.LogAsync(new RoomEntry(celsius, Sure: true), "Maker")).Ok.ShouldBeTrue();
    }

    [Theory]
    [InlineData(5)]
    [InlineData(40)]
    public async Task The_edges_of_the_usual_are_not_asked_about(double celsius) =>
        (await book.LogAsync(new RoomEntry(celsius), "Maker")).Ok.ShouldBeTrue();

    [Theory]
    [InlineData(-1)]
    [InlineData(101)]
    [InlineData(double.NaN)]
    public async Task Humidity_lies_between_0_and_100(double humidity) =>
        (await book.LogAsync(new RoomEntry(20, humidity), "Maker")).Ok.ShouldBeFalse();

    [Fact]
    public async Task A_slip_is_taken_back_and_the_one_before_counts_again()
    {
        await book.LogAsync(new RoomEntry(18), "Maker");
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        var slip = await book.LogAsync(new RoomEntry(28), "Maker");
        (await book.WithdrawAsync(slip.Id)).Ok.ShouldBeTrue();
        (await book.NowAsync())!.Celsius.ShouldBe(18);
        (await book.WithdrawAsync(slip.Id, withdrawn: false)).Ok.ShouldBeTrue();
        (await book.NowAsync())!.Celsius.ShouldBe(28);
    }
}
