using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using FeatureMatrix.Tests.Cli;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>The preview as its user sees it: the program runs, the page stands in a browser, files change.</summary>
public sealed class The_preview(Site site) : IClassFixture<Site>, IAsyncLifetime
{
    private readonly string _collection = Directory.CreateTempSubdirectory("preview").FullName;
    private readonly int _port = FreePort();
    private Process? _program;

    private Uri Address => new($"http://127.0.0.1:{_port}/titles/low-mist.html");

    public async ValueTask InitializeAsync()
    {
        Write(OneBoard.World);
        _program = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "featmatrix.dll"), "preview", _collection, "--port", $"{_port}"])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        Assert.Contains("Open http://127.0.0.1:", await _program.StandardError.ReadLineAsync(), StringComparison.Ordinal);
        _ = _program.StandardError.ReadToEndAsync();
        _ = _program.StandardOutput.ReadToEndAsync();
        using var client = new HttpClient();
        for (var tries = 0; tries < 600 && (await client.GetAsync(Address)).StatusCode == HttpStatusCode.ServiceUnavailable; tries++)
            await Task.Delay(100);
    }

    public async ValueTask DisposeAsync()
    {
        _program!.Kill();
        await _program.WaitForExitAsync();
        _program.Dispose();
        Directory.Delete(_collection, recursive: true);
    }

    [Fact]
    public async Task Loads_the_page_again_when_a_file_changes_and_shows_faults_over_the_last_good_one()
    {
        var page = await site.Open(Address, $"http://127.0.0.1:{_port}/");
        var heading = page.Locator("h1");
        var faults = page.Locator("pre[role=alert]");
        var patience = new LocatorAssertionsToHaveTextOptions { Timeout = 60_000 };
        await Assertions.Expect(heading).ToHaveTextAsync("Low Mist", patience);
        await Assertions.Expect(faults).ToHaveCountAsync(0);

        Write(OneBoard.World.Replace("Low Mist", "High Water", StringComparison.Ordinal));
        await Assertions.Expect(heading).ToHaveTextAsync("High Water", patience);

        Write(OneBoard.World.Replace("[fog-table]", "[fog-tabel]", StringComparison.Ordinal));
        await Assertions.Expect(faults).ToContainTextAsync("did you mean 'fog-table'?", new() { Timeout = 60_000 });
        await Assertions.Expect(faults).ToContainTextAsync("collection.yaml(6,");
        await Assertions.Expect(heading).ToHaveTextAsync("High Water");

        Write(OneBoard.World);
        await Assertions.Expect(heading).ToHaveTextAsync("Low Mist", patience);
        await Assertions.Expect(faults).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints.Select(complaint => complaint.Split('\n')[0]));
    }

    // At once, as editors do that write beside a file and then put it in its place: half a file would be a change of its own.
    private void Write(string world)
    {
        var beside = Path.Combine(_collection, "collection.new");
        File.WriteAllText(beside, world);
        File.Move(beside, Path.Combine(_collection, "collection.yaml"), overwrite: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
