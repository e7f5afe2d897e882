using Microsoft.Playwright;
using Cookie = System.Net.Cookie;

[assembly: AssemblyFixture(typeof(CutShop.Web.Tests.HeadlessBrowser))]

namespace CutShop.Web.Tests;

/// <summary>One Chromium without a window for all browser tests; each test opens a context of its own, which is closed with its shop.</summary>
public sealed class HeadlessBrowser : IAsyncLifetime
{
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The whole browser, which tells its pages when the network is back; the shell does not always.</summary>
    private Task<IBrowser>? _whole;

    public async ValueTask InitializeAsync()
    {
        // A busy machine takes longer than the usual five seconds; what is there at once is waited for no longer.
        Assertions.SetDefaultExpectTimeout(30_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await LaunchAsync("/usr/bin/chromium-headless-shell");
    }

    private Task<IBrowser> LaunchAsync(string program) => _playwright!.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = Flags });

    /// <summary>A new page on a shop, at a screen's size, signed in as the person of a role.</summary>
    public async Task<IPage> OpenAsync(RunningShop shop, int width = 1280, int height = 800, bool touch = false, Role role = Role.Owner, bool worker = false)
    {
        var page = await OpenAsStrangerAsync(shop, width, height, touch, worker);
        foreach (Cookie cookie in (await shop.CookiesOfAsync(role)).GetCookies(shop.Address))
            await page.Context.AddCookiesAsync([new() { Name = cookie.Name, Value = cookie.Value, Url = shop.Address.ToString(), HttpOnly = cookie.HttpOnly }]);
        return page;
    }

    /// <summary>A new page on a shop where nobody is signed in; the worker that answers without a network runs only where it is asked for.</summary>
    public async Task<IPage> OpenAsStrangerAsync(RunningShop shop, int width = 1280, int height = 800, bool touch = false, bool worker = false)
    {
        var browser = worker ? await (_whole ??= LaunchAsync("/usr/bin/chromium")) : _browser!;
        var context = await browser.NewContextAsync(new()
        {
            BaseURL = shop.Address.ToString(),
            ViewportSize = new() { Width = width, Height = height },
            HasTouch = touch,
            ServiceWorkers = worker ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
        });
        shop.CloseFirst(() => context.CloseAsync());
        return await context.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        if (_whole is not null)
            await (await _whole).DisposeAsync();
        _playwright?.Dispose();
    }
}
