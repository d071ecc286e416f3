using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Settings;

namespace Studio.Tests.Climate;

public sealed class IntakeTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly IntakeBook intake;
    private readonly SensorBook sensors;
    private Sensor sensor = new();

    public IntakeTests()
    {
        intake = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News));
        sensors = new(studio.Factory, studio.Clock, studio.News);
    }

    public void Dispose() => studio.Dispose();

    private DateTime Now => studio.Clock.GetUtcNow().UtcDateTime;

    [Fact]
    public async Task A_token_is_shown_once_and_not_kept()
    {
        var token = await MakeAsync();
        token.Length.ShouldBe(43);
        (await intake.SensorAsync(token))!.Name.ShouldBe("Window sill");
        (await intake.SensorAsync(token + "x")).ShouldBeNull();
        await using var db = studio.Open();
        (await db.Set<Sensor>().SingleAsync(TestContext.Current.CancellationToken)).TokenHash!.ShouldNotContain(token);
        await sensors.RemoveAsync(sensor.Id, "Wren");
        (await intake.SensorAsync(token))!.RemovedAt.ShouldNotBeNull();
    }

    [Fact]
    public async Task A_sensor_that_posts_every_second_is_kept_once_a_minute_and_said_so()
    {
        await MakeAsync();
        var answer = await intake.TakeAsync(sensor, [.. Enumerable.Range(0, 600).Select(s => new SensorMessage(s, 21 + (0.0001 * s), 48, Now.AddSeconds(s - 600)))]);
        answer.Kept.ShouldBe(10);
        answer.Folded.ShouldBe(590);
        answer.Doubts.ShouldBeEmpty();
    }

    [Fact]
    public async Task The_same_reading_twice_is_one()
    {
        await MakeAsync();
        await SendAsync(20, -10);
        (await SendAsync(20, -10)).Folded.ShouldBe(1);
        (await SendAsync(19, -30)).Kept.ShouldBe(1, "out of order is no fault");
        (await ReadingsAsync()).Select(r => r.Celsius).ShouldBe([19, 20]);
    }

    [Theory]
    [InlineData(85, ReadingDoubts.ErrorValue)]
    [InlineData(-127, ReadingDoubts.ErrorValue)]
    [InlineData(-273.15, ReadingDoubts.ErrorValue)]
    [InlineData(72, ReadingDoubts.OutOfRange)]
    [InlineData(-31, ReadingDoubts.OutOfRange)]
    public async Task What_no_room_can_be_is_kept_and_not_counted(double celsius, string code)
    {
        await MakeAsync();
        (await SendAsync(celsius, -10)).Doubts.ShouldHaveSingleItem().Code.ShouldBe(code);
        (await ReadingsAsync()).ShouldHaveSingleItem().Doubt.ShouldBe(code);
        await using var db = studio.Open();
        (await RoomReadings.OfAsync(db, "", Now.AddDays(-1))).Readings.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_jump_up_counts_once_a_second_reading_says_the_same()
    {
        await MakeAsync();
        await SendAsync(20, -30);
        (await SendAsync(28, -20)).Doubts.ShouldHaveSingleItem().Code.ShouldBe(ReadingDoubts.Spike);
        (await CountedAsync()).ShouldBe([20]);
        await SendAsync(28.5, -10);
        (await CountedAsync()).ShouldBe([20, 28, 28.5]);
    }

    [Fact]
    public async Task What_was_warm_for_seconds_is_seen_to_cool_again()
    {
        await MakeAsync();
        await SendAsync(20, -1);
        await SendAsync(24, -0.7);
        (await SendAsync(20, -0.4)).Kept.ShouldBe(1, "a warm reading that is not taken back would make times early");
        (await CountedAsync()).ShouldBe([20, 24, 20]);
    }

    [Fact]
    public async Task A_clock_years_behind_is_doubted_and_comes_twice_without_harm()
    {
        await MakeAsync();
        var at = new DateTime(2004, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        var answer = await intake.TakeAsync(sensor, [new(0, 20, null, at), new(1, 20, null, Now)]);
        answer.Kept.ShouldBe(2);
        answer.Doubts.ShouldHaveSingleItem().Code.ShouldBe(ReadingDoubts.ClockOff);
        (await intake.TakeAsync(sensor, [new(0, 20, null, at)])).Folded.ShouldBe(1);
    }

    [Fact]
    public async Task A_jump_down_counts_at_once_for_it_only_makes_times_later()
    {
        await MakeAsync();
        await SendAsync(20, -30);
        (await SendAsync(12, -20)).Doubts.ShouldBeEmpty();
        (await CountedAsync()).ShouldBe([20, 12]);
    }

    [Fact]
    public async Task A_clock_that_runs_ahead_or_an_hour_behind_is_told()
    {
        await MakeAsync();
        (await SendAsync(20, 60)).Doubts.ShouldHaveSingleItem().Message.ShouldContain("ahead by an hour");
        (await SendAsync(20, -60)).Doubts.ShouldHaveSingleItem().Code.ShouldBe(ReadingDoubts.ClockOff);
        (await intake.TakeAsync(sensor, [new(0, 20, null, Now.AddMinutes(-61)), new(1, 20.5, null, Now.AddMinutes(-58))])).Doubts.ShouldBeEmpty("a backlog may be old");
    }

    // Europe/London: summer time ended on 25 October 2026 at 02:00 BST = 01:00 UTC (published zone rules, tzdata)
    [Theory]
    [InlineData("2026-10-25T00:31:00Z", "2026-10-25T00:30:00Z")]
    [InlineData("2026-10-25T01:31:00Z", "2026-10-25T01:30:00Z")]
    public void In_the_hour_that_comes_twice_the_one_that_has_come_is_meant(string received, string meant) =>
        LocalClock.Utc(new DateTime(2026, 10, 25, 1, 30, 0), Utc(received), TimeZoneInfo.FindSystemTimeZoneById("Europe/London")).ShouldBe(Utc(meant));

    [Fact]
    public void In_the_hour_that_is_skipped_time_goes_on() =>
        LocalClock.Utc(new DateTime(2026, 3, 29, 1, 30, 0), Utc("2026-03-29T02:00:00Z"), TimeZoneInfo.FindSystemTimeZoneById("Europe/London")).ShouldBe(Utc("2026-03-29T01:30:00Z"));

    [Fact]
    public async Task A_probe_in_a_layer_may_be_hot_and_is_no_room()
    {
        await MakeAsync("");
        (await SendAsync(72, -20)).Doubts.ShouldBeEmpty();
        (await SendAsync(83, -15)).Doubts.ShouldBeEmpty();
        (await SendAsync(85, -14)).Doubts.ShouldBeEmpty("it comes from 83 °C");
        await using var db = studio.Open();
        (await RoomReadings.OfAsync(db, "", null)).Readings.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_day_of_readings_every_second_does_not_slow_the_next_one()
    {
        await MakeAsync();
        for (var hour = 0; hour < 24; hour++)
        {
            await intake.TakeAsync(sensor, [.. Enumerable.Range(0, 3600).Select(s => new SensorMessage(s, 20, null, Now.AddHours(hour - 24).AddSeconds(s)))]);
        }

        (await ReadingsAsync()).Count.ShouldBe(24 * 60);
        (await SendAsync(20.5, 0)).Kept.ShouldBe(1);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("7")]
    [InlineData("{\"celsius\":\"20\"}")]
    [InlineData("{\"celsius\":20,\"fahrenheit\":68}")]
    [InlineData("{\"celsius\":20,\"volt\":3}")]
    [InlineData("{\"celsius\":20,\"humidityPercent\":120}")]
    [InlineData("{\"celsius\":20,\"at\":\"yesterday\"}")]
    [InlineData("{\"celsius\":1e999}")]
    [InlineData("[{\"celsius\":20}]")]
    [InlineData("{\"celsius\":20,\"at\":\"\\ud800\"}")]
    [InlineData("{\"\\udc00\":20}")]
    [InlineData("{\"celsius\":20,\"at\":\"12/11/2026 10:00:00\"}")]
    [InlineData("{\"celsius\":20,\"at\":\"23:00\"}")]
    public void What_cannot_be_read_is_refused_with_its_path(string body)
    {
        var (messages, errors) = SensorMessages.Read(body);
        messages.ShouldBeEmpty();
        errors.ShouldNotBeEmpty();
    }

    [Fact]
    public void Good_readings_of_a_list_survive_the_bad_ones()
    {
        var (messages, errors) = SensorMessages.Read("""[{"celsius":20,"at":"2026-03-02T07:50:00Z"},{"celsius":"x"},{"fahrenheit":68,"at":"2026-03-02T08:00:00Z"}]""");
        messages.Select(m => m.Celsius).ShouldBe([20, 20], 1e-9);
        messages[1].At.ShouldBe(Utc("2026-03-02T08:00:00Z"));
        errors.ShouldHaveSingleItem().Path.ShouldBe("[1].celsius");
    }

    private static DateTime Utc(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture).UtcDateTime;

    private async Task<string> MakeAsync(string place = RoomBook.CastingRoom)
    {
        var made = await sensors.SaveAsync(new() { Name = "Window sill", Place = place }, "Wren");
        made.Saved.Ok.ShouldBeTrue(made.Saved.Words);
        sensor = (await intake.SensorAsync(made.Token!))!;
        return made.Token!;
    }

    private Task<IntakeAnswer> SendAsync(double celsius, double minutes) => intake.TakeAsync(sensor, [new(0, celsius, null, Now.AddMinutes(minutes))]);

    private async Task<List<Reading>> ReadingsAsync()
    {
        await using var db = studio.Open();
        return await db.Set<Reading>().OrderBy(r => r.At).ToListAsync();
    }

    private async Task<List<double>> CountedAsync() => [.. (await ReadingsAsync()).Where(r => r.Doubt.Length == 0).Select(r => r.Celsius)];
}
