using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using SkiaSharp;
using Studio.Pieces;

namespace Studio.Browser;

/// <summary>A lamp is designed in the browser by the keyboard alone: every field is reached by focus, every choice made by keys.</summary>
public sealed class LampTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private static readonly string[] Things =
        ["brass button", "hive nail", "heather sprig", "bee of brass", "thimble", "queen cage", "smoker rivet", "wax seal", "key", "bead of amber"];

    [Fact]
    public async Task A_lamp_is_designed_by_the_keyboard_alone()
    {
        await using var window = await studio.WindowAsync();
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@studio.example", "heather and brass");
        await BeginAsync(page);
        await LayersAsync(page);
        await FormerAsync(page);
        await ScatterAsync(page, 1, "Crushed cloudy glass", "40");
        await ScatterAsync(page, 2, "Heather tips", "12");
        await PlaceAsync(page, 3);
        await PhotographAsync(page);
        await page.PressAsync("#keep");
        await Assertions.Expect(page.Locator(".keeping")).ToHaveTextAsync(new Regex("^Kept ", RegexOptions.None, TimeSpan.FromSeconds(1)));
        await page.ShotAsync("lamp-1-desktop");

        var piece = await KeptAsync();
        piece.Former.ShouldNotBeNull();
        piece.Layers.Count(l => l.Scatter.Count > 0).ShouldBe(2);
        piece.Layers.SelectMany(l => l.Scatter).Select(s => s.Name).ShouldBe(["Crushed cloudy glass", "Heather tips"], ignoreOrder: true);
        piece.Layers.SelectMany(l => l.Placed).Select(p => p.Name).ShouldBe(Things);
        var sheet = piece.Sheets.ShouldHaveSingleItem();
        sheet.Place.Placement.ShouldBe("corner");
        sheet.Picture.ShouldNotBeNull().WidthPx.ShouldBe(1500);
        await PapersAsync(page);
        await ViewsAsync(page);
        await PhoneAsync(page);
    }

    // upright from corner to corner, below the room for the lights
    private static async Task PhotographAsync(IPage page)
    {
        await page.PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Set a photograph into the piece" }));
        using var bitmap = new SKBitmap(1500, 1200);
        bitmap.Erase(SKColors.SeaGreen);
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        // the field takes files once its script has found it; no person is quicker
        await page.WaitForFunctionAsync("() => document.querySelector('#photographs input[type=file]')?._blazorInputFileNextFileId !== undefined");
        await page.Locator("#photographs input[type=file]").SetInputFilesAsync(new FilePayload { Name = "moor.jpg", MimeType = "image/jpeg", Buffer = data.ToArray() });
        await Assertions.Expect(page.Locator("#photographs .seen svg")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#photographs")).ToContainTextAsync("pixels an inch");
    }

    private static async Task PapersAsync(IPage page)
    {
        var papers = page.Locator("#photographs .papers a");
        (await papers.CountAsync()).ShouldBeGreaterThanOrEqualTo(2);
        for (var i = 0; i < await papers.CountAsync(); i++)
        {
            var answer = await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), await papers.Nth(i).GetAttributeAsync("href")).ToString());
            answer.Ok.ShouldBeTrue();
            var head = System.Text.Encoding.ASCII.GetString((await answer.BodyAsync()).AsSpan(0, 5));
            (head is "%PDF-" or "<svg " or "<?xml").ShouldBeTrue(head);
        }
    }

    private static async Task ViewsAsync(IPage page)
    {
        foreach (var (name, shot, shows) in new[]
        {
            ("Both ways up", "lamp-3-both", ".pair svg >> nth=1"), ("Plan", "lamp-4-plan", "svg.plan"), ("Turning", "lamp-5-turning", "canvas[data-drawn]"),
        })
        {
            await page.EvaluateAsync("scrollTo(0, 0)");
            await page.PressAsync(page.GetByText(name, new() { Exact = true }));
            await Assertions.Expect(page.Locator(shows)).ToBeVisibleAsync();
            await page.ShotAsync(shot, whole: false);
        }
    }

    private static async Task BeginAsync(IPage page)
    {
        await page.OpenAsync("/commissions/new");
        await page.TypeAsync(page.GetByLabel("Customer"), "Ansel Thorne");
        await page.TypeAsync(page.GetByLabel("What they ask for"), "A lamp with her photograph");
        await page.PressAsync("#keep-enquiry");
        await page.WaitForURLAsync(u => u.EndsWith("/commissions/1", StringComparison.Ordinal));
        await page.OpenAsync("/commissions/1/pieces/new");
        await page.TypeAsync(page.GetByLabel("Name of the piece"), "Heather lamp");
        await page.GetByRole(AriaRole.Radio, new() { Name = "Pyramid 150, tall" }).FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await page.GetByRole(AriaRole.Radio, new() { Name = "Colour, clear, colour" }).FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await page.PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Start drawing" }));
        await page.WaitForURLAsync(u => u.Contains("/pieces/", StringComparison.Ordinal) && !u.EndsWith("/new", StringComparison.Ordinal));
        await page.ReadyAsync();
    }

    // a colour at the tip, clear ones, a colour at the base around the lights
    private static async Task LayersAsync(IPage page)
    {
        await Assertions.Expect(page.Locator("ol.layers > li").First).ToBeVisibleAsync();
        var have = await page.Locator("ol.layers > li").CountAsync();
        have.ShouldBe(5);
    }

    private static async Task FormerAsync(IPage page)
    {
        await page.PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Set a box into the mould" }));
        await page.TypeAsync(page.GetByLabel("Width outside"), "50");
        await page.TypeAsync(page.GetByLabel("Depth outside"), "50");
        await Assertions.Expect(page.GetByText("Thinnest wall")).ToBeVisibleAsync();
    }

    private static async Task ScatterAsync(IPage page, int layer, string name, string grams)
    {
        await page.OpenLayerAsync(layer);
        await page.TypeAsync(page.GetByLabel("Add stones, shavings, glass"), name);
        await page.Keyboard.PressAsync("Enter"); // at once: what is taken is what was typed, not what was offered before
        var row = page.Locator($"#loose-{layer}-0");
        await Assertions.Expect(row.Locator("input").First).ToBeFocusedAsync(); // it asks for its amount at once
        await page.Keyboard.TypeAsync(grams);
        if (await row.GetByLabel("Density").InputValueAsync() is "")
        {
            await page.TypeAsync(row.GetByLabel("Density"), "2.5");
        }
    }

    private static async Task PlaceAsync(IPage page, int layer)
    {
        await page.OpenLayerAsync(layer);
        for (var i = 0; i < Things.Length; i++)
        {
            await page.TypeAsync(page.Locator($"#place-{layer} input").First, Things[i]);
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page.Locator($"#placed-{layer}-{i} input").First).ToBeFocusedAsync();
            await page.Keyboard.PressAsync("Control+A");
            await page.Keyboard.TypeAsync("0.6");
        }

        await Assertions.Expect(page.Locator($"#layer-{layer} .thing")).ToHaveCountAsync(Things.Length);
    }

    private static async Task PhoneAsync(IPage page)
    {
        await page.SetViewportSizeAsync(390, 844);
        await page.OpenAsync("/pieces/1");
        (await page.EvaluateAsync<int>("document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(390);
        await page.ShotAsync("lamp-2-phone");
    }

    private async Task<Piece> KeptAsync()
    {
        await using var db = studio.Open();
        return await db.Set<Piece>().AsNoTracking().Include(p => p.Layers).SingleAsync();
    }
}

/// <summary>What hands on a keyboard do.</summary>
internal static class Keys
{
    /// <summary>Presses a button by Enter.</summary>
    public static async Task PressAsync(this IPage page, ILocator button)
    {
        await Assertions.Expect(button).ToBeEnabledAsync();
        await button.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
    }

    public static Task PressAsync(this IPage page, string button) => page.PressAsync(page.Locator(button));

    /// <summary>Types over whatever stands in a field.</summary>
    public static async Task TypeAsync(this IPage page, ILocator field, string text)
    {
        await field.FocusAsync();
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync(text);
    }

    /// <summary>Opens a layer, counted from the bottom of the mould.</summary>
    public static async Task OpenLayerAsync(this IPage page, int layer)
    {
        var head = page.Locator($"#layer-{layer} .head");
        if (await head.GetAttributeAsync("aria-expanded") is not "true")
        {
            await page.PressAsync(head);
        }

        await Assertions.Expect(page.Locator($"#layer-{layer}-body")).ToBeVisibleAsync();
    }
}
