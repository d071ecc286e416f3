using System.Collections.Concurrent;
using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Browser;

/// <summary>The whole studio on a real port with a clock the test can move, and Debian's Chromium to look at it.</summary>
public sealed class StudioInBrowser : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly string data = Directory.CreateTempSubdirectory("studio-browser").FullName;
    private IPlaywright? playwright;

    private const float HungMs = 120_000;

    /// <summary>Where screenshots go: kept by CI as an artefact.</summary>
    public static string Shots { get; } = Directory.CreateDirectory(
        Environment.GetEnvironmentVariable("STUDIO_SHOTS") ?? Path.Combine(Sources.Root(), "artifacts", "screenshots")).FullName;

    /// <summary>Moved by the tests; Tuesday 3 March 2026, 09:00 UTC to begin with.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 3, 9, 0, 0, TimeSpan.Zero));

    public IBrowser Chromium { get; private set; } = default!;

    public string Url { get; private set; } = "";

    public string DataFolder => data;

    /// <summary>Every exception that the studio's log was told of.</summary>
    public ConcurrentQueue<string> Traces { get; } = new();

    /// <summary>How often an open page looks whether its person may stay [s].</summary>
    public int LookEverySeconds { get; init; } = 1;

    /// <summary>The code that each studio in this process printed at its start, by its address.</summary>
    internal static ConcurrentDictionary<string, string> Codes { get; } = new(StringComparer.Ordinal);

    /// <summary>A context for arranging and looking, past the pages.</summary>
    public StudioDb Open()
    {
        var db = Services.CreateScope().ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();
        db.WriteAs("test");
        return db;
    }

    public async ValueTask InitializeAsync()
    {
        var path = Tool.Need("chromium");
        UseKestrel(0);
        StartServer();
        Url = string.Create(CultureInfo.InvariantCulture, $"http://localhost:{ClientOptions.BaseAddress.Port}");
        Codes[Url] = Services.GetRequiredService<FirstStart>().Code;
        playwright = await Playwright.CreateAsync();
        // a test waits for what it needs; this ends one that hangs
        Assertions.SetDefaultExpectTimeout(HungMs);
        Chromium = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Args = ["--no-sandbox", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public override async ValueTask DisposeAsync()
    {
        if (Chromium is not null)
        {
            await Chromium.CloseAsync();
        }

        playwright?.Dispose();
        await base.DisposeAsync();
        try
        {
            Directory.Delete(data, recursive: true);
        }
        catch (IOException)
        {
            // a straggling write only leaves a temporary folder behind
        }
    }

    /// <summary>A fresh browser window; phone or desktop, light or dark.</summary>
    public async Task<IBrowserContext> WindowAsync(bool phone = false, bool dark = false)
    {
        var window = await Chromium.NewContextAsync(new()
        {
            BaseURL = Url,
            ViewportSize = phone ? new() { Width = 390, Height = 844 } : new() { Width = 1280, Height = 900 },
            IsMobile = phone,
            HasTouch = phone,
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            Locale = "en-GB",
            TimezoneId = "Europe/London",
        });
        window.SetDefaultTimeout(HungMs);
        return window;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("DataDir", data).UseSetting("Jobs:Storage", "InMemory").UseSetting("SignIn:LookEverySeconds", LookEverySeconds.ToString(CultureInfo.InvariantCulture));
        builder.ConfigureLogging(l => l.AddProvider(new TraceEar(Traces)));
        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(Clock).Configure<PasswordHasherOptions>(o => o.IterationCount = 1000));
    }
}

/// <summary>Keeps the exceptions that a log is told of.</summary>
internal sealed class TraceEar(ConcurrentQueue<string> traces) : ILoggerProvider, ILogger
{
    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (exception is not null && logLevel >= LogLevel.Information)
        {
            traces.Enqueue($"{logLevel}: {exception}");
        }
    }

    public void Dispose()
    {
    }
}

/// <summary>Steps that every browser test takes.</summary>
public static class PageSteps
{
    /// <summary>Goes to a page and waits until it answers: a click before the circuit is up is lost.</summary>
    public static async Task OpenAsync(this IPage page, string path)
    {
        await page.GotoAsync(path);
        await page.ReadyAsync();
    }

    public static Task ReadyAsync(this IPage page) =>
        Assertions.Expect(page.Locator("#ready[data-interactive=true]")).ToBeAttachedAsync();

    /// <summary>Waits until nothing on the page moves any more: its faces are loaded, its pictures drawn, what fades in has faded in.</summary>
    public static Task SettledAsync(this IPage page) => page.WaitForFunctionAsync(
        """
        () => document.fonts.status === "loaded"
          && [...document.images].every((i) => i.loading === "lazy" || !i.src || i.complete)
          && document.getAnimations().every((a) => a.playState !== "running" || a.effect?.getComputedTiming().iterations === Infinity)
        """,
        null,
        // looked at by a clock and not frame by frame: a page that is not in front draws no frames, and would be waited for without end
        new() { PollingInterval = 50 });

    public static async Task ShotAsync(this IPage page, string name, bool whole = true)
    {
        await page.SettledAsync();
        await page.ScreenshotAsync(new() { Path = Path.Combine(StudioInBrowser.Shots, name + ".png"), FullPage = whole });
    }

    /// <summary>Types the code that the terminal would have shown.</summary>
    public static async Task GiveCodeAsync(this IPage page)
    {
        await page.GetByLabel("Code from the terminal").FillAsync(StudioInBrowser.Codes[new Uri(page.Url).GetLeftPart(UriPartial.Authority)]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
    }

    /// <summary>Makes a studio of its own on a fresh database, signed in as its owner.</summary>
    public static async Task FirstStartAsync(this IPage page, string email, string password)
    {
        await page.GotoAsync("/");
        await page.GiveCodeAsync();
        await page.GetByLabel("Name of the studio").FillAsync("Ling & Larch");
        await page.GetByLabel("Your name").FillAsync("Wren");
        await page.GetByLabel("E-mail, to sign in with").FillAsync(email);
        await page.GetByLabel("Password, twelve characters or more").FillAsync(password);
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/London");
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the studio" }).ClickAsync();
        await page.ReadyAsync();
    }

    /// <summary>Sends the price at hand, with a reason where something of it is open: the catalogue's prices are invented, and pointed at.</summary>
    public static async Task SendPriceAsync(this IPage page)
    {
        await Assertions.Expect(page.Locator("#mark-sent")).ToBeVisibleAsync();
        if (await page.Locator("#send-reason").CountAsync() > 0)
        {
            await page.Locator("#send-reason").FillAsync("A first look for them, prices to follow");
            await page.Locator("#send-reason").BlurAsync();
        }

        await page.Locator("#mark-sent").ClickAsync();
        await Assertions.Expect(page.Locator("#state")).ToHaveTextAsync("sent");
    }
}
