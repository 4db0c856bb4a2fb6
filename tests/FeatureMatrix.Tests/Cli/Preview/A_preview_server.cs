using System.Net.Sockets;
using System.Text;
using FeatureMatrix.Cli.Preview;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Tests.Cli.Preview;

/// <summary>The preview's server against requests of all kinds, over real connections.</summary>
public sealed class A_preview_server : IAsyncLifetime
{
    private static readonly OutputFile[] Files =
    [
        OutputFile.Text("index.html", "<!doctype html><html><body><p>Home</p></body></html>"), OutputFile.Text("cards/index.html", "<body>Cards</body>"),
        OutputFile.Text("style.css", "p { color: red }"), new OutputFile("pictures/a.png", [1, 2, 3]),
    ];

    private readonly CancellationTokenSource _stop = new();
    private readonly PreviewServer _server;
    private readonly PreviewFeed _feed = new();
    private Task _running = Task.CompletedTask;

    public A_preview_server()
    {
        _feed.Show(Showing(Files));
        _server = new PreviewServer(_feed, 0, TimeSpan.FromSeconds(30));
    }

    public ValueTask InitializeAsync()
    {
        _running = _server.Run(_stop.Token);
        return ValueTask.CompletedTask;
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running;
        _server.Dispose();
        _stop.Dispose();
    }

