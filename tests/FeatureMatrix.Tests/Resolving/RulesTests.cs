using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>The worked examples of the rules document, each executed.</summary>
public sealed class RulesTests
{
    private const string Rules = "/src/FeatureMatrix/Resolving/RULES.md";

    public static TheoryData<string> Questions() => [.. WorkedExamples.In(Rules).Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Questions))]
    public void The_worked_example_comes_out_as_the_rule_says(string name)
    {
        var example = WorkedExamples.In(Rules).Single(example => example.Name == name);
        example.Check(Answer(example));
    }

    [Fact]
    public void Every_rule_has_a_worked_example()
    {
        var headings = WorkedExamples.In(Rules).Select(example => example.Name.Split(' ')[0]).Distinct();
        Assert.Equal(Enumerable.Range(1, 17).Select(number => $"R{number}"), headings);
    }

    private static string Answer(WorkedExample example)
    {
        var catalog = Worlds.Load(WorkedExamples.Base(Rules), example.World);
        if (example.Kind == "timing")
        {
            var parts = example.Question.Split(" on ");
            var finding = TimingRule.On(catalog.Titles.Single(title => title.Id == parts[0]), catalog.Rigs.Single(rig => rig.Id == parts[1])).Single();
            return TimingWording.Text(finding);
        }

        var verdict = ResolverQuestion.Ask(catalog, example.Question);
        return example.Kind switch
        {
            "label" => LabelWording.Label(verdict),
            "recommended" => verdict.Recommended is { } route ? Names.Of(route.Route) : "nothing",
            _ => throw new InvalidOperationException(example.Kind),
        };
    }
}
