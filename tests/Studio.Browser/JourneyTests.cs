using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Pieces;
using UglyToad.PdfPig;

namespace Studio.Browser;

/// <summary>
/// One commission from enquiry to demould, in a real browser, on real files, with a clock that the test moves.
/// The grams are checked against the handbook's cone frustum, the times against the engine alone.
/// </summary>
public sealed partial class JourneyTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private const string Email = "wren@studio.example";
    private const string Password = "heather and brass";

    [Fact]
    public async Task From_an_enquiry_to_demould()
    {
        await using var desk = await studio.WindowAsync();
        var page = await desk.NewPageAsync();
        var errors = new List<string>();
        page.Console += (_, m) =>
        {
            if (m.Type is "error")
            {
                errors.Add(m.Text);
            }
        };
        await page.FirstStartAsync(Email, Password);
        await page.ShotAsync("journey-01-empty-shelf");
        await LogRoomAsync(page, "23");
        await EnquiryAsync(page);
        await DesignAsync(page);
        await QuoteAsync(page);
        await IntakeAsync();
        await PapersAsync(page);
        var shelf = await SecondBrowserAsync();
        await PourFirstLayerAsync(page, shelf);
        await WindowAsync(page, shelf);
        await LastLayersAsync(page);
        await DemouldAsync(page, shelf);
        await HomeAsync(page);
        errors.ShouldBeEmpty();
    }

    private static async Task SignInAsync(IPage page)
    {
        await page.GotoAsync("/");
        await page.GetByLabel("E-mail").FillAsync(Email);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.ReadyAsync();
    }

    private static async Task LogRoomAsync(IPage page, string celsius)
    {
        await page.OpenAsync("/");
        await page.Locator("#room-celsius").FillAsync(celsius);
        await page.GetByRole(AriaRole.Button, new() { Name = "Log", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("by Wren").First).ToBeVisibleAsync();
    }

    private static async Task EnquiryAsync(IPage page)
    {
        await page.OpenAsync("/commissions/new");
        await page.GetByLabel("Customer").FillAsync("Ansel Thorne");
        await page.GetByLabel("E-mail").FillAsync("ansel@post.example");
        await page.GetByLabel("What they ask for").FillAsync("A dish with heather and hive nails");
        await page.GetByLabel("Whom or what it remembers").FillAsync("Isolde, who kept the bees");
        await page.ShotAsync("journey-02-enquiry");
        await page.Locator("#keep-enquiry").ClickAsync();
        await page.WaitForURLAsync(CommissionUrl());
        await page.ReadyAsync();
        await Assertions.Expect(page.GetByText("Isolde, who kept the bees").First).ToBeVisibleAsync();
        await page.ShotAsync("journey-03-commission");
    }

    private static async Task DesignAsync(IPage page)
    {
        await page.OpenAsync("/commissions/1/pieces/new");
        await page.GetByLabel("Name of the piece").FillAsync("Heather dish");
        await page.GetByRole(AriaRole.Radio, new() { NameRegex = DishName() }).CheckAsync(new() { Force = true });
        await page.GetByRole(AriaRole.Radio, new() { NameRegex = ColoursName() }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Start drawing" }).ClickAsync();
        await page.WaitForURLAsync(PieceUrl());
        await page.ReadyAsync();
        await Assertions.Expect(page.Locator("main svg").First).ToBeVisibleAsync();
        await page.ShotAsync("journey-04-design");
    }

    private async Task QuoteAsync(IPage page)
    {
        await page.OpenAsync("/pieces/1/quote");
        await page.WaitForURLAsync(u => u.Contains("/quotes/", StringComparison.Ordinal));
        var before = await page.Locator("#total").InnerTextAsync();
        await page.Locator("#margin-percent").FillAsync("45");
        await Assertions.Expect(page.Locator("#total")).Not.ToHaveTextAsync(before);
        await page.ShotAsync("journey-05-quote");
        await page.Locator("#keep-quote").ClickAsync();
        await Assertions.Expect(page.Locator("#kept")).ToHaveTextAsync("Kept.");
        await page.SendPriceAsync();

        // the family's paper says the total and none of the costs
        var quote = await ReadAsync(db => db.Set<Quotes.Quote>().SingleAsync());
        var total = Shell.Say.Money(quote.Result!.Total, "GBP");
        (await page.Locator("#total").InnerTextAsync()).ShouldBe(total);
        var paper = await page.APIRequest.GetAsync(studio.Url + $"/papers/quote/{quote.Id}.pdf");
        var words = Words(await paper.BodyAsync(), "quote");
        words.ShouldContain(total);
        words.ShouldContain("Isolde");
        words.ShouldNotContain("margin", Case.Insensitive);
        words.ShouldNotContain("overhead", Case.Insensitive);

        await page.Locator("#how-said").SelectOptionAsync("by telephone");
        await page.Locator("#said-yes").ClickAsync();
        await Assertions.Expect(page.Locator("#state")).ToHaveTextAsync("agreed");
        await page.OpenAsync("/commissions/1");
        await page.Locator("#paid").ClickAsync();
        await Assertions.Expect(page.Locator("#payments li")).ToHaveCountAsync(1);
        var payment = await ReadAsync(db => db.Set<Money.Payment>().SingleAsync());
        payment.Amount.ShouldBe(quote.Result.Deposit);
        (quote.Result.Deposit + quote.Result.Balance).ShouldBe(quote.Result.Total);
        (await ReadAsync(db => db.Set<Commissions.Commission>().SingleAsync())).Stands.ShouldBe(Commissions.Standing.Agreed);
        await page.ShotAsync("journey-05b-agreed");
    }

    private async Task IntakeAsync()
    {
        await using var phone = await studio.WindowAsync(phone: true);
        var page = await phone.NewPageAsync();
        await SignInAsync(page);
        await page.OpenAsync("/commissions/1/keepsakes/new");
        string[][] things =
        [
            ["heather.jpg", "Flower or leaf", "Heather sprigs from the moor", "Cast a part, return the rest"],
            ["nails.jpg", "Iron or steel", "Nails from the old hive", "Cast all of it"],
            ["ferry.jpg", "Photograph, the only one there is", "Isolde at the ferry landing", "Copy it, return the original"],
        ];
        for (var i = 0; i < things.Length; i++)
        {
            await TakeInAsync(page, things[i], last: i == things.Length - 1);
        }

        var keepsakes = await ReadAsync(db => db.Set<Keepsakes.Keepsake>().OrderBy(k => k.Id).ToListAsync());
        keepsakes.Select(k => k.Description).ShouldBe(things.Select(t => t[2]));
        (await ReadAsync(db => db.Set<Keepsakes.Photo>().CountAsync(p => p.KeepsakeId != null))).ShouldBe(3);
        await page.OpenAsync("/keepsakes/" + keepsakes[0].EntryNumber);
        await page.ShotAsync("journey-07-keepsake-phone");
    }

    private async Task TakeInAsync(IPage page, string[] thing, bool last)
    {
        await page.Locator("input[type=file][capture]").SetInputFilesAsync(Path.Combine(Sources.Root(), "db", "demo", thing[0]));
        await Assertions.Expect(page.Locator("[data-tray] img")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = thing[1], Exact = false }).First.ClickAsync();
        await page.Locator("[name=description]").FillAsync(thing[2]);
        if (thing[3].Length > 0)
        {
            // asked afresh for every thing: the family's word about one says nothing of the next
            await page.GetByRole(AriaRole.Button, new() { Name = thing[3] }).ClickAsync();
        }

        if (await page.GetByRole(AriaRole.Button, new() { Name = "Keepsake drawer 1" }).CountAsync() > 0)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Keepsake drawer 1" }).First.ClickAsync();
        }

        await page.ShotAsync("journey-06-intake-phone-" + Path.GetFileNameWithoutExtension(thing[0]));
        await page.GetByRole(AriaRole.Button, new() { Name = last ? "Keep and finish" : "Keep and log the next" }).ClickAsync();
        if (last)
        {
            await page.WaitForURLAsync(u => !u.EndsWith("/keepsakes/new", StringComparison.Ordinal));
            return;
        }

        var number = page.GetByText(EntryNumber()).First;
        await Assertions.Expect(number).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[name=description]")).ToHaveValueAsync("");
    }

    private async Task PapersAsync(IPage page)
    {
        var numbers = await ReadAsync(db => db.Set<Keepsakes.Keepsake>().Select(k => k.EntryNumber).ToListAsync());
        foreach (var paper in new[] { "/papers/receipt/1.pdf", "/papers/labels/1.pdf" })
        {
            var answer = await page.APIRequest.GetAsync(studio.Url + paper);
            answer.Status.ShouldBe(200, paper);
            var text = Words(await answer.BodyAsync(), Path.GetFileName(Path.GetDirectoryName(paper)!));
            foreach (var number in numbers)
            {
                Bare(text).ShouldContain(Bare(number), Case.Sensitive, paper);
            }
        }
    }

    // labels space the number out, so that it can be read aloud
    private static string Bare(string text) => text.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);

    private async Task<IPage> SecondBrowserAsync()
    {
        var window = await studio.WindowAsync();
        var page = await window.NewPageAsync();
        await SignInAsync(page);
        await page.OpenAsync("/");
        return page;
    }

    private async Task PourFirstLayerAsync(IPage page, IPage shelf)
    {
        var layer = await ReadAsync(db => db.Set<PieceLayer>().Include(l => l.Resin).OrderBy(l => l.Order).FirstAsync());
        // cone frustum, Machinery's Handbook 31st ed. p. 90: pi h/12 (D² + D d + d²); the dish is 96 mm below, 100 mm above, 15 mm high
        var h = layer.ToMm!.Value;
        var top = 96 + (4 * h / 15);
        var ml = Math.PI * h / 12 * ((96 * 96) + (96 * top) + (top * top)) / 1000;
        var net = ml * layer.Resin!.DensityGPerMl!.Value;
        var mix = (net * 1.03) + 5;
        var a = mix * layer.Resin.PartsA / (layer.Resin.PartsA + layer.Resin.PartsB);
        await page.OpenAsync("/pieces/1/bench");
        await page.ShotAsync("journey-08-bench");
        await page.ShotAsync("journey-09-prepare");
        await NextAsync(page, "All laid ready");
        await NextAsync(page, "Level and warm enough");
        await Assertions.Expect(page.Locator("#left-A")).ToHaveTextAsync(a.ToString("0.0", CultureInfo.InvariantCulture));
        await Assertions.Expect(page.Locator("#left-B")).ToHaveTextAsync((mix - a).ToString("0.0", CultureInfo.InvariantCulture));
        await WeighAsync(page);
        await page.ShotAsync("journey-10-weigh");
        await NextAsync(page, "Weighed");
        await NextAsync(page, "Keep this pour");
        await Assertions.Expect(page.GetByText("Next pour from").First).ToBeVisibleAsync();
        var pour = await ReadAsync(db => db.Set<Pour>().SingleAsync());
        (pour.PlannedAG + pour.PlannedBG).ShouldBe(mix, mix * 1e-9);
        pour.ActualAG.ShouldBe(a, 0.06);
        // the other browser was told without loading again
        await Assertions.Expect(shelf.GetByText("Next pour from").First).ToBeVisibleAsync();
        await shelf.ShotAsync("journey-11-shelf-curing");
    }

    private static async Task WeighAsync(IPage page)
    {
        for (var part = 0; part < 2; part++)
        {
            var name = part == 0 ? "A" : "B";
            await page.Locator("button.part", new() { Has = page.Locator("#left-" + name) }).ClickAsync();
            var left = await page.Locator("#left-" + name).InnerTextAsync();
            await page.Locator("#scale").FillAsync(left);
            await page.Locator("#add-reading").ClickAsync();
            await Assertions.Expect(page.Locator("#left-" + name)).Not.ToHaveTextAsync(left);
        }

        await Assertions.Expect(page.GetByText("the ratio").First).ToBeVisibleAsync();
        (await page.Locator("main").InnerTextAsync()).ShouldNotContain("@", Case.Sensitive, "no code stands in a sentence");
    }

    private static async Task NextAsync(IPage page, string label)
    {
        var button = page.Locator("#next-step");
        await Assertions.Expect(button).ToHaveTextAsync(label);
        await Assertions.Expect(button).ToBeEnabledAsync();
        await button.ClickAsync();
    }

    // at the sheet's temperature the window opens and closes when the engine says, to the minute
    private async Task WindowAsync(IPage page, IPage shelf)
    {
        var cure = await CureAsync();
        var first = cure.Layers[0];
        MoveTo(first.NextPourFrom.AtHours!.Value, -2);
        await page.OpenAsync("/pieces/1/bench");
        await Assertions.Expect(page.GetByText("Next pour from").First).ToBeVisibleAsync();
        MoveTo(first.NextPourFrom.AtHours!.Value, 1);
        await page.OpenAsync("/pieces/1/bench");
        // the bench lays the second layer out of itself as soon as the window is open, and not before
        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("All laid ready");
        await shelf.OpenAsync("/");
        await Assertions.Expect(shelf.Locator("#lead")).ToContainTextAsync("before");
        await shelf.ShotAsync("journey-12-window-open");
        MoveTo(first.NextPourUntil.AtHours!.Value, 1);
        await shelf.OpenAsync("/");
        await Assertions.Expect(shelf.GetByText("closed").First).ToBeVisibleAsync();
        await shelf.ShotAsync("journey-13-window-closed");
    }

    private async Task LastLayersAsync(IPage page)
    {
        for (var order = 1; order < 3; order++)
        {
            await page.OpenAsync("/pieces/1/bench");
            await NextAsync(page, "All laid ready");
            await NextAsync(page, "Level and warm enough");
            await WeighAsync(page);
            await NextAsync(page, "Weighed");
            await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("Keep this pour");
            if (await page.Locator("#why").CountAsync() > 0)
            {
                await page.Locator("#why").FillAsync("Abraded with grey pad and cleaned");
            }

            await NextAsync(page, "Keep this pour");
            await Assertions.Expect(page.GetByText("The pour is kept").First).ToBeVisibleAsync();
            if (order == 1)
            {
                MoveTo((await CureAsync()).Layers[1].NextPourFrom.AtHours!.Value, 1);
                await LogRoomAsync(page, "23");
            }
        }
    }

    private async Task DemouldAsync(IPage page, IPage shelf)
    {
        var ready = (await CureAsync()).Demould.AtHours!.Value;
        MoveTo(ready, -1);
        await page.OpenAsync("/pieces/1/bench");
        await Assertions.Expect(page.Locator("#demould-head")).ToBeVisibleAsync();
        (await page.Locator("#demould").CountAsync()).ShouldBe(0, "a minute before the engine says so, demoulding must not be offered");
        MoveTo(ready, 1);
        await page.OpenAsync("/pieces/1/bench");
        await Assertions.Expect(page.Locator("#demould")).ToBeVisibleAsync();
        await page.ShotAsync("journey-14-demould");
        await page.Locator("#demould").ClickAsync();
        await Assertions.Expect(page.Locator("#finish-head")).ToBeVisibleAsync();
        (await ReadAsync(db => db.Set<Piece>().SingleAsync())).Stage.ShouldBe(Making.Demoulded);
        await shelf.OpenAsync("/");
        await shelf.ShotAsync("journey-15-demoulded");
    }

    // ready at full cure and not before; home once everything is back and paid
    private async Task HomeAsync(IPage page)
    {
        var full = (await CureAsync()).Layers.Max(l => l.FullCure.AtHours!.Value);
        MoveTo(full, -1);
        await page.OpenAsync("/pieces/1/bench");
        (await page.Locator("#finish").CountAsync()).ShouldBe(0, "a minute before full cure, finishing must not be offered without a reason");
        MoveTo(full, 1);
        await page.OpenAsync("/pieces/1/bench");
        await page.Locator("#finish").ClickAsync();
        await Assertions.Expect(page.GetByText("It is finished.").First).ToBeVisibleAsync();
        (await ReadAsync(db => db.Set<Commissions.Commission>().SingleAsync())).Stands.ShouldBe(Commissions.Standing.Ready);

        await page.OpenAsync("/commissions/1");
        await page.ShotAsync("journey-16-ready");
        await page.Locator("#paid").ClickAsync();
        await Assertions.Expect(page.Locator("#payments li")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new() { Name = "Pack what goes home" }).ClickAsync();

        // nothing of theirs was cast into this dish: that is said, and it is left to the maker to send it home all the same
        await Assertions.Expect(page.Locator("[data-yet]")).ToHaveCountAsync(3);
        foreach (var box in await page.Locator(".parcel input[type=checkbox]:not([data-piece])").AllAsync())
        {
            await box.CheckAsync();
        }

        await page.Locator("#go-home").ClickAsync();
        await Assertions.Expect(page.Locator("#gone")).ToBeVisibleAsync();
        await page.ShotAsync("journey-17-going-home");
        var kept = await ReadAsync(db => db.Set<Papers.IssuedPaper>().SingleAsync(p => p.Kind == Papers.PaperKinds.Return));
        var paper = await page.APIRequest.GetAsync(studio.Url + $"/papers/issued/{kept.Id}/as-it-left.pdf");
        Words(await paper.BodyAsync(), "going-home").ShouldContain("Nothing of theirs remains with us.");

        await page.OpenAsync("/commissions/1");
        await page.GetByRole(AriaRole.Button, new() { Name = "It went home", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("It went home. Nothing of theirs remains with us.")).ToBeVisibleAsync();
        await page.ShotAsync("journey-18-home");
    }

    // the engine alone, fed from the records and from what is known of the lots: hours since the first pour
    private async Task<PieceCure> CureAsync()
    {
        var pours = await ReadAsync(db => db.Set<Pour>().OrderBy(p => p.LayerOrder).ToListAsync());
        var readings = await ReadAsync(db => db.Set<Reading>().OrderBy(r => r.At).ToListAsync());
        var cures = await ReadAsync(db => LotCures.OfAsync(db, pours.Select(p => (p.ResinId, p.ResinLot))));
        var zero = pours[0].StartedAt;
        start = zero;
        return CureClock.Run(
            [.. pours.Select(p => new Engine.Cure.PouredLayer(p.LayerName, p.Sheet, (p.StartedAt - zero).TotalHours) { Kinetics = p.Kinetics, Likely = cures.Of(p.ResinId, p.ResinLot), Heat = LotCures.Heat(p.Foretold) })],
            [.. readings.Select(r => new RoomReading((r.At - zero).TotalHours, r.Celsius))],
            10_000);
    }

    private DateTime start;

    private void MoveTo(double hoursSinceFirstPour, int minutesMore) =>
        studio.Clock.SetUtcNow(new DateTimeOffset(start, TimeSpan.Zero).AddHours(hoursSinceFirstPour).AddMinutes(minutesMore));

    private async Task<T> ReadAsync<T>(Func<StudioDb, Task<T>> read)
    {
        await using var db = studio.Open();
        return await read(db);
    }

    private static string Words(byte[] pdf, string name)
    {
        File.WriteAllBytes(Path.Combine(StudioInBrowser.Shots, name + ".pdf"), pdf);
        using var document = PdfDocument.Open(pdf);
        return string.Join(' ', document.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    [GeneratedRegex(@"/commissions/\d+$", RegexOptions.None, 1000)]
    private static partial Regex CommissionUrl();

    [GeneratedRegex(@"/pieces/\d+$", RegexOptions.None, 1000)]
    private static partial Regex PieceUrl();

    [GeneratedRegex("^Colour, clear, colour", RegexOptions.None, 1000)]
    private static partial Regex ColoursName();

    [GeneratedRegex("Round dish 100", RegexOptions.None, 1000)]
    private static partial Regex DishName();

    [GeneratedRegex(@"KS-26-\d{5}-[0-9A-Z]", RegexOptions.None, 1000)]
    private static partial Regex EntryNumber();
}
