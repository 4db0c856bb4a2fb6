using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Browser;

/// <summary>Takes pictures of pages of our own making, each a frame of 1920 by 1080 pixels for video. Its folder goes with it.</summary>
internal sealed class FrameStudio : IDisposable
{
    private static readonly string[] Sheets = ["style.css", "charts.css"];

    private readonly Chromium _chromium;
    private readonly Action<string> _tell;
    private readonly string _folder = Directory.CreateTempSubdirectory("featurematrix-frames-").FullName;

    /// <summary>Puts the site's sheets where pages find them.</summary>
    /// <param name="chromium">What draws.</param>
    /// <param name="site">All files of the site.</param>
    /// <param name="tell">Told which frame is drawn.</param>
    public FrameStudio(Chromium chromium, IReadOnlyList<OutputFile> site, Action<string> tell)
    {
        (_chromium, _tell) = (chromium, tell);
        foreach (var sheet in site.Where(file => Sheets.Contains(file.Path, StringComparer.Ordinal)))
            Put(sheet.Path, sheet.Bytes);
    }

    /// <summary>Puts a file beside the pages.</summary>
    public void Put(string name, ReadOnlySpan<byte> bytes) => File.WriteAllBytes(Path.Combine(_folder, name), bytes);

    /// <summary>One frame.</summary>
    /// <param name="name">Its name, without an ending.</param>
    /// <param name="title">The heading, as HTML.</param>
    /// <param name="style">Rules beside those of the site.</param>
    /// <param name="content">What stands below the heading, as HTML.</param>
    public OutputFile Draw(string name, string title, string style, string content)
    {
        _tell($"Drawing the frame of {name}.");
        var (page, target) = (Path.Combine(_folder, "frame.html"), Path.Combine(_folder, "frame.png"));
        File.WriteAllText(page, Page(title, style, content));
        return new OutputFile($"frames/{name}.png", _chromium.Make(
            _folder, page, target, name, $"--screenshot={target}", "--window-size=1920,1080", "--hide-scrollbars", "--force-device-scale-factor=1"));
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string Page(string title, string style, string content) =>
        $$"""
        <!DOCTYPE html>
        <html lang="en">
        <head><meta charset="utf-8"><title>{{title}}</title>{{string.Concat(Sheets.Select(sheet => $"<link rel=\"stylesheet\" href=\"{sheet}\">"))}}
        <style>
        html, body { width: 1920px; height: 1080px; max-width: none; margin: 0; padding: 0; overflow: hidden; }
        body { display: flex; flex-direction: column; align-items: center; justify-content: center; gap: 40px; }
        h1 { width: 1760px; margin: 0; font-size: 44px; }
        {{style}}
        </style></head>
        <body><h1>{{title}}</h1>{{content}}</body>
        </html>
        """;
}
