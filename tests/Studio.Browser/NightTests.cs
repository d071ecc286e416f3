using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Browser;

/// <summary>A sensor posts the readings of a night that cools; the shelf's demould time moves later by what the engine says, without loading the page again.</summary>
public sealed class NightTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    [Fact]
    public async Task A_night_that_cools_moves_demoulding_later_by_what_the_engine_says()
    {
        await using var window = await studio.WindowAsync();
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@studio.example", "heather and brass");
        var token = await SensorAsync(page);
        await PostAsync(page, token, 23);
        await PouredAsync();
        await page.OpenAsync("/");
        var warm = await ExpectedAsync();
        await Assertions.Expect(page.Locator(".standee .next")).ToContainTextAsync(warm);
        await page.ShotAsync("night-1-warm");

        // from 23 °C to 14 °C in nine hours, a reading every half hour
        var said = warm;
        for (var half = 1; half <= 18; half++)
        {
            studio.Clock.Advance(TimeSpan.FromMinutes(30));
            await PostAsync(page, token, 23 - (half / 2.0));
        }

        var cold = await ExpectedAsync();
        cold.ShouldNotBe(said);
        await Assertions.Expect(page.Locator(".standee .next")).ToContainTextAsync(cold);
        await page.ShotAsync("night-2-cold");
        var moved = await DemouldAsync() - await DemouldAsync(constantC: 23);
        moved.ShouldBeGreaterThan(TimeSpan.FromHours(6), "at half the rate for every 10 K less");

        await page.OpenAsync("/room");
        await Assertions.Expect(page.Locator("svg polyline.warmth")).ToBeVisibleAsync();
        await page.ShotAsync("night-3-room");
    }

    private static async Task<string> SensorAsync(IPage page)
    {
        await page.OpenAsync("/room");
        await page.Locator("#new-sensor").ClickAsync();
        await page.GetByLabel("Name of the sensor").FillAsync("Beside the moulds");
        await page.Locator("#keep-sensor").ClickAsync();
        return await page.Locator("#token-text").InnerTextAsync();
    }

    private static async Task PostAsync(IPage page, string token, double celsius)
    {
        var answer = await page.APIRequest.PostAsync(new Uri(new Uri(page.Url), "/api/readings").ToString(), new()
        {
            Headers = new Dictionary<string, string>(StringComparer.Ordinal) { ["Authorization"] = "Bearer " + token },
            DataObject = new { celsius, humidityPercent = 50 },
        });
        answer.Status.ShouldBe(200, await answer.TextAsync());
        (await answer.TextAsync()).ShouldContain("\"kept\":1");
    }

    // one layer of a casting resin, poured this moment, all that was planned
    private async Task PouredAsync()
    {
        await using var db = studio.Open();
        var resin = await db.Set<Resin>().FirstAsync(r => r.Class == "casting");
        var mould = await db.Set<Moulds.Mould>().FirstAsync(m => m.Shape == "cone");
        var piece = new Piece
        {
            Name = "Heather dish",
            Stage = Making.Casting,
            MouldId = mould.Id,
            CreatedAt = Now,
            Commission = new Commission { Number = "26-001", Title = "A dish", Remembers = "Isolde", Stands = Standing.Making, Customer = new Customer { Name = "Ansel Thorne" } },
            Layers = [new PieceLayer { Name = "base", ResinId = resin.Id, ToMm = 10 }],
        };
        db.Add(piece);
        await db.SaveChangesAsync();
        db.Add(new Pour
        {
            PieceId = piece.Id,
            LayerId = piece.Layers[0].Id,
            LayerName = "base",
            ResinId = resin.Id,
            ResinName = resin.Name,
            ToMm = 10,
            PlannedAG = 60,
            PlannedBG = 26,
            ActualAG = 60,
            ActualBG = 26,
            StartedAt = Now,
            By = "Wren",
            Sheet = resin.Sheet,
            SubmitKey = "night",
        });
        await db.SaveChangesAsync();
        studio.Services.GetRequiredService<News>().Tell(News.Pour, piece.Id);
    }

    // what the shelf must say, by the engine alone
    private async Task<string> ExpectedAsync()
    {
        var zone = await studio.Services.CreateScope().ServiceProvider.GetRequiredService<SettingsBook>().ZoneAsync();
        return Shell.Say.When(await DemouldAsync(), zone, Now);
    }

    private async Task<DateTime> DemouldAsync(double? constantC = null)
    {
        await using var db = studio.Open();
        var pour = await db.Set<Pour>().SingleAsync();
        var readings = await db.Set<Reading>().OrderBy(r => r.At).Select(r => new RoomReading((r.At - pour.StartedAt).TotalHours, r.Celsius)).ToListAsync();
        var cure = CureClock.Run([new Engine.Cure.PouredLayer("base", pour.Sheet, 0)], constantC is { } c ? [new(0, c)] : readings, double.PositiveInfinity);
        var minutes = Math.Ceiling((cure.Demould.AtHours!.Value * 60) - 1e-6);
        var at = pour.StartedAt.AddMinutes(minutes);
        return new DateTime(at.Ticks - (at.Ticks % TimeSpan.TicksPerMinute), DateTimeKind.Utc);
    }

    private DateTime Now => studio.Clock.GetUtcNow().UtcDateTime;
}
