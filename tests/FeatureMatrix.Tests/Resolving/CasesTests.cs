using System.Text.RegularExpressions;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// The cases of DESIGN section 4, each with the whole explanation. Cases 10 and 19 are not about one cell; they stand in
/// TimingTests and in the tests of comparisons.
/// </summary>
public sealed partial class CasesTests
{
    public static TheoryData<string> Questions() => [.. WorkedExamples.In("Resolving/Cases.md").Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Questions))]
    public void The_explanation_is_word_for_word_the_recorded_one(string name)
    {
        var example = WorkedExamples.In("Resolving/Cases.md").Single(example => example.Name == name);
        example.Check(Answer(example));
    }

    private static string Answer(WorkedExample example)
    {
        var catalog = Worlds.Load(example.World);
        var question = QuestionForm().Match(example.Question);
        Assert.True(question.Success, $"cannot read the question '{example.Question}'");
        var title = catalog.Titles.Single(one => one.Id == question.Groups["title"].Value);
        var card = catalog.Cards.Single(one => one.Id == question.Groups["card"].Value);
        var library = catalog.Libraries.SingleOrDefault(one => one.Id == question.Groups["library"].Value);
        var resolver = new Resolver(catalog);
        var terms = library is null ? Terms.Default : Terms.Of(library, library.Entries.Single(entry => entry.Title == title));
        IReadOnlyList<Setup> setups = resolver.SetupsOf(card);
        if (question.Groups["driver"].Value is { Length: > 0 } driver)
            setups = setups.Where(setup => setup.Driver.Id == driver).ToList();
        var verdict = question.Groups["os"].Value is { Length: > 0 } os
            ? resolver.Resolve(title, card, catalog.Oses.Single(one => one.Id == os), terms)
            : resolver.Resolve(title, card, setups, terms);
        return ExplanationBuilder.Explain(verdict).ToText();
    }

    [GeneratedRegex(@"^(?<title>\S+) on (?<card>\S+)( with (?<driver>\S+))?( under (?<os>\S+))?( for (?<library>\S+))?$", RegexOptions.None | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex QuestionForm();
}