    [Theory]
    [InlineData("/", "200 OK", "text/html; charset=utf-8", "<!doctype html><html><body><p>Home</p><script src=\"/preview.js\" defer></script>\n</body></html>")]
    [InlineData("/cards/", "200 OK", "text/html; charset=utf-8", "<body>Cards<script src=\"/preview.js\" defer></script>\n</body>")]
    [InlineData("/cards/index.html?x=1", "200 OK", "text/html; charset=utf-8", "<body>Cards<script src=\"/preview.js\" defer></script>\n</body>")]
    [InlineData("/style.css", "200 OK", "text/css; charset=utf-8", "p { color: red }")]
    [InlineData("/pictures/a.png", "200 OK", "image/png", "\u0001\u0002\u0003")]
    [InlineData("/none.html", "404 Not Found", "text/html; charset=utf-8", "<!doctype html><html lang=\"en\"><title>Preview</title><body><p>There is no such page now.</p><script src=\"/preview.js\" defer></script>\n</body></html>\n")]
    [InlineData("/../index.html", "404 Not Found", "text/html; charset=utf-8", "<!doctype html><html lang=\"en\"><title>Preview</title><body><p>There is no such page now.</p><script src=\"/preview.js\" defer></script>\n</body></html>\n")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd", "404 Not Found", "text/plain; charset=utf-8", "404 Not Found\n")]
    [InlineData("//etc/passwd", "404 Not Found", "text/plain; charset=utf-8", "404 Not Found\n")]
    [InlineData("/cards\\..\\index.html", "404 Not Found", "text/html; charset=utf-8", "<!doctype html><html lang=\"en\"><title>Preview</title><body><p>There is no such page now.</p><script src=\"/preview.js\" defer></script>\n</body></html>\n")]
    [InlineData("/%zz%", "404 Not Found", "text/plain; charset=utf-8", "404 Not Found\n")]
    public async Task Serves_the_files_of_the_build_and_nothing_else(string target, string status, string type, string body)
    {
        var (head, found) = await Ask($"GET {target} HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        Assert.StartsWith($"HTTP/1.1 {status}\r\nContent-Type: {type}\r\nContent-Length: {Encoding.Latin1.GetByteCount(body)}\r\n", head, StringComparison.Ordinal);
        Assert.Equal(body, found);
    }

    [Theory]
    [InlineData("example.org", "421 Misdirected Request")]
    [InlineData("127.0.0.1", "421 Misdirected Request")]
    [InlineData("127.0.0.1:PORT\r\nHost: 127.0.0.1:PORT", "421 Misdirected Request")]
    [InlineData("example.org:PORT", "421 Misdirected Request")]
    [InlineData("localhost:PORT", "200 OK")]
    [InlineData("127.0.0.1:PORT", "200 OK")]
    public async Task Answers_to_its_own_name_only(string host, string status)
    {
        var (head, _) = await Ask($"GET / HTTP/1.1\r\nHost: {host.Replace("PORT", $"{_server.Port}", StringComparison.Ordinal)}\r\n\r\n");
        Assert.StartsWith($"HTTP/1.1 {status}\r\n", head, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    [InlineData("OPTIONS")]
    [InlineData("get")]
    public async Task Refuses_to_do_anything_but_show(string method)
    {
        var (head, _) = await Ask($"{method} / HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        Assert.StartsWith("HTTP/1.1 405 Method Not Allowed\r\n", head, StringComparison.Ordinal);
        Assert.Contains("\r\nAllow: GET, HEAD\r\n", head, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gives_a_head_without_the_body()
    {
        var (head, body) = await Ask($"HEAD /style.css HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        Assert.Contains("\r\nContent-Length: 16\r\n", head, StringComparison.Ordinal);
        Assert.Equal("", body);
    }

    [Theory]
    [InlineData("\r\n\r\n", "400 Bad Request")]
    [InlineData("GET\r\n\r\n", "400 Bad Request")]
    [InlineData("GET / HTTP/9.9 more\r\n\r\n", "400 Bad Request")]
    [InlineData("\u0016\u0003\u0001\u0000\u00ff garbage\r\n\r\n", "400 Bad Request")]
    [InlineData("GET http://127.0.0.1:PORT/ HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n", "400 Bad Request")]
    public async Task Survives_requests_that_are_none(string request, string status)
    {
        var (head, _) = await Ask(request.Replace("PORT", $"{_server.Port}", StringComparison.Ordinal));
        Assert.StartsWith($"HTTP/1.1 {status}\r\n", head, StringComparison.Ordinal);
        await Serves();
    }

    [Fact]
    public async Task Survives_a_head_without_an_end()
    {
        var (head, _) = await Ask("GET / HTTP/1.1\r\nX: " + new string('x', 16 * 1024));
        Assert.StartsWith("HTTP/1.1 431 ", head, StringComparison.Ordinal);
        await Serves();
    }

    [Fact]
    public async Task Serves_others_while_slow_clients_say_nothing()
    {
        var slow = new List<TcpClient>();
        for (var i = 0; i < 20; i++)
        {
            var client = new TcpClient();
            await client.ConnectAsync("127.0.0.1", _server.Port, TestContext.Current.CancellationToken);
            await client.GetStream().WriteAsync("GET / HT"u8.ToArray(), TestContext.Current.CancellationToken);
            slow.Add(client);
        }

        await Serves();
        slow.ForEach(client => client.Dispose());
        await Serves();
    }

    [Fact]
    public async Task Tells_a_page_of_its_own_change_and_of_faults()
    {
        var before = await State("/cards/index.html");
        _feed.Show(Showing([OutputFile.Text("index.html", "new"), .. Files.Skip(1)]));
        Assert.Equal(before, await State("/cards/index.html"));
        Assert.NotEqual(before, await State("/"));
        _feed.Show(Showing([.. Files.Where(file => file.Path != "style.css"), OutputFile.Text("style.css", "p {}")]));
        Assert.NotEqual(before, await State("/cards/index.html"));
        _feed.Show(Showing(Files).With(["chips.yaml(2,5): error FM001: \"odd\" </script>"]));
        var with = await State("/cards/index.html");
        Assert.Equal(
            before[..before.IndexOf("\"mark\"", StringComparison.Ordinal)].Replace("[]", "[\"chips.yaml(2,5): error FM001: \\u0022odd\\u0022 \\u003C/script\\u003E\"]", StringComparison.Ordinal),
            with[..with.IndexOf("\"mark\"", StringComparison.Ordinal)]);
        Assert.NotEqual(Mark(before), Mark(with));
    }

    [Fact]
    public async Task Holds_its_answer_until_there_is_something_new()
    {
        var before = await State("/cards/index.html");
        var waiting = State("/cards/index.html", Mark(before));
        await Serves();
        Assert.False(waiting.IsCompleted);
        _feed.Show(Showing([.. Files, OutputFile.Text("cards/index.html", "<body>No cards</body>")]));
        Assert.NotEqual(before, await waiting);
        Assert.NotEqual(before, await State("/cards/index.html", Mark(before)));
    }

    [Fact]
    public async Task Says_where_nothing_was_built_yet()
    {
        _feed.Show(PreviewState.Nothing.With(["a fault"]));
        var (head, body) = await Ask($"GET /any.html HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        Assert.StartsWith("HTTP/1.1 503 ", head, StringComparison.Ordinal);
        Assert.Contains("No good build yet.", body, StringComparison.Ordinal);
    }

    private async Task Serves()
    {
        var (head, _) = await Ask($"GET /style.css HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        Assert.StartsWith("HTTP/1.1 200 OK\r\n", head, StringComparison.Ordinal);
    }

    private static PreviewState Showing(IReadOnlyList<OutputFile> files) => new(
        path => files.LastOrDefault(file => file.Path == path), files.Where(file => file.Path.EndsWith(".css", StringComparison.Ordinal)), [], PreviewState.Nothing);

    private static string Mark(string state) => state.Split("\"mark\":\"")[1].Split('"')[0];

    private async Task<string> State(string page, string seen = "")
    {
        var (_, body) = await Ask($"GET /preview-state.js?page={Uri.EscapeDataString(page)}&seen={seen}&at=1 HTTP/1.1\r\nHost: 127.0.0.1:{_server.Port}\r\n\r\n");
        return body;
    }

    private async Task<(string Head, string Body)> Ask(string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", _server.Port, TestContext.Current.CancellationToken);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(request), TestContext.Current.CancellationToken);
        client.Client.Shutdown(SocketShutdown.Send);
        using var all = new MemoryStream();
        await stream.CopyToAsync(all, TestContext.Current.CancellationToken);
        var text = Encoding.Latin1.GetString(all.ToArray());
        var end = text.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        return (text[..(end + 2)], text[(end + 4)..]);
    }
}
