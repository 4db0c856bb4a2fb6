using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace FeatureMatrix.Rendering.Site;

/// <summary>Notes in Markdown as HTML: raw HTML stays text, and links lead to http, https or mailto addresses only.</summary>
public static class MarkdownText
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().DisableHtml().Build();
    private static readonly string[] Schemes = ["http:", "https:", "mailto:"];

    /// <summary>The HTML of a note; empty for an empty one.</summary>
    public static string ToHtml(string markdown)
    {
        if (markdown.Length == 0)
            return "";
        if (Parse(markdown) is not { } document)
            return $"<p>{System.Net.WebUtility.HtmlEncode(markdown)}</p>\n";
        foreach (var link in document.Descendants<LinkInline>())
        {
            if (link.IsImage || !IsSane(link.Url))
                Disarm(link);
        }

        foreach (var link in document.Descendants<AutolinkInline>().Where(link => !link.IsEmail && !IsSane(link.Url)).ToList())
            link.ReplaceBy(new LiteralInline(link.Url));

        // The page has its own first-level heading and sections; a note's headings stand below them.
        foreach (var heading in document.Descendants<HeadingBlock>())
            heading.Level = Math.Min(6, heading.Level + 2);
        return document.ToHtml(Pipeline);
    }

    /// <summary>Null for text that is nested deeper than the library goes, which nobody wrote as markup.</summary>
    private static MarkdownDocument? Parse(string markdown)
    {
        try
        {
            return Markdown.Parse(markdown, Pipeline);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static bool IsSane(string? url) => url is not null && Schemes.Any(scheme => url.StartsWith(scheme, StringComparison.OrdinalIgnoreCase));

    // Pictures from elsewhere would be requests to third parties: both they and odd links become their own text.
    private static void Disarm(LinkInline link)
    {
        link.IsImage = false;
        link.ReplaceBy(new ContainerInline(), copyChildren: true);
    }
}
