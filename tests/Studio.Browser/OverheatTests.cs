using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Browser;

/// <summary>A pour that would overheat is stopped at the bench; the advice is taken on the piece's page, and then the pour passes.</summary>
public sealed class OverheatTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private const double LimitC = 36;

    [Fact]
    public async Task A_pour_that_would_overheat_is_stopped_and_passes_once_the_advice_is_taken()
    {
        await using var window = await studio.WindowAsync();
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@studio.example", "heather and brass");
        var id = await DrawnAsync();

        await page.OpenAsync($"/pieces/{id}/bench");
        await Assertions.Expect(page.Locator("#heat-working")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".finding.stop").First).ToContainTextAsync("the limit is 36 °C");
        await Assertions.Expect(page.Locator(".offers li").First).ToBeVisibleAsync();
        await page.ShotAsync("overheat-1-stopped");
        await ToLastStepAsync(page);
        await Assertions.Expect(page.Locator("#next-step")).ToBeDisabledAsync();
        await page.ShotAsync("overheat-2-not-kept");

        // the advice, on the piece's page
        await page.OpenAsync($"/pieces/{id}");
        await Assertions.Expect(page.Locator("#heat-layer-0")).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("hot", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)));
        await page.Locator("[data-offer=thinner]").First.ClickAsync();
        await page.Locator("#keep").ClickAsync();
        await Assertions.Expect(page.Locator("#heat-layer-0")).Not.ToHaveClassAsync(new System.Text.RegularExpressions.Regex("hot|runaway", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)));
        await page.ShotAsync("overheat-3-taken");
        (await ReadAsync(db => db.Set<PieceLayer>().SingleAsync())).ThicknessMm.ShouldNotBeNull().ShouldBeInRange(2, 13.5);

        // this tablet still holds what was weighed for the thicker layer, and says so
        await page.OpenAsync($"/pieces/{id}/bench");
        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("Keep this pour");
        await Assertions.Expect(page.Locator(".finding.stop").First).ToContainTextAsync("Weigh anew");
        await page.EvaluateAsync("localStorage.clear()");
        await page.OpenAsync($"/pieces/{id}/bench");
        await ToLastStepAsync(page);
        await Assertions.Expect(page.Locator("#next-step")).ToBeEnabledAsync();
        await page.Locator("#next-step").ClickAsync();
        await Assertions.Expect(page.GetByText("The pour is kept").First).ToBeVisibleAsync();
        var pour = await ReadAsync(db => db.Set<Pour>().SingleAsync());
        pour.Foretold.ShouldNotBeNull().PeakHighC.ShouldBeLessThanOrEqualTo(LimitC);
        await page.ShotAsync("overheat-4-poured");
    }

    private static async Task ToLastStepAsync(IPage page)
    {
        await NextAsync(page, "All laid ready");
        await NextAsync(page, "Level and warm enough");
        foreach (var name in new[] { "A", "B" })
        {
            await page.Locator("button.part", new() { Has = page.Locator("#left-" + name) }).ClickAsync();
            var left = await page.Locator("#left-" + name).InnerTextAsync();
            await page.Locator("#scale").FillAsync(left);
            await page.Locator("#add-reading").ClickAsync();
            await Assertions.Expect(page.Locator("#left-" + name)).Not.ToHaveTextAsync(left);
        }

        await NextAsync(page, "Weighed");
        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("Keep this pour");
    }

    private static async Task NextAsync(IPage page, string label)
    {
        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync(label);
        await page.Locator("#next-step").ClickAsync();
    }

    // a casting resin whose sheet allows 36 °C, 14 mm deep in a square mould of silicone, in a room of 23 °C; invented
    private async Task<int> DrawnAsync()
    {
        await using var db = studio.Open();
        var resin = new Resin
        {
            Name = "Lamp casting",
            Class = "casting",
            DensityGPerMl = 1.1,
            PartsA = 100,
            PartsB = 44,
            PotLifeMinutes = 40,
            PotLifeMassG = 100,
            PotLifeAtC = 23,
            MaxPourMm = 15,
            LimitC = LimitC,
            MinC = 18,
            MaxC = 28,
            Times = [new() { AtCelsius = 23, GelHours = 4, NextPourFromHours = 6, NextPourUntilHours = 24, DemouldHours = 24, FullCureHours = 168 }],
        };
        var piece = new Piece
        {
            Name = "Hive lamp",
            CreatedAt = studio.Clock.GetUtcNow().UtcDateTime,
            Mould = new() { Name = "Square 100", Shape = "cuboid", Dimensions = new() { ["widthMm"] = 100, ["depthMm"] = 100, ["heightMm"] = 60 }, Wall = new("silicone", 10, 10) },
            Commission = new Commission { Number = "26-002", Title = "A lamp", Remembers = "Isolde", Stands = Standing.Making, Customer = new Customer { Name = "Ansel Thorne" } },
            Layers = [new PieceLayer { Name = "base", Resin = resin, ToMm = 14 }],
        };
        db.AddRange(piece, new Reading { At = studio.Clock.GetUtcNow().UtcDateTime, Celsius = 23, HumidityPercent = 48, Place = RoomBook.CastingRoom, By = "Wren" });
        await db.SaveChangesAsync();
        return piece.Id;
    }

    private async Task<T> ReadAsync<T>(Func<StudioDb, Task<T>> read)
    {
        await using var db = studio.Open();
        return await read(db);
    }
}
