using System.Globalization;
using System.Text;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// Whole answers on generated catalogs with numbers, as recorded under <c>tests/goldens/resolving</c>: what the oracles do not look at (gates
/// with their reasons, grades, facts that lost, presets, unknowns that decide, contradictions) stays as it was read there. That the
/// outcomes are right is for the oracles to say, on the same catalogs.
/// </summary>
public sealed class Answers_that_stay_the_same
{
    // Those with little to read: a page and a half at most each.
    private const int MostSigns = 6000;

    [Fact]
    public void Are_the_recorded_ones() => Golden.Matches("resolving/plain.txt", Text(CatalogGenerator.Fixed(0, 60)));

    [Fact]
    public void Are_the_recorded_ones_where_much_was_seen() => Golden.Matches("resolving/sightings.txt", Text(CatalogGenerator.FixedWithSightings(60, 60)));

    private static string Text(IEnumerable<CatalogPlan> plans)
    {
        var text = new StringBuilder();
        foreach (var (plan, number) in plans.Select((plan, number) => (plan, number)))
        {
            var answers = AnswersOn(CatalogBuilder.Build(plan));
            if (answers.Length <= MostSigns)
                text.AppendLine(CultureInfo.InvariantCulture, $"catalog {number}").Append(answers);
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static string AnswersOn(GeneratedCatalog generated)
    {
        var resolver = new Resolver(generated.Catalog);
        var verdicts = generated.Catalog.Titles.SelectMany(title => generated.Catalog.Cards.Select(card => resolver.Resolve(title, card, generated.Terms)));
        return string.Concat(verdicts.Select(VerdictDump.Of));
    }
}
