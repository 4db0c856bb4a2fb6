using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Editions;

/// <summary>The statements of a collection that a verdict draws on, whichever way they speak.</summary>
internal static class VerdictStatements
{
    /// <summary>All of them, each once, in a fixed order.</summary>
    public static IReadOnlyList<Statement> Of(Verdict verdict) =>
    [
        .. Memory(verdict.Card)
            .Concat(verdict.Setups.Where(setup => setup.Install != Install.Unrecorded).Select(Of))
            .Concat(verdict.Title.Renderers.SelectMany(Of))
            .Concat(verdict.Routes.Select(finding => finding.Route.Wrapper).OfType<WrapperVersion>().Select(Of))
            .Concat(verdict.Routes.SelectMany(finding => finding.Form.Answers).SelectMany(WithInferred).SelectMany(Of))
            .Concat(verdict.Routes.SelectMany(finding => finding.Form.Observations).Select(Of))
            .Distinct()
            .OrderBy(statement => statement.About, StringComparer.Ordinal).ThenBy(statement => statement.Says, StringComparer.Ordinal),
    ];

    private static IEnumerable<Statement> Memory(Card card) => card.Memory switch
    {
        VideoMemory.Unified memory => [new Statement($"{card.Name}: memory", Names.Mebibytes(memory.Bytes))],
        VideoMemory.Split memory =>
            [new Statement($"{card.Name}: memory", $"{Names.Mebibytes(memory.FrameBytes)} for the picture, {Names.Mebibytes(memory.TextureBytes)} for textures")],
        _ => [],
    };

    private static Statement Of(Setup setup) => new(
        $"{Names.Of(setup)} on {setup.Card.Name}:", $"{(setup.Install == Install.Forced ? "can be forced" : "listed")} ({FactWording.Evidence(setup.Driver.Evidence)})");

    private static IEnumerable<Statement> Of(Renderer renderer)
    {
        var name = $"{renderer.Title.Name}, {Names.Of(renderer)}";
        yield return new Statement($"{name}:", $"a path on {Names.List([.. renderer.Oses.Select(os => os.Name)])}");
        foreach (var need in renderer.Needs)
            yield return new Statement($"{name} without {Names.Of(need.Choices)}:", $"{Names.Of(need.Strength)} ({FactWording.Evidence(need.Evidence)})");
        foreach (var defect in renderer.Defects)
            yield return new Statement($"{name}, known defect:", $"{defect.Effect} ({FactWording.Evidence(defect.Evidence)})");
    }

    private static Statement Of(WrapperVersion wrapper) => new($"{Names.Of(wrapper)}:", $"on record ({FactWording.Evidence(wrapper.Evidence)})");

    private static IEnumerable<Answer> WithInferred(Answer answer) => answer.Inferred is { } inferred ? [answer, inferred] : [answer];

    private static IEnumerable<Statement> Of(Answer answer) => answer.Facts.Concat(answer.Losing).Select(Of).Concat(answer.Observations.Select(Of));

    private static Statement Of(SupplyFact fact) => new($"{FactWording.About(fact)}:", $"{Names.Of(fact.Support)} ({FactWording.Evidence(fact.Evidence)})");

    private static Statement Of(Observation seen) => new($"{seen.Renderer.Title.Name}, seen:", FactWording.Observation(seen));
}
