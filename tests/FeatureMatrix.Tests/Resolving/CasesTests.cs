using FeatureMatrix.Reports;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// The cases of DESIGN section 4, each with the whole explanation. Cases 10 and 19 are not about one cell; they stand in
/// TimingTests and in the tests of comparisons.
/// </summary>
public sealed class CasesTests
{
    public static TheoryData<string> Questions() => [.. WorkedExamples.In("Resolving/Cases.md").Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Questions))]
    public void The_explanation_is_word_for_word_the_recorded_one(string name)
    {
        var example = WorkedExamples.In("Resolving/Cases.md").Single(example => example.Name == name);
        example.Check(Answer(example));
    }

    private static string Answer(WorkedExample example) =>
        ExplanationBuilder.Explain(ResolverQuestion.Ask(Worlds.Load(example.World), example.Question)).ToText();
}
