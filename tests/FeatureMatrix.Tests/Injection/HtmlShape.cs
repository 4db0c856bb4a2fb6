using System.Text;

namespace FeatureMatrix.Tests.Injection;

/// <summary>
/// The tags of a page with the names of their attributes, by the rules of the HTML tokenizer that matter here: a tag begins with
/// <c>&lt;</c> and a letter, slash or exclamation mark; a quoted value ends at its quote; a comment at its end mark.
/// </summary>
internal static class HtmlShape
{
    public static string Of(string html)
    {
        var shape = new StringBuilder();
        for (var at = html.IndexOf('<', StringComparison.Ordinal); at >= 0; at = html.IndexOf('<', at))
        {
            if (html.AsSpan(at).StartsWith("<!--"))
            {
                at = html.IndexOf("-->", at, StringComparison.Ordinal) + 3;
                shape.Append("<!-->");
                continue;
            }

            if (at + 1 < html.Length && (char.IsAsciiLetter(html[at + 1]) || html[at + 1] is '/' or '!'))
                at = Tag(html, at, shape);
            else
                at++;
        }

        return shape.ToString();
    }

    private static int Tag(string html, int at, StringBuilder shape)
    {
        while (at < html.Length && html[at] != '>')
        {
            if (html[at] is '"' or '\'')
            {
                var end = html.IndexOf(html[at], at + 1);
                shape.Append("\"\"");
                at = end < 0 ? html.Length : end + 1;
            }
            else
                shape.Append(html[at++]);
        }

        shape.Append('>');
        return Math.Min(at + 1, html.Length);
    }
}
