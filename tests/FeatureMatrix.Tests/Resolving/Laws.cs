using CsCheck;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Resolving.Oracles;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>What holds of every verdict, whatever the catalog (STYLE lists the laws). A failure prints CsCheck's seed.</summary>
public sealed class Every_verdict
{
    private const int Catalogs = 250;

    private const int Many = 10_000;

    [Fact]
    public void Is_the_same_for_the_same_input() => SameForSameInput(Catalogs);

    [Fact]
    public void Does_not_depend_on_the_order_of_statements() => IndependentOfOrder(Catalogs);

    [Fact]
    public void Is_no_worse_with_one_more_supplied_feature() => NoWorseWithMore(Catalogs);

    [Fact]
    public void Only_narrows_when_an_unknown_is_settled() => OnlyNarrows(Catalogs);

    // Last results: 10,000 catalogs kept each law, in three minutes.
    [Fact, Trait("Category", "campaign")]
    public void Keeps_the_laws_on_many_catalogs()
    {
        OnlyNarrows(Many);
        IndependentOfOrder(Many);
        NoWorseWithMore(Many);
        SameForSameInput(Many);
    }

    private static void SameForSameInput(int catalogs) => CatalogGenerator.Plans.Sample(IsRepeatable, iter: catalogs, threads: 1, print: Dump);

    private static void IndependentOfOrder(int catalogs) => CatalogGenerator.Plans.Sample(IsIndependentOfOrder, iter: catalogs, threads: 1, print: Dump);

    private static void NoWorseWithMore(int catalogs) => Gen.Select(CatalogGenerator.Plans.Select(WithoutExceptions), Gen.Int[0, 1], Gen.Int[0, 4], Gen.Int[0, 2])
        .Sample((plan, chip, feature, step) => IsNoWorse(plan, Supplied(plan, chip, feature, step)), iter: catalogs, threads: 1, print: one => Dump(one.Item1));

    private static void OnlyNarrows(int catalogs) => CatalogGenerator.Plans.Sample(IsOnlyNarrowed, iter: catalogs, threads: 1, print: Dump);

    internal static bool IsRepeatable(CatalogPlan plan) => Text(CatalogBuilder.Build(plan)) == Text(CatalogBuilder.Build(plan));

    internal static bool IsIndependentOfOrder(CatalogPlan plan) => Text(CatalogBuilder.Build(plan)) == Text(CatalogBuilder.Build(Reversed(plan)));

    internal static bool IsOnlyNarrowed(CatalogPlan plan)
    {
        var generated = CatalogBuilder.Build(plan);
        foreach (var (title, setups, unknown) in OpenSupply(generated))
        {
            var verdict = new Resolver(generated.Catalog).Resolve(title, setups[0].Card, setups, generated.Terms);
            var before = verdict.Overall;
            foreach (var state in PossibleStates(verdict, unknown))
            {
                var after = new Resolver(Settled(generated.Catalog, unknown, setups[0].Card, state)).Resolve(title, setups[0].Card, setups, generated.Terms).Overall;
                if (before.IsExact && after.IsExact && before.Outcomes.Count > 0)
                    Assert.Empty(after.Outcomes.Except(before.Outcomes));
            }
        }

        return true;
    }

    /// <summary>Without what STYLE excepts: negative facts, broken, any-of, conditions on memory; and without what was seen.</summary>
    private static CatalogPlan WithoutExceptions(CatalogPlan plan) => plan with
    {
        Facts = [.. plan.Facts.Select(Whole)],
        Wrappers = [.. plan.Wrappers.Select(wrapper => new WrapperPlan([.. wrapper.Versions.Select(version => version with { Supplies = [.. version.Supplies.Select(Whole)] })]))],
        Titles = [.. plan.Titles.Select(title => title with
        {
            Renderers = [.. title.Renderers.Select(renderer => renderer with
            {
                Defects = [], Needs = [.. renderer.Needs.Select(need => need with { Choices = [need.Choices[0]], Condition = -1 })],
            })],
        })],
        Observations = [],
    };

    private static FactPlan Whole(FactPlan fact) => fact.Support == Support.Broken ? fact with { Support = Support.No } : fact;

    private static CatalogPlan Supplied(CatalogPlan plan, int chip, int feature, int step) => plan with
    {
        Facts = [.. plan.Facts, new FactPlan(ScopePlan.Everything with { Chip = chip }, new CapabilityPlan(feature, step), Reach.AtLeast, Support.Yes, Grade.Measured)],
    };

    private static bool IsNoWorse(CatalogPlan one, CatalogPlan other)
    {
        var before = Overall(CatalogBuilder.Build(one));
        var after = Overall(CatalogBuilder.Build(other));
        return before.Zip(after).All(pair => !pair.First.IsExact || !pair.Second.IsExact
            || (Outcome.CompareWorst(pair.Second.Worst, pair.First.Worst) <= 0 && Outcome.CompareBest(pair.Second.Best, pair.First.Best) <= 0));
    }

