using FeatureMatrix.Tests.Support;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>The small site in a folder, and one browser for all tests. Every page is watched: no console error, no request but to files.</summary>
public sealed class Site : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("site").FullName;
    private readonly List<string> _complaints = [];
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Console errors, page errors and requests to anything but files, so far.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>Where the site lies; a test may put another site into a folder of its own below it.</summary>
    public string Folder => _folder;

    public async ValueTask InitializeAsync()
    {
        SmallEdition.Write(SmallEdition.Site(SmallEdition.Plain()), _folder);
        var chromium = External.File(Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium", "chromium");
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = chromium,
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.CloseAsync();
        _playwright?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A page of the site.</summary>
    /// <param name="path">Relative to the site's folder, with an address state after a hash where wanted.</param>
    /// <param name="scripts">False to switch scripts off.</param>
    /// <param name="dark">True for a reader who prefers a dark scheme.</param>
    /// <param name="width">Width of the window in CSS pixels.</param>
    public Task<IPage> Open(string path, bool scripts = true, bool dark = false, int width = 1200)
    {
        var (file, hash) = path.IndexOf('#', StringComparison.Ordinal) is >= 0 and var at ? (path[..at], path[at..]) : (path, "");
        return Open(new Uri(new Uri(_folder + "/" + file).AbsoluteUri + hash), "file:", scripts, dark, width);
    }

    /// <summary>A page of any origin; requests to others are complained of.</summary>
    /// <param name="address">Its address.</param>
    /// <param name="origin">What the address of every request has to begin with.</param>
    /// <param name="scripts">False to switch scripts off.</param>
    /// <param name="dark">True for a reader who prefers a dark scheme.</param>
    /// <param name="width">Width of the window in CSS pixels.</param>
    public async Task<IPage> Open(Uri address, string origin, bool scripts = true, bool dark = false, int width = 1200)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            JavaScriptEnabled = scripts,
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ViewportSize = new() { Width = width, Height = 800 },
        });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(10_000);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                _complaints.Add($"{address}: {message.Text}");
        };
        page.PageError += (_, error) => _complaints.Add($"{address}: {error}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(origin, StringComparison.Ordinal))
                _complaints.Add($"{address} asks for {request.Url}");
        };
        await page.GotoAsync(address.AbsoluteUri);
        return page;
    }
}
