using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using SkiaSharp;
using Studio.Commissions;
using Studio.Customers;
using Studio.SignIn;

namespace Studio.Browser;

/// <summary>The intake as it is used: a phone, one thumb, a family at the table and a poor connection.</summary>
public sealed class KeepsakeIntakeTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private const string Email = "morag@studio.example";
    private const string Password = "heather-on-the-hill";
    private const int ThumbPx = 44; // WCAG 2.2, 2.5.5 (AAA): targets of at least 44 by 44 CSS pixels
    private const int MostTaps = 12;

    [Fact]
    public async Task Three_keepsakes_are_taken_in_one_after_another_with_one_thumb()
    {
        var (window, page, commission) = await BeginAsync("26-201");
        await using var _ = window;
        await page.OpenAsync($"/commissions/{commission}/keepsakes/new");
        (await TooSmallAsync(page)).ShouldBeEmpty();

        var taps = await ThingAsync(page, "Flower or leaf", "heather from the hill", mass: "12,4 g", first: true);
        await page.ShotAsync("keepsake-intake-phone");
        await KeepAsync(page, "Keep and log the next", "The first of this visit.");
        taps.ShouldBeLessThan(MostTaps);

        await ThingAsync(page, "Iron or steel", "hive nails", mass: "86.5", first: false);
        await KeepAsync(page, "Keep and log the next", "2 in this visit.");
        var numbers = await page.Locator(".kept .number").InnerTextAsync();
        numbers.ShouldMatch("^KS-26-000\\d\\d-[0-9A-Z]$");
        await page.ShotAsync("keepsake-kept-phone");

        await ThingAsync(page, "Button or other plastic", "buttons from his veil", mass: null, first: false);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and finish" }).TapAsync();
        await Assertions.Expect(page.Locator(".entries .fresh")).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator(".entries .fresh img")).ToHaveCountAsync(3);
        await page.ShotAsync("keepsake-receipt-phone");
    }

    [Fact]
    public async Task A_photograph_that_is_chosen_before_its_script_has_come_is_not_lost()
    {
        var (window, page, commission) = await BeginAsync("26-204");
        await using var _ = window;
        var come = new TaskCompletionSource();
        await page.RouteAsync("**/intake.js*", async route =>
        {
            await come.Task;
            await route.ContinueAsync();
        });
        await page.OpenAsync($"/commissions/{commission}/keepsakes/new");
        await ChooseAsync(page, Jpeg("nails.jpg", SKColors.SaddleBrown));
        come.SetResult();
        await Assertions.Expect(page.Locator(".photo.kept")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_refused_photograph_loses_neither_the_others_nor_the_words()
    {
        var (window, page, commission) = await BeginAsync("26-202");
        await using var _ = window;
        await page.OpenAsync($"/commissions/{commission}/keepsakes/new");
        await page.Locator("[name=description]").FillAsync("hive nails");
        await ChooseAsync(page, Jpeg("nails.jpg", SKColors.SaddleBrown), new() { Name = "IMG_1.HEIC", MimeType = "image/heic", Buffer = [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8] }, new() { Name = "nails2.jpg", MimeType = "image/jpeg", Buffer = [.. "MZ"u8, .. new byte[500]] });
        await Assertions.Expect(page.Locator(".photo.kept")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".photo.refused")).ToHaveCountAsync(2);
        await Assertions.Expect(page.GetByText("set the camera's format to 'Most compatible'").First).ToBeVisibleAsync();
        (await page.Locator("[name=description]").InputValueAsync()).ShouldBe("hive nails");
    }

    [Fact]
    public async Task A_broken_line_and_a_reload_lose_neither_words_nor_photographs_and_add_nothing_twice()
    {
        var (window, page, commission) = await BeginAsync("26-203");
        await using var _ = window;
        await page.OpenAsync($"/commissions/{commission}/keepsakes/new");
        await page.GetByRole(AriaRole.Button, new() { Name = "Wood, bark or cork" }).TapAsync();
        await Assertions.Expect(page.Locator("input[name=kind]")).ToHaveValueAsync("wood");
        await window.SetOfflineAsync(true);
        await ChooseAsync(page, Jpeg("oar.jpg", SKColors.Peru));
        await page.Locator("[name=description]").FillAsync("typed while the line was down");
        await Assertions.Expect(page.Locator(".photo.broken")).ToHaveCountAsync(1);
        await window.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".photo.kept")).ToHaveCountAsync(1);

        await page.ReloadAsync();
        await page.ReadyAsync();
        await Assertions.Expect(page.Locator("[name=description]")).ToHaveValueAsync("typed while the line was down");
        await Assertions.Expect(page.Locator(".photo.kept")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Cast all of it" }).TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Bench", Exact = true }).TapAsync();
        await Assertions.Expect(page.Locator("[name=place]")).ToHaveValueAsync("Bench");
        await page.EvaluateAsync("() => { const b = document.querySelector('.bar .main'); b.click(); b.click(); b.click(); }");
        await Assertions.Expect(page.GetByText("The first of this visit.")).ToBeVisibleAsync();
        await page.GotoAsync($"/commissions/{commission}/keepsakes");
        await Assertions.Expect(page.Locator(".entries li")).ToHaveCountAsync(1);
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public async Task Nothing_serious_stands_in_anyones_way(bool phone, bool dark)
    {
        var number = string.Create(CultureInfo.InvariantCulture, $"26-21{(phone ? 1 : 0)}{(dark ? 1 : 0)}");
        var (window, page, commission) = await BeginAsync(number, phone, dark);
        await using var _ = window;
        await page.OpenAsync($"/commissions/{commission}/keepsakes/new");
        await ThingAsync(page, "Ashes", "a spoonful", mass: null, first: true);
        await CleanAsync(page, "intake");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and finish" }).ClickAsync();
        await Assertions.Expect(page.Locator(".entries .fresh")).ToHaveCountAsync(1);
        await CleanAsync(page, "receipts");
        await page.Locator(".entries a.number").ClickAsync();
        await Assertions.Expect(page.GetByText("What the family permits")).ToBeVisibleAsync();
        await CleanAsync(page, "keepsake");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Say where it lies from now on.")).ToBeVisibleAsync();
        await CleanAsync(page, "moving");
        await page.Locator("[name=place]").FillAsync("Safe");
        await page.Locator("[name=words]").FillAsync("for the night");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Here: Safe")).ToBeVisibleAsync();
        await page.SettledAsync(); // a message that is still fading in has no contrast yet
        await CleanAsync(page, "moved");
        await page.OpenAsync("/keepsakes");
        await CleanAsync(page, "ledger");
        await page.OpenAsync("/keepsakes/scan");
        await CleanAsync(page, "scan");
    }

    private static async Task<int> ThingAsync(IPage page, string kind, string description, string? mass, bool first)
    {
        var taps = 2; // the camera and its shutter
        await ChooseAsync(page, Jpeg(description + ".jpg", SKColors.DarkOliveGreen));
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = kind, Exact = true }));
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Change: What is it made of?" })).ToBeVisibleAsync();
        await FillAsync("description", description);
        if (mass is not null)
        {
            await FillAsync("massG", mass);
        }

        // asked afresh for every thing: the family's word about one says nothing of the next
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Cast a part, return the rest" }));
        if (first)
        {
            await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Good", Exact = true }));
            await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Drying box" }));
        }

        return taps + 1; // and the one that keeps it

        async Task TapAsync(ILocator target)
        {
            taps++;
            await target.ClickAsync();
        }

        async Task FillAsync(string name, string words)
        {
            await TapAsync(page.Locator($"[name={name}]"));
            await page.Locator($"[name={name}]").FillAsync(words);
        }
    }

    private static async Task KeepAsync(IPage page, string button, string said)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = button }).TapAsync();
        await Assertions.Expect(page.GetByText(said)).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[name=description]")).ToHaveValueAsync("");
    }

    private static Task ChooseAsync(IPage page, params FilePayload[] files) => page.Locator("input[type=file]").Nth(1).SetInputFilesAsync(files);

    private static FilePayload Jpeg(string name, SKColor colour)
    {
        using var bitmap = new SKBitmap(1600, 1200);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.Linen);
            using var paint = new SKPaint { Color = colour };
            canvas.DrawCircle(800, 600, 380, paint);
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 85);
        return new() { Name = name, MimeType = "image/jpeg", Buffer = data.ToArray() };
    }

    private static async Task CleanAsync(IPage page, string where)
    {
        var result = await page.RunAxe();
        result.Violations.Where(v => v.Impact is "serious" or "critical")
            .Select(v => $"{where}: {v.Id} {string.Join(" | ", v.Nodes.Select(n => n.Html))}").ShouldBeEmpty();
    }

    private static Task<string[]> TooSmallAsync(IPage page) => page.EvaluateAsync<string[]>(
        $$"""
        () => [...document.querySelectorAll('form.intake button, form.intake label.btn, form.intake input:not([type=hidden]):not([type=file]), form.intake summary')]
          .filter(e => e.offsetParent && !e.closest('.mud-input-control') && Math.min(e.getBoundingClientRect().height, e.getBoundingClientRect().width) < {{ThumbPx}})
          .map(e => (e.innerText || e.name) + ' ' + e.getBoundingClientRect().width + ' x ' + e.getBoundingClientRect().height)
        """);

    private async Task<(IBrowserContext Window, IPage Page, int Commission)> BeginAsync(string number, bool phone = true, bool dark = false)
    {
        await studio.Services.GetRequiredService<FirstStart>().MakeOwnerAsync("Morag", Email, Password);
        await using var db = studio.Open();
        var commission = new Commission { Number = number, Remembers = "Angus, beekeeper", CreatedAt = db.Now, Customer = new Customer { Name = "Isla Fraser", CreatedAt = db.Now } };
        db.Add(commission);
        await db.SaveChangesAsync();
        var window = await studio.WindowAsync(phone, dark);
        var page = await window.NewPageAsync();
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("E-mail").FillAsync(Email);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("sign-in", StringComparison.Ordinal));
        return (window, page, commission.Id);
    }
}