    private static List<OutcomeRange> Overall(GeneratedCatalog generated)
    {
        var resolver = new Resolver(generated.Catalog);
        return [.. Agreement.Cells(generated.Catalog, resolver).Where(cell => cell.Setups.Count > 0)
            .Select(cell => resolver.Resolve(cell.Title, cell.Setups[0].Card, cell.Setups, generated.Terms).Overall)];
    }

    // Titles that somebody watched are left out: a fact that contradicts what was seen makes a dispute, which is wider (R15).
    private static IEnumerable<(Title Title, IReadOnlyList<Setup> Setups, UnknownFact.Supply Unknown)> OpenSupply(GeneratedCatalog generated)
    {
        var resolver = new Resolver(generated.Catalog);
        return from cell in Agreement.Cells(generated.Catalog, resolver)
               where cell.Setups.Count > 0 && cell.Title.Renderers.All(renderer => renderer.Needs.All(need => !need.HardwareOnly))
                   && !generated.Catalog.Observations.Any(seen => seen.Renderer.Title == cell.Title)
               from unknown in resolver.Resolve(cell.Title, cell.Setups[0].Card, cell.Setups, generated.Terms).Overall.Deciding.OfType<UnknownFact.Supply>().Take(2)
               where unknown.Driver.Kind != DriverKind.Unrecorded && !SharesScope(generated.Catalog, unknown)
               select (cell.Title, cell.Setups, unknown);
    }

    private static IEnumerable<Support> PossibleStates(Verdict verdict, UnknownFact unknown) => verdict.Routes
        .SelectMany(finding => finding.Form.Gates.Select(gate => gate.Answer).Concat(finding.Form.Needs.SelectMany(need => need.Choices).Select(choice => choice.Answer)))
        .Where(answer => unknown.Equals(answer.Open)).SelectMany(answer => answer.Possible).Distinct();

    // An equally narrow fact would make one more conflict instead of settling anything.
    private static bool SharesScope(Catalog catalog, UnknownFact.Supply unknown) => catalog.Facts.Any(fact => fact.Capability.Feature == unknown.Capability.Feature && fact.Scope.NamesDriver);

    private static Catalog Settled(Catalog catalog, UnknownFact.Supply unknown, Card card, Support state)
    {
        var scope = new Scope { Card = card, Drivers = DriverRange.Only(unknown.Driver), Os = unknown.Os, Api = unknown.Api };
        var settling = new SupplyFact(scope, unknown.Capability, Reach.At, state, new Evidence(Grade.Measured, null, Origin.None));
        return new Catalog
        {
            Features = catalog.Features,
            Oses = catalog.Oses,
            Chips = catalog.Chips,
            Cards = catalog.Cards,
            Branches = catalog.Branches,
            Wrappers = catalog.Wrappers,
            Titles = catalog.Titles,
            Observations = catalog.Observations,
            Facts = [.. catalog.Facts, settling],
        };
    }

    private static CatalogPlan Reversed(CatalogPlan plan) => plan with
    {
        Cards = [.. plan.Cards.Select(card => card with { OsSupport = [.. card.OsSupport.Reverse()] })],
        Oses = [.. plan.Oses.Select(os => new OsPlan([.. os.Runtimes.Reverse()]))],
        Branches = [.. plan.Branches.Select(branch => new BranchPlan([.. branch.Versions.Select(version => version with { Forced = [.. version.Forced.Reverse()] })]))],
        Facts = [.. plan.Facts.Reverse()],
        Wrappers = [.. plan.Wrappers.Select(wrapper => new WrapperPlan([.. wrapper.Versions.Select(version => version with
        {
            Supplies = [.. version.Supplies.Reverse()], Needs = [.. version.Needs.Reverse()], Oses = [.. version.Oses.Reverse()],
        })]))],
        Observations = [.. plan.Observations.Reverse()],
    };

    private static string Dump(CatalogPlan plan) => CatalogDump.Of(CatalogBuilder.Build(plan));

    private static string Text(GeneratedCatalog generated)
    {
        var resolver = new Resolver(generated.Catalog);
        return string.Join('\n', Agreement.Cells(generated.Catalog, resolver).Where(cell => cell.Setups.Count > 0).Select(cell =>
        {
            var verdict = resolver.Resolve(cell.Title, cell.Setups[0].Card, cell.Setups, generated.Terms);
            var headline = verdict.Headline;
            return $"{cell.Name}: {headline.Outcome} {headline.Route} by {string.Join(", ", headline.By.Select(finding => finding.Route))} "
                + $"{string.Join(" | ", verdict.Overall.Outcomes)} decided by {string.Join(", ", verdict.Overall.Deciding.Select(unknown => unknown.ToString()).Order(StringComparer.Ordinal))} "
                + $"instead {string.Join(", ", verdict.Alternatives.Select(finding => finding.Route))}; {verdict.Recommended?.Route}";
        }));
    }
}
