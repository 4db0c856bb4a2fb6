using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>Compares the resolver with brute force, cell by cell.</summary>
internal static class Agreement
{
    /// <summary>The cells of a catalog: each title on each setup and on each card.</summary>
    public static IEnumerable<(Title Title, IReadOnlyList<Setup> Setups, string Name)> Cells(Catalog catalog, Resolver resolver)
    {
        foreach (var title in catalog.Titles)
        {
            foreach (var card in catalog.Cards)
            {
                var setups = resolver.SetupsOf(card);
                foreach (var setup in setups)
                    yield return (title, [setup], $"{title} on {setup} ({setup.Install})");
                yield return (title, setups, $"{title} on {card}");
            }
        }
    }

    /// <summary>The first difference in words; null where all agree. Counts the cells that were compared and left out.</summary>
    public static string? FirstDifference(GeneratedCatalog generated, Tally? tally = null)
    {
        var resolver = new Resolver(generated.Catalog);
        var oracle = new BruteForce(generated.Catalog);
        foreach (var (title, setups, name) in Cells(generated.Catalog, resolver))
        {
            var expected = oracle.Cell(title, setups, generated.Terms);
            tally?.Count(expected);
            if (expected is null || setups.Count == 0)
                continue;
            var actual = resolver.Resolve(title, setups[0].Card, setups, generated.Terms);
            if (Difference(expected, actual) is { } difference)
                return $"{name}: {difference}";
        }

        return null;
    }

    public static string? Difference(CellAnswer expected, Verdict actual)
    {
        var range = actual.Overall;
        if (!range.IsExact)
            return BoundsDifference(expected, range);
        if (range.Outcomes.Count > 0 && !expected.Outcomes.SetEquals(range.Outcomes))
            return $"outcomes: brute force {Text(expected.Outcomes)}, resolver {Text(range.Outcomes)}";
        if (!expected.Outcomes.Contains(range.Best) || expected.Outcomes.Any(outcome => Outcome.CompareBest(outcome, range.Best) < 0))
            return $"best: resolver {range.Best} of {Text(expected.Outcomes)}";
        if (!expected.Outcomes.Contains(range.Worst) || expected.Outcomes.Any(outcome => Outcome.CompareWorst(outcome, range.Worst) > 0))
            return $"worst: resolver {range.Worst} of {Text(expected.Outcomes)}";
        if (range.IsCertain != (expected.Outcomes.Count == 1))
            return $"certain: resolver {range.IsCertain}";
        if (!expected.Deciding.SetEquals(range.Deciding))
            return $"deciding: brute force {Text(expected.Deciding)}, resolver {Text(range.Deciding)}";
        if (expected.Outcome != actual.Headline.Outcome)
            return $"label: brute force {expected.Outcome}, resolver {actual.Headline.Outcome}";
        return expected.Route != actual.Headline.Route ? $"route label: brute force {expected.Route}, resolver {actual.Headline.Route}" : null;
    }

    /// <summary>Past the limit: best end exact, worst end sound (R13).</summary>
    private static string? BoundsDifference(CellAnswer expected, OutcomeRange range)
    {
        if (!expected.Outcomes.Any(outcome => Outcome.CompareBest(outcome, range.Best) == 0) || expected.Outcomes.Any(outcome => Outcome.CompareBest(outcome, range.Best) < 0))
            return $"best bound {range.Best} of {Text(expected.Outcomes)}";
        return expected.Outcomes.Any(outcome => Outcome.CompareWorst(outcome, range.Worst) > 0) ? $"worst bound {range.Worst} of {Text(expected.Outcomes)}" : null;
    }

    private static string Text<T>(IEnumerable<T> things) => "{ " + string.Join(" | ", things.Select(thing => thing!.ToString()).Order(StringComparer.Ordinal)) + " }";
}

/// <summary>How much a campaign compared.</summary>
internal sealed class Tally
{
    public int Compared { get; private set; }

    public int LeftOut { get; private set; }

    public int Largest { get; private set; }

    public void Count(CellAnswer? answer)
    {
        if (answer is null)
        {
            LeftOut++;
            return;
        }

        Compared++;
        Largest = Math.Max(Largest, answer.Completions);
    }

    public override string ToString() => $"{Compared} cells compared, {LeftOut} left out for their size, the largest with {Largest} completions";
}
