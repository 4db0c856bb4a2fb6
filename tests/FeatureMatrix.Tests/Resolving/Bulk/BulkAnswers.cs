using System.Globalization;
using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;
using FeatureMatrix.Tests.Model;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving.Bulk;

/// <summary>
/// What is solved in bulk on generated catalogs with numbers, as recorded: codes, best routes, and above all which cells are marked and
/// left to the resolver, which no comparison of answers can see. That unmarked cells are right is for <see cref="BulkAgreement"/> to say.
/// </summary>
public sealed class Answers_in_bulk
{
    [Fact]
    public void Are_the_recorded_ones() => Golden.Matches("resolving/bulk.txt", Text(CatalogGenerator.Fixed(0, 60).Concat(CatalogGenerator.FixedWithSightings(100, 20))));

    /// <summary>A code counts 31 losses; a title whose renderer could have more is for the resolver.</summary>
    [Theory]
    [InlineData(31, false)]
    [InlineData(32, true)]
    public void Are_not_given_for_a_title_with_more_needs_than_a_code_can_count(int needs, bool forResolver)
    {
        var features = Enumerable.Range(0, needs).Select(i => new Feature { Id = $"f-{i}", Name = "F", Family = "f", Evidence = Parts.Word }).ToList();
        var titles = new[] { TitleOf("many", features), TitleOf("few", features.Take(1)) };
        var problem = Compile(new Catalog { Features = [Parts.Direct3D, .. features], Oses = [Parts.Win98], Chips = [Parts.Heron], Cards = [Parts.Heron16], Titles = titles });
        Assert.Equal([forResolver, false], problem.KindOfTitle.Select(kind => problem.TitleKinds[kind].IsForResolver));

        static Title TitleOf(string id, IEnumerable<Feature> features)
        {
            var title = new Title { Id = id, Name = id, Evidence = Parts.Word };
            var plain = new Renderer { Id = "plain", Title = title, Api = Parts.Direct3D.At(1), Oses = [Parts.Win98] };
            var needy = new Renderer
            {
                Id = "needy",
                Title = title,
                Api = Parts.Direct3D.At(1),
                Oses = [Parts.Win98],
                Needs = [.. features.Select(feature => new Need { Choices = [feature.At(1)], Strength = Strength.Cosmetic, Evidence = Parts.Word })],
            };
            title.Link([plain, needy]);
            return title;
        }
    }

    /// <summary>Routes are numbered up to 254; 255 says that there is none.</summary>
    [Theory]
    [InlineData(253, false)]
    [InlineData(254, true)]
    public void Are_not_given_for_a_title_with_more_routes_than_can_be_numbered(int versions, bool forResolver)
    {
        var wrapper = new Wrapper { Id = "veil", Name = "Veil" };
        wrapper.Link([.. Enumerable.Range(0, versions).Select(i => new WrapperVersion
        {
            Id = $"veil@{i}",
            Wrapper = wrapper,
            Version = $"{i}",
            Offers = [Parts.Direct3D.At(1)],
            Target = Parts.OpenGl.At(1),
            Runtime = Parts.OpenGl.At(1),
            Evidence = Parts.Word,
        })]);
        var title = new Title { Id = "bay", Name = "Bay", Evidence = Parts.Word };
        title.Link([new Renderer { Id = "d3d", Title = title, Api = Parts.Direct3D.At(1), Oses = [Parts.Win98] }]);
        var problem = Compile(new Catalog { Features = [Parts.Direct3D, Parts.OpenGl], Oses = [Parts.Win98], Chips = [Parts.Heron], Cards = [Parts.Heron16], Wrappers = [wrapper], Titles = [title] });
        Assert.Equal(forResolver, problem.TitleKinds.Single().IsForResolver);
        Assert.Equal(forResolver ? 0 : versions + 1, problem.TitleKinds.Single().Routes.Count);
    }

