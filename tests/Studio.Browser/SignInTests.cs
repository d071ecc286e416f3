using Microsoft.Playwright;

namespace Studio.Browser;

public sealed class SignInTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
    private const string Email = "wren@studio.example";
    private const string Password = "heather and brass";

    [Fact]
    public async Task A_fresh_studio_makes_its_owner_and_lets_nobody_else_in()
    {
        await using var window = await studio.WindowAsync();
        var page = await window.NewPageAsync();
        var errors = new List<string>();
        page.Console += (_, m) =>
        {
            if (m.Type is "error")
            {
                errors.Add(m.Text);
            }
        };
        await page.GotoAsync("/commissions");
        await page.WaitForURLAsync(url => url.Contains("first-start", StringComparison.Ordinal));
        await page.ShotAsync("first-start-code");
        await page.GiveCodeAsync();
        await page.ShotAsync("first-start");
        await page.GetByLabel("Name of the studio").FillAsync("Ling & Larch");
        await page.GetByLabel("Your name").FillAsync("Wren");
        await page.GetByLabel("E-mail, to sign in with").FillAsync("wren@studio.example");
        await page.GetByLabel("Password, twelve characters or more").FillAsync("heather and brass");
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/London");
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the studio" }).ClickAsync();
        await Assertions.Expect(page.Locator("#who")).ToHaveTextAsync("Wren");
        await Assertions.Expect(page.Locator(".studio-name")).ToHaveTextAsync("Ling & Larch");
        await page.ReadyAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.WaitForURLAsync(url => url.Contains("/sign-in", StringComparison.Ordinal));
        await page.GotoAsync("/first-start");
        await page.WaitForURLAsync(url => url.Contains("/sign-in", StringComparison.Ordinal));
        await page.GetByLabel("E-mail").FillAsync("wren@studio.example");
        await page.GetByLabel("Password").FillAsync("not this one");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(page.GetByText("do not belong together")).ToBeVisibleAsync();
        errors.ShouldBeEmpty();
    }

    [Fact]
    public async Task Signing_out_in_one_tab_ends_the_page_that_is_open_in_another()
    {
        await using var own = await StartAsync(lookEverySeconds: 1);
        await using var window = await own.WindowAsync();
        var (here, there) = await TwoTabsAsync(window, "/commissions");

        await here.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();

        // nobody touches the other tab: it says so by itself
        await Assertions.Expect(there.GetByRole(AriaRole.Heading, new() { Name = "You are signed out here" })).ToBeVisibleAsync();
        await there.ShotAsync("signed-out");
        await there.Locator("#sign-in-again").ClickAsync();
        await there.GetByLabel("E-mail").FillAsync(Email);
        await there.GetByLabel("Password").FillAsync(Password);
        await there.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await there.ReadyAsync();
        new Uri(there.Url).AbsolutePath.ShouldBe("/commissions");
    }

    [Fact]
    public async Task An_act_in_a_page_whose_sign_in_has_ended_keeps_nothing_and_says_so()
    {
        await using var own = await StartAsync(lookEverySeconds: 60);
        await using var window = await own.WindowAsync();
        var (here, there) = await TwoTabsAsync(window, "/settings");
        await there.GetByLabel("Name of the tax").FillAsync("Levy");

        await here.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await here.WaitForURLAsync(url => url.Contains("/sign-in", StringComparison.Ordinal));
        await there.Locator("#save-settings").ClickAsync();

        await Assertions.Expect(there.GetByRole(AriaRole.Heading, new() { Name = "You are signed out here" })).ToBeVisibleAsync();
        await using var db = own.Open();
        db.Set<Settings.StudioSettings>().Single().TaxName.ShouldBe("VAT");

        // a refusal that is meant is no fault
        own.Traces.ShouldBeEmpty();
    }

    [Fact]
    public async Task An_undo_after_its_sign_in_has_ended_undoes_nothing_and_says_so()
    {
        await using var own = await StartAsync(lookEverySeconds: 60);
        await using var window = await own.WindowAsync();
        var (here, there) = await TwoTabsAsync(window, "/stores/resins");
        await there.Locator("tbody tr").First.GetByRole(AriaRole.Button, new() { Name = "Retire" }).ClickAsync();
        var undo = there.GetByRole(AriaRole.Button, new() { Name = "Undo" });
        await undo.WaitForAsync();

        await here.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await here.WaitForURLAsync(url => url.Contains("/sign-in", StringComparison.Ordinal));
        await undo.ClickAsync();

        await Assertions.Expect(there.GetByRole(AriaRole.Heading, new() { Name = "You are signed out here" })).ToBeVisibleAsync();
        await using var db = own.Open();
        db.Set<Resins.Resin>().Count(r => r.Retired).ShouldBe(1);
    }

    private static async Task<StudioInBrowser> StartAsync(int lookEverySeconds)
    {
        var own = new StudioInBrowser { LookEverySeconds = lookEverySeconds };
        await own.InitializeAsync();
        await using var window = await own.WindowAsync();
        await (await window.NewPageAsync()).FirstStartAsync(Email, Password);
        return own;
    }

    // two tabs of one browser, so one sign-in
    private static async Task<(IPage Here, IPage There)> TwoTabsAsync(IBrowserContext window, string path)
    {
        var (here, there) = (await window.NewPageAsync(), await window.NewPageAsync());
        await here.GotoAsync("/sign-in");
        await here.GetByLabel("E-mail").FillAsync(Email);
        await here.GetByLabel("Password").FillAsync(Password);
        await here.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await here.ReadyAsync();
        await there.OpenAsync(path);
        return (here, there);
    }
}
