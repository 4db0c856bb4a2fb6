using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Asking;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>
/// Twelve titles in a chain, each with eight cosmetic needs of which it shares four with the next: 44 shared unknowns on the one card, while the
/// other is known to have none of it. What is not walked has to stay sound.
/// </summary>
public sealed class Libraries_that_share_too_much
{
    private const int Titles = 12;
    private const int NeedsEach = 8;
    private const int NewEach = 4;
    private static readonly IReadOnlyList<string> Features = [.. Enumerable.Range(0, NeedsEach + ((Titles - 1) * NewEach)).Select(number => $"flag-{number:00}")];

    private readonly CardComparison _comparison;

    public Libraries_that_share_too_much()
    {
        var catalog = CollectionLoader.Load(
            [new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("vocabulary/flags.yaml", Flags()), new SourceText("world.yaml", World())]).Catalog!;
        _comparison = new Weighing(new Decisions(catalog, null)).Compare(catalog.Cards.Single(card => card.Id == "alder-16"), catalog.Cards.Single(card => card.Id == "birch-16"));
    }

    [Fact]
    public void Are_given_bounds_that_hold_every_completion()
    {
        Assert.False(_comparison.IsExact);
        Assert.Equal(Titles, _comparison.Groups.Single(group => !group.IsExact).Stakes.Count);
        // A cosmetic loss leaves 0.8 of what lies above one severe loss, which leaves half.
        var lost = 0.5m + (0.5m * (decimal)Math.Pow(0.8, NeedsEach));
        Assert.Equal((0m, decimal.Round(Titles * (1 - lost), 9)), (_comparison.Difference.Low, decimal.Round(_comparison.Difference.High, 9)));
        Assert.Equal((Winner.Undecided, Dominance.FirstPerhaps), (_comparison.Winner, _comparison.Dominance));
    }

    [Fact]
    public void Are_asked_about_where_most_titles_hang_on_the_answer_and_the_rest_is_counted()
    {
        var next = NextTest.Of(_comparison);
        Assert.False(next.IsExact);
        Assert.Equal(
            Features.Skip(NewEach).Take(NextTest.MostWeighed),
            next.Proposals.Select(proposal => ((UnknownFact.Supply)proposal.Unknown).Capability.Feature.Id).Order(StringComparer.Ordinal));
        Assert.Equal(Features.Count - NextTest.MostWeighed, next.LeftOut);
    }

    private static string Flags() =>
        $$"""
        features:
          {{string.Join("\n  ", Features.Select(id => $"{id}: {{name: {id}, family: fog, meaning: A flag, missing: Nothing, source: manual}}"))}}
        """;

    private static string World() =>
        $$"""
        chips:
          alder: {name: Alder, source: manual}
          birch: {name: Birch, source: manual}
        cards:
          {{CardOf("alder")}}
          {{CardOf("birch")}}
        drivers:
          {{DriverOf("alder")}}
          {{DriverOf("birch")}}
        titles:
          {{string.Join("\n  ", Enumerable.Range(0, Titles).Select(TitleOf))}}
        facts: [{{string.Join(", ", Features.Select(id => $"{{chip: birch, {id}: no, source: manual}}"))}}]
        """;

    private static string CardOf(string chip) =>
        $"{chip}-16: {{name: {chip} 16, chip: {chip}, memory: {{unified: 16 MiB, textures-from-system: no}}, source: manual, drivers-complete: [dos, windows-95, windows-98se, windows-2000, windows-xp]}}";

    private static string DriverOf(string chip) =>
        $"{chip}-9x: {{name: {chip} 9x, os: [windows-98se], lists: [{chip}-16], offers: {{direct3d: \"7\"}}, source: readme, versions: [{{version: \"1.0\"}}]}}";

    private static string TitleOf(int number) =>
        $"title-{number:00}: {{name: Title {number:00}, os: [windows-98se], source: bench, renderers: {{d3d: {{api: direct3d 6, needs: {{cosmetic: [{string.Join(", ", Features.Skip(number * NewEach).Take(NeedsEach))}]}}}}}}}}";
}