    [Fact]
    public void Count_nothing_where_a_card_has_no_setup()
    {
        var title = new Title { Id = "bay", Name = "Bay", Evidence = Parts.Word };
        title.Link([new Renderer
        {
            Id = "d3d",
            Title = title,
            Api = Parts.Direct3D.At(1),
            Oses = [Parts.Win98],
            Needs = [new Need { Choices = [Parts.Fog.At(1)], Strength = Strength.Ungraded, Evidence = Parts.Word }],
        }]);
        var catalog = new Catalog { Features = [Parts.Direct3D, Parts.Fog], Oses = [Parts.Win98], Chips = [Parts.Heron], Cards = [Parts.Heron16], Titles = [title] };
        var total = CoverageTotals.Of(new Resolver(catalog), [title], [[]], _ => Terms.Default).Single();
        Assert.Equal((1, 0, 0, 0, 0, 1), (total.Titles, total.RunAtWorst, total.RunAtBest, total.CompleteAtWorst, total.CompleteAtBest, total.ByResolver));
    }

    private static BulkProblem Compile(Catalog catalog) =>
        BulkCompiler.Compile(catalog, catalog.Titles, catalog.Cards.SelectMany(new Resolver(catalog).SetupsOf).ToList(), _ => Terms.Default);

    private static string Text(IEnumerable<CatalogPlan> plans)
    {
        var text = new StringBuilder();
        foreach (var (plan, number) in plans.Select((plan, number) => (plan, number)))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"catalog {number}");
            Append(text, CatalogBuilder.Build(plan));
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void Append(StringBuilder text, GeneratedCatalog generated)
    {
        var catalog = generated.Catalog;
        var resolver = new Resolver(catalog);
        var setups = catalog.Cards.SelectMany(resolver.SetupsOf).ToList();
        var problem = BulkCompiler.Compile(catalog, catalog.Titles, setups, _ => generated.Terms);
        var solver = new BulkSolver(problem);
        text.AppendLine(CultureInfo.InvariantCulture, $"  {problem.Worst.Length} demands, {problem.TitleKinds.Count} kinds of titles, {problem.SetupKinds} of setups");
        for (var demand = 0; demand < problem.Worst.Length; demand++)
            text.AppendLine(CultureInfo.InvariantCulture, $"    {demand}: {string.Join("; ", Enumerable.Range(0, problem.SetupKinds).Select(column => Toll(problem, demand, column)))}");
        foreach (var (title, number) in catalog.Titles.Zip(problem.KindOfTitle))
        {
            var kind = problem.TitleKinds[number];
            solver.Solve(kind);
            text.AppendLine($"  {title}: {kind.Deciding}{(kind.HasUngraded ? ", ungraded" : "")}; {string.Join(' ', kind.Routes.Select(route => string.Join('+', route)))}");
            text.AppendLine("    " + string.Join("; ", problem.KindOfSetup.Select(column => string.Create(
                CultureInfo.InvariantCulture,
                $"{solver.Worst[column]:x} {solver.Best[column]:x} {(kind.HasUngraded ? solver.BestAtWorst[column] : 0):x} #{solver.Route[column]} {(BulkMarks)solver.Marks[column]:d}"))));
        }

        var places = catalog.Cards.Select(resolver.SetupsOf).ToList();
        foreach (var total in CoverageTotals.Of(resolver, catalog.Titles, places, _ => generated.Terms))
            text.AppendLine(CultureInfo.InvariantCulture, $"  run {total.RunAtWorst} to {total.RunAtBest}, complete {total.CompleteAtWorst} to {total.CompleteAtBest} of {total.Titles}, {total.ByResolver} by the resolver");
    }

    private static string Toll(BulkProblem problem, int demand, int column)
    {
        var mixed = problem.In.Select(rows => rows[demand][column]).ToList();
        var ends = string.Create(CultureInfo.InvariantCulture, $"{problem.Worst[demand][column]:x} {problem.Best[demand][column]:x} {(BulkMarks)problem.Marks[demand][column]:d}");
        return mixed.TrueForAll(code => code == problem.Worst[demand][column]) ? ends : $"{ends} in {string.Join(' ', mixed.Select(code => code.ToString("x", CultureInfo.InvariantCulture)))}";
    }
}
