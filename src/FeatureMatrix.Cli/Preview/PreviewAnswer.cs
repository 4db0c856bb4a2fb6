using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace FeatureMatrix.Cli.Preview;

/// <summary>One answer of the preview's server.</summary>
/// <param name="Status">The status line without the version, such as <c>200 OK</c>.</param>
/// <param name="Type">The content type.</param>
/// <param name="Body">What follows the head.</param>
/// <param name="IsHeadOnly">True where only the head was asked for.</param>
/// <param name="IsKnown">True where it tells a page what the page said it knew.</param>
internal sealed record PreviewAnswer(string Status, string Type, byte[] Body, bool IsHeadOnly, bool IsKnown = false)
{
    private const string Text = "text/plain; charset=utf-8";

    /// <summary>
    /// Asks what there is to see, and is answered when that is something new; shows faults over the page; loads the page again when it changed.
    /// </summary>
    private const string Script =
        """
        "use strict";
        let tag = null;
        let seen = "";
        let box = null;
        function featureMatrixPreview(state) {
          if (tag !== null && state.tag !== tag) location.reload();
          tag = state.tag;
          seen = state.mark;
          if (state.faults.length === 0) {
            box?.remove();
            box = null;
            return;
          }
          if (!box) {
            box = document.createElement("pre");
            box.setAttribute("role", "alert");
            Object.assign(box.style, { background: "#fff4ec", border: "4px solid #b84f00", bottom: "0", color: "#1b2330", left: "0", margin: "0", maxHeight: "60vh", overflow: "auto", padding: "12px", position: "fixed", right: "0", whiteSpace: "pre-wrap", zIndex: "99" });
            document.body.append(box);
          }
          const text = ["The last change has faults; below is the last good build.", ...state.faults].join("\n");
          if (box.textContent !== text) box.textContent = text;
        }
        function ask() {
          const script = document.createElement("script");
          script.src = `/preview-state.js?page=${encodeURIComponent(location.pathname)}&seen=${seen}&at=${Date.now()}`;
          script.addEventListener("load", () => { script.remove(); setTimeout(ask, 20); });
          script.addEventListener("error", () => { script.remove(); setTimeout(ask, 1000); });
          document.head.append(script);
        }
        ask();

        """;

    /// <summary>The answer to a request.</summary>
    /// <param name="head">The request's head; null where it was too long.</param>
    /// <param name="port">The port it came to.</param>
    /// <param name="state">What there is to see.</param>
    public static PreviewAnswer To(string? head, int port, PreviewState state)
    {
        if (head is null)
            return Refusal("431 Request Header Fields Too Large");
        var lines = head.Split("\r\n");
        var words = lines[0].Split(' ');
        if (!head.Contains("\r\n\r\n", StringComparison.Ordinal) || words.Length != 3 || !words[2].StartsWith("HTTP/1.", StringComparison.Ordinal))
            return Refusal("400 Bad Request");
        var hosts = lines.Skip(1).Where(line => line.StartsWith("Host:", StringComparison.OrdinalIgnoreCase)).Select(line => line[5..].Trim()).ToList();
        var own = port.ToString(CultureInfo.InvariantCulture);
        if (hosts.Count != 1 || (hosts[0] != $"127.0.0.1:{own}" && hosts[0] != $"localhost:{own}"))
            return Refusal("421 Misdirected Request");
        if (words[0] is not ("GET" or "HEAD"))
            return Refusal("405 Method Not Allowed");
        var (path, query) = words[1].IndexOf('?', StringComparison.Ordinal) is >= 0 and var at ? (words[1][..at], words[1][(at + 1)..]) : (words[1], "");
        if (!path.StartsWith('/'))
            return Refusal("400 Bad Request");
        return Page(NameOf(path), query, state) with { IsHeadOnly = words[0] == "HEAD" };
    }

    /// <summary>The answer as it goes over the wire.</summary>
    public byte[] ToBytes()
    {
        var allow = Status.StartsWith("405", StringComparison.Ordinal) ? "Allow: GET, HEAD\r\n" : "";
        var head = Encoding.ASCII.GetBytes(
            $"HTTP/1.1 {Status}\r\nContent-Type: {Type}\r\nContent-Length: {Body.Length.ToString(CultureInfo.InvariantCulture)}\r\n{allow}"
            + "Cache-Control: no-store\r\nX-Content-Type-Options: nosniff\r\nCross-Origin-Resource-Policy: same-origin\r\nContent-Security-Policy: frame-ancestors 'self'\r\nConnection: close\r\n\r\n");
        return IsHeadOnly ? head : [.. head, .. Body];
    }

    private static PreviewAnswer Page(string name, string query, PreviewState state)
    {
        if (name == "preview.js")
            return new PreviewAnswer("200 OK", TypeOf(name), Encoding.UTF8.GetBytes(Script), false);
        if (name == "preview-state.js")
        {
            var page = NameOf(Uri.UnescapeDataString(Asked(query, "page=")));
            var (tag, faults) = (state.TagOf(page), state.FaultsOf(page));
            var mark = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', [tag, .. faults]))).AsSpan(0, 8));
            var told = JsonSerializer.Serialize(new { tag, faults, mark });
            return new PreviewAnswer("200 OK", TypeOf(name), Encoding.UTF8.GetBytes($"featureMatrixPreview({told});\n"), false, IsKnown: Asked(query, "seen=") == mark);
        }

        if (state.Find(name) is { } file)
            return new PreviewAnswer("200 OK", TypeOf(name), name.EndsWith(".html", StringComparison.Ordinal) ? WithScript(file.Bytes) : file.Bytes, false);
        if (state.IsNothing)
            return Waiting("503 Service Unavailable", "No good build yet.");
        return name.EndsWith(".html", StringComparison.Ordinal) ? Waiting("404 Not Found", "There is no such page now.") : Refusal("404 Not Found");
    }

    /// <summary>A page in place of one that is not there; it follows changes as all do, for an editor may empty a file before it fills it again.</summary>
    private static PreviewAnswer Waiting(string status, string text) => new(
        status, TypeOf("x.html"), WithScript(Encoding.UTF8.GetBytes($"<!doctype html><html lang=\"en\"><title>Preview</title><body><p>{text}</p></body></html>\n")), false);

    private static string Asked(string query, string key) => query.Split('&').FirstOrDefault(part => part.StartsWith(key, StringComparison.Ordinal), key)[key.Length..];

    /// <summary>The file that a path means; empty for one that cannot mean any.</summary>
    private static string NameOf(string path)
    {
        var name = Uri.UnescapeDataString(path).TrimStart('/');
        return name.Length == 0 || name.EndsWith('/') ? name + "index.html" : name;
    }

    private static byte[] WithScript(byte[] page)
    {
        var text = Encoding.UTF8.GetString(page);
        var end = text.LastIndexOf("</body>", StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(end < 0 ? text : text.Insert(end, "<script src=\"/preview.js\" defer></script>\n"));
    }

    private static PreviewAnswer Refusal(string status) => new(status, Text, Encoding.UTF8.GetBytes(status + "\n"), false);

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".png" => "image/png",
        ".jpg" => "image/jpeg",
        _ => "application/octet-stream",
    };
}
