using Microsoft.Playwright;

namespace Studio.Browser;

public sealed class SignInTests(StudioInBrowser studio) : IClassFixture<StudioInBrowser>
{
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
        await page.ShotAsync("first-start");
        await page.GetByLabel("Name of the studio").FillAsync("Ling & Larch");
        await page.GetByLabel("Your name").FillAsync("Wren");
        await page.GetByLabel("E-mail, to sign in with").FillAsync("wren@studio.example");
        await page.GetByLabel("Password, ten characters or more").FillAsync("heather and brass");
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
}
