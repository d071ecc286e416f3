using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Studio.Data;

namespace Studio.Browser;

/// <summary>Every page of the demo studio, light on a desktop and dark on a phone: axe-core finds nothing serious, nothing runs off the side, no script complains.</summary>
public sealed class EveryPageTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private static readonly string[] Pages =
    [
        "/", "/commissions", "/commissions/new", "/commissions/6", "/customers", "/commissions/6/pieces/new", "/commissions/6/keepsakes/new", "/commissions/6/keepsakes", "/commissions/6/going-home",
        "/keepsakes", "/keepsakes/scan", "/keepsakes/{entry}", "/pieces/5", "/pieces/5/bench", "/pieces/3/bench", "/quotes/2", "/quotes/{draft}",
        "/stores/resins", "/stores/resins/1", "/stores/resins/new", "/stores/materials", "/stores/materials/1", "/stores/materials/new", "/stores/moulds", "/stores/moulds/1", "/stores/moulds/new", "/stores/pots", "/stores/pots/new", "/stores/pots/1", "/stores/tips", "/stores/tips/new", "/stores/tips/1", "/room", "/pours/1/log", "/stores/resins/2/logs",
        "/settings", "/settings/people", "/settings/history", "/me", "/not-found", "/not-yours",
    ];

    // each is looked at elsewhere, or sends on to a page that is
    private static readonly string[] Elsewhere = ["/sign-in", "/first-start", "/stores", "/pieces/{PieceId:int}/quote", "/trouble"];

    // a word that ends where the next part's begins, on one line and with no room between
    private const string Joined = """
        () => {
          const edge = (node, at, before) => { const r = document.createRange(); r.setStart(node, at); r.setEnd(node, at + 1); const boxes = r.getClientRects(); return before ? boxes[boxes.length - 1] : boxes[0]; };
          const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
          const found = [];
          for (let last = null, node = walk.nextNode(); node; last = node, node = walk.nextNode()) {
            if (!last || node.parentElement.closest('.sr') || !/[a-z0-9.,;:!?)]$/.test(last.data) || !/^[A-Za-z(]/.test(node.data) || last.parentElement === node.parentElement || last.parentElement.closest('td, th') !== node.parentElement.closest('td, th') || last.parentElement.closest('svg, script, style')) continue;
            const a = edge(last, last.length - 1, true), b = edge(node, 0, false);
            if (a && b && a.width > 0 && b.width > 0 && Math.abs(a.right - b.left) < 1.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4) found.push((last.data.slice(-25) + '|' + node.data.slice(0, 25)).trim());
          }
          return found;
        }
        """;

    // our own measure for a thumb: 44 px, WCAG 2.2 criterion 2.5.5 (level AAA)
    private const string Small = """
        () => [...document.querySelectorAll('main summary, main select, main input, main textarea, main label:has(input[type=checkbox], input[type=radio])')]
          .filter(e => e.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && e.getBoundingClientRect().width > 1 && !['checkbox', 'radio', 'range', 'color', 'file', 'hidden'].includes(e.type))
          .filter(e => e.getBoundingClientRect().height < 43.5)
          .map(e => Math.round(e.getBoundingClientRect().height) + ' px ' + e.outerHTML.slice(0, 110))
        """;

    [Fact]
    public void No_page_is_left_out()
    {
        var looked = Pages.Select(p => p.Split('/')).ToList();
        typeof(Program).Assembly.GetTypes().SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>()).Select(r => r.Template)
            .Where(route => !looked.Exists(p => Fits(p, route.Split('/')))).Order(StringComparer.Ordinal).ShouldBe(Elsewhere.Order(StringComparer.Ordinal));

        static bool Fits(string[] path, string[] route) => path.Length == route.Length
            && path.Zip(route).All(pair => pair.Second.StartsWith('{') ? pair.First.StartsWith('{') || (pair.First.Length > 0 && pair.First is not "new" and not "scan" and not "people" and not "history") : pair.First == pair.Second);
    }

    /// <summary>The two widths and the two looks, each with one of the other: neither changes what the other does.</summary>
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public async Task Every_page_is_sound(bool phone, bool dark)
    {
        await studio.Services.GetRequiredService<IDemo>().LoadAsync();
        await using var window = await studio.WindowAsync(phone, dark);
        var page = await window.NewPageAsync();
        var complaints = new List<string>();
        var at = "/sign-in";
        page.Console += (_, m) =>
        {
            // a page that is not there answers 404, which the browser calls an error
            if (m.Type is "error" && at != "/not-found")
            {
                complaints.Add($"{at}: {m.Text}");
            }
        };
        await page.GotoAsync("/sign-in");
        await AxeAsync(page, at, complaints);
        await page.GetByLabel("E-mail").FillAsync(IDemo.Email);
        await page.GetByLabel("Password").FillAsync(IDemo.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.ReadyAsync();
        foreach (var path in Pages)
        {
            at = await RealAsync(page, path);
            await page.OpenAsync(at);
            await Assertions.Expect(page.Locator("h1")).ToHaveCountAsync(1);
            await page.SettledAsync();
            await AxeAsync(page, at, complaints);
            // text that the page's author meant to be computed: @Name( or {Name} in a sentence
            if (System.Text.RegularExpressions.Regex.IsMatch(await page.Locator("main").InnerTextAsync(), @"@\w+\(|\{\w+\}", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)))
            {
                complaints.Add($"{at}: code stands in a sentence");
            }

            var over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (over > 1)
            {
                complaints.Add($"{at}: runs {over} px off the side");
            }

            complaints.AddRange((await page.EvaluateAsync<string[]>(Joined)).Select(words => $"{at}: two words run into each other: {words}"));
            if (phone)
            {
                complaints.AddRange((await page.EvaluateAsync<string[]>(Small)).Select(what => $"{at}: too small for a thumb: {what}"));
            }

            await page.ShotAsync($"page-{(phone ? "phone" : "desktop")}-{(dark ? "dark" : "light")}{path.Replace('/', '-').Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal)}");
        }

        complaints.ShouldBeEmpty();
    }

    private async Task<string> RealAsync(IPage page, string path)
    {
        if (path.Contains("{entry}", StringComparison.Ordinal))
        {
            await using var db = studio.Open();
            return "/keepsakes/" + db.Set<Keepsakes.Keepsake>().OrderBy(k => k.Id).First().EntryNumber;
        }

        if (path.Contains("{draft}", StringComparison.Ordinal))
        {
            await page.OpenAsync("/pieces/1/quote");
            await page.WaitForURLAsync(u => u.Contains("/quotes/", StringComparison.Ordinal));
            return new Uri(page.Url).AbsolutePath;
        }

        return path;
    }

    private static async Task AxeAsync(IPage page, string at, List<string> complaints)
    {
        var result = await RunAsync(page);
        result.Passes.ShouldNotBeEmpty();
        foreach (var violation in result.Violations.Where(Grave))
        {
            foreach (var node in violation.Nodes)
            {
                if (violation.Id != "target-size" || !await RoomyOnceScrolledAsync(page, node.Html))
                {
                    complaints.Add($"{at}: {violation.Id} ({violation.Impact}) {node.Html}");
                }
            }
        }
    }

    // a target half under the bar at the phone's lower edge is whole once it is scrolled to; it counts only if it is too small there as well
    private static async Task<bool> RoomyOnceScrolledAsync(IPage page, string html)
    {
        await page.EvaluateAsync("html => [...document.querySelectorAll('a, button, input, summary')].find(e => e.outerHTML === html)?.scrollIntoView({ block: 'center' })", html);
        var again = await RunAsync(page);
        await page.EvaluateAsync("() => window.scrollTo(0, 0)");
        return !again.Violations.Where(Grave).Any(v => v.Id == "target-size" && v.Nodes.Any(n => n.Html == html));
    }

    private static Task<AxeResult> RunAsync(IPage page) =>
        page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });

    private static bool Grave(AxeResultItem violation) => violation.Impact is "serious" or "critical";
}
