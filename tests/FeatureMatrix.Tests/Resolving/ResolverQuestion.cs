using System.Text.RegularExpressions;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Questions as the worked examples write them: <c>title on card with driver under system for library</c>.</summary>
internal static partial class ResolverQuestion
{
    public static Verdict Ask(Catalog catalog, string question)
    {
        var match = Form().Match(question);
        Assert.True(match.Success, $"cannot read the question '{question}'");
        var title = catalog.Titles.Single(one => one.Id == match.Groups["title"].Value);
        var card = catalog.Cards.Single(one => one.Id == match.Groups["card"].Value);
        var library = catalog.Libraries.SingleOrDefault(one => one.Id == match.Groups["library"].Value);
        var terms = library is null ? Terms.Default : Terms.Of(library, library.Entries.Single(entry => entry.Title == title));
        var resolver = new Resolver(catalog);
        if (match.Groups["os"].Value is { Length: > 0 } os)
            return resolver.Resolve(title, card, catalog.Oses.Single(one => one.Id == os), terms);
        var driver = match.Groups["driver"].Value;
        return driver.Length == 0
            ? resolver.Resolve(title, card, terms)
            : resolver.Resolve(title, resolver.SetupsOf(card).Single(setup => setup.Driver.Id == driver), terms);
    }

    [GeneratedRegex(@"^(?<title>\S+) on (?<card>\S+)( with (?<driver>\S+))?( under (?<os>\S+))?( for (?<library>\S+))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Form();
}
