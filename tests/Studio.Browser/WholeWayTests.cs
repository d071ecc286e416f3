using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using Studio.Commissions;
using Studio.Engine.Custody;
using Studio.Engine.Film;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Papers;
using Studio.Pieces;
using Studio.Resins;
using UglyToad.PdfPig;

namespace Studio.Browser;

/// <summary>
/// A photograph on film through three layers, a part-cast keepsake and a box for lights, from the enquiry to the door, on a phone.
/// At the end every statement on the last page and on the last paper is held against the log, recomputed here.
/// </summary>
public sealed partial class WholeWayTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    // invented: 12 g of heather came, the family permits 5 g of it, 4.5 g go in
    private const double CameG = 12;
    private const double PermittedG = 5;
    private const double WentInG = 4.5;

    [Fact]
    public async Task From_the_enquiry_to_the_door_every_statement_is_what_the_log_says()
    {
        await using var window = await studio.WindowAsync(phone: true);
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@ling.example", "A-good-password-4");
        await EnquiryAsync(page);
        await LogAsync(page, "heather.jpg", "Flower or leaf", "Heather sprigs from the moor", "Cast a part, return the rest", part: true);
        await LogAsync(page, "ferry.jpg", "Photograph, the only one there is", "Isolde at the ferry landing", "Copy it, return the original", part: false);
        await DesignAsync();
        await PriceAsync(page);
        for (var order = 0; order < 3; order++)
        {
            await PourAsync(page, order);
        }

        await FinishAsync(page);
        await HomeAsync(page);
        await CompareAsync(page);
    }

    private static async Task EnquiryAsync(IPage page)
    {
        await page.OpenAsync("/");
        await page.Locator("#room-celsius").FillAsync("23");
        await page.GetByRole(AriaRole.Button, new() { Name = "Log", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("by Wren").First).ToBeVisibleAsync();
        await page.OpenAsync("/commissions/new");
        await page.GetByLabel("Customer").FillAsync("Ansel Thorne");
        await page.GetByLabel("What they ask for").FillAsync("A lamp with her photograph and heather");
        await page.GetByLabel("Whom or what it remembers").FillAsync("Isolde, who kept the bees");
        await Assertions.Expect(page.Locator("[data-in-time]")).ToBeVisibleAsync();
        await page.Locator("#keep-enquiry").ClickAsync();
        await page.WaitForURLAsync(CommissionUrl());
        await page.ReadyAsync();
    }

    private static async Task LogAsync(IPage page, string photo, string kind, string description, string permission, bool part)
    {
        await page.OpenAsync("/commissions/1/keepsakes/new");
        await page.Locator("input[type=file][capture]").SetInputFilesAsync(Path.Combine(Sources.Root(), "db", "demo", photo));
        await Assertions.Expect(page.Locator("[data-tray] img")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = kind }).First.ClickAsync();
        await page.Locator("[name=description]").FillAsync(description);
        if (part)
        {
            await page.Locator("[name=massG]").FillAsync(CameG.ToString(CultureInfo.InvariantCulture));
        }

        await page.GetByRole(AriaRole.Button, new() { Name = permission }).ClickAsync();
        if (part)
        {
            await page.Locator("[name=partG]").FillAsync(PermittedG.ToString(CultureInfo.InvariantCulture));
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Keepsake drawer 1" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and finish" }).ClickAsync();
        await Assertions.Expect(page.Locator(".entries .fresh")).ToHaveCountAsync(1);
    }

    // the drawing has tests of its own; here its records are written down as its page would
    private async Task DesignAsync()
    {
        await using var db = studio.Open();
        var mould = await db.Set<Mould>().SingleAsync(m => m.Name == "Cube 80");
        var resin = await db.Set<Resin>().OrderBy(r => r.Id).FirstAsync();
        var keepsakes = await db.Set<Keepsake>().OrderBy(k => k.Id).ToListAsync();
        var photo = await db.Set<Photo>().SingleAsync(p => p.KeepsakeId == keepsakes[1].Id);
        db.Add(new Piece
        {
            CommissionId = 1,
            Name = "Heather lamp",
            MouldId = mould.Id,
            CreatedAt = db.Now,
            WastePercent = 3,
            WastePerBatchG = 5,
            Tasks = [new("Sand and polish", 60)],
            Former = new FormerSpec { OuterWidthMm = 30, OuterDepthMm = 30, FromMm = 60, WallMm = 3 },
            Sheets =
            [
                new PieceFilm("Isolde at the ferry landing")
                {
                    Place = new FilmSpec { Placement = FilmPlacement.Parallel, DepthFrom = "front", DepthMm = 15, FromMm = 15, ToMm = 78 },
                    Picture = new FilmPicture(photo.Hash, photo.WidthPx, photo.HeightPx, keepsakes[1].EntryNumber),
                },
            ],
            Layers =
            [
                Layer(0, "clear foot", 25, resin, [new LayerPlaced(keepsakes[0].Id, "heather", WentInG, 0.4, null)]),
                Layer(1, "clear middle", 50, resin, []),
                Layer(2, "clear top", 80, resin, []),
            ],
        });
        await db.SaveChangesAsync();
    }

    private static PieceLayer Layer(int order, string name, double toMm, Resin resin, List<LayerPlaced> placed) =>
        new() { Order = order, Name = name, ToMm = toMm, ResinId = resin.Id, Placed = placed };

    private static async Task PriceAsync(IPage page)
    {
        await page.OpenAsync("/pieces/1/quote");
        await page.WaitForURLAsync(u => u.Contains("/quotes/", StringComparison.Ordinal));
        await page.SendPriceAsync();
        await page.Locator("#said-yes").ClickAsync();
        await Assertions.Expect(page.Locator("#state")).ToHaveTextAsync("agreed");
        await PayAsync(page, 1);
    }

    private static async Task PayAsync(IPage page, int payments)
    {
        await page.OpenAsync("/commissions/1");
        await page.Locator("#paid").ClickAsync();
        await Assertions.Expect(page.Locator("#payments li")).ToHaveCountAsync(payments);
    }

    private async Task PourAsync(IPage page, int order)
    {
        await page.OpenAsync("/pieces/1/bench");
        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("All laid ready");
        var laid = await page.Locator("main").InnerTextAsync();
        laid.ShouldContain("Isolde at the ferry landing", Case.Insensitive, "the film stands in every one of the three layers");
        if (order == 2)
        {
            laid.ShouldContain("box", Case.Insensitive);
        }

        await page.ShotAsync($"whole-way-{order + 1}-laid-ready");
        await page.Locator("#next-step").ClickAsync();
        await page.Locator("#next-step").ClickAsync();
        while (true)
        {
            await WeighAsync(page);
            var next = await page.Locator("#next-step").InnerTextAsync();
            await page.Locator("#next-step").ClickAsync();
            if (next == "Weighed")
            {
                break;
            }
        }

        await Assertions.Expect(page.Locator("#next-step")).ToHaveTextAsync("Keep this pour");
        if (order == 0)
        {
            await page.GetByLabel("How much went in").FillAsync(WentInG.ToString(CultureInfo.InvariantCulture));
            await page.GetByLabel("How much went in").BlurAsync();
            await page.GetByLabel("Where the rest lies").FillAsync("Keepsake drawer 2");
            await page.GetByLabel("Where the rest lies").BlurAsync();
        }

        await page.ShotAsync($"whole-way-{order + 1}-what-went-in");
        await Assertions.Expect(page.Locator("#next-step")).ToBeEnabledAsync();
        await page.Locator("#next-step").ClickAsync();
        await Assertions.Expect(page.GetByText("The pour is kept").First).ToBeVisibleAsync();
        await WaitUntilAsync(order < 2 ? t => t.Layers[^1].From.At : t => t.Demould.At);
    }

    private static async Task WeighAsync(IPage page)
    {
        foreach (var name in new[] { "A", "B" })
        {
            await page.Locator("button.part", new() { Has = page.Locator("#left-" + name) }).ClickAsync();
            var left = await page.Locator("#left-" + name).InnerTextAsync();
            await page.Locator("#scale").FillAsync(left);
            await page.Locator("#add-reading").ClickAsync();
            await Assertions.Expect(page.Locator("#left-" + name)).Not.ToHaveTextAsync(left);
        }
    }

    private async Task FinishAsync(IPage page)
    {
        await page.OpenAsync("/pieces/1/bench");
        await page.Locator("#demould").ClickAsync();
        await Assertions.Expect(page.Locator("#finish-head")).ToBeVisibleAsync();
        await WaitUntilAsync(t => t.FullCure.At);
        await page.OpenAsync("/pieces/1/bench");
        await page.Locator("#finish").ClickAsync();
        await Assertions.Expect(page.GetByText("It is finished.").First).ToBeVisibleAsync();
    }

    private static async Task HomeAsync(IPage page)
    {
        await PayAsync(page, 2);
        await page.GetByRole(AriaRole.Link, new() { Name = "Pack what goes home" }).ClickAsync();
        await page.GetByLabel("How it is packed").FillAsync("tissue, in the oak box");
        await page.ShotAsync("whole-way-4-packing");
        await page.Locator("#go-home").ClickAsync();
        await Assertions.Expect(page.Locator("#gone")).ToBeVisibleAsync();
        await page.OpenAsync("/commissions/1");
        await page.GetByRole(AriaRole.Button, new() { Name = "It went home", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("It went home. Nothing of theirs remains with us.")).ToBeVisibleAsync();
        await page.ShotAsync("whole-way-5-home");
    }

    private async Task CompareAsync(IPage page)
    {
        await using var db = studio.Open();
        var commission = await db.Set<Commission>().SingleAsync();
        var keepsakes = await db.Set<Keepsake>().OrderBy(k => k.Id).ToListAsync();
        var log = (await db.Set<KeepsakeEvent>().OrderBy(e => e.Id).ToListAsync()).ToLookup(e => e.KeepsakeId);
        var now = keepsakes.ConvertAll(k => CustodyLog.Read(log[k.Id]));
        commission.Stands.ShouldBe(Standing.Home);
        now.ShouldAllBe(n => !n.Balance.InHand && n.Balance.PiecesAddUp && n.Faults.Count == 0);

        // heather: came in = in the piece + went back, in grams, by the log alone
        now[0].Balance.SetIn.MassG.ShouldBe(WentInG);
        now[0].Balance.Returned.MassG.ShouldBe(CameG - WentInG);
        now[0].SetIn.ShouldHaveSingleItem().PieceId.ShouldBe(1);

        // the photograph: a copy of it is in the piece, and all of the thing itself went back
        now[1].SetIn.ShouldHaveSingleItem().Copy.ShouldBeTrue();
        now[1].Balance.Returned.Count.ShouldBe(1);
        log[keepsakes[1].Id].Where(e => e.Kind == CustodyKind.CopySetIn).ShouldNotBeEmpty();

        var home = await page.Locator("main").InnerTextAsync();
        foreach (var (k, i) in keepsakes.Select((k, i) => (k, i)))
        {
            home.ShouldContain(k.EntryNumber);
            home.ShouldContain(CustodyWords.Label(now[i].Whereabouts), Case.Insensitive);
        }

        var payments = await db.Set<Money.Payment>().ToListAsync();
        var agreed = (await db.Set<Quotes.Quote>().SingleAsync(q => q.State == Quotes.QuoteState.Accepted)).Result!.Total;
        payments.Sum(p => p.Amount).ShouldBe(agreed);
        home.ShouldContain(Shell.Say.Money(agreed, "GBP"));
        home.ShouldNotContain("is open.");

        var kept = await db.Set<IssuedPaper>().SingleAsync(p => p.Kind == PaperKinds.Return);
        var answer = await page.APIRequest.GetAsync(studio.Url + $"/papers/issued/{kept.Id}/as-it-left.pdf");
        var bytes = await answer.BodyAsync();
        Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)).ShouldBe(kept.Hash, StringCompareShould.IgnoreCase);
        await File.WriteAllBytesAsync(Path.Combine(StudioInBrowser.Shots, "whole-way-going-home.pdf"), bytes);
        using var document = PdfDocument.Open(bytes);
        var paper = string.Join(' ', document.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        paper.ShouldContain("Nothing of theirs remains with us.");
        paper.ShouldContain("tissue, in the oak box");
        keepsakes.ShouldAllBe(k => paper.Contains(k.EntryNumber, StringComparison.Ordinal));
        foreach (var grams in new[] { CameG, WentInG, CameG - WentInG })
        {
            paper.ShouldContain(grams.ToString(grams < 10 ? "N2" : "N1", CultureInfo.InvariantCulture));
        }
    }

    private async Task WaitUntilAsync(Func<Clock.PieceTimes, DateTime?> when)
    {
        await using var scope = Microsoft.Extensions.DependencyInjection.ServiceProviderServiceExtensions.CreateAsyncScope(studio.Services);
        var book = Microsoft.Extensions.DependencyInjection.ServiceProviderServiceExtensions.GetRequiredService<Clock.ClockBook>(scope.ServiceProvider);
        var at = when((await book.OfPieceAsync(1))!).ShouldNotBeNull();
        studio.Clock.SetUtcNow(new DateTimeOffset(DateTime.SpecifyKind(at, DateTimeKind.Utc)).AddMinutes(1));
    }

    [GeneratedRegex(@"/commissions/\d+$", RegexOptions.None, 1000)]
    private static partial Regex CommissionUrl();
}
