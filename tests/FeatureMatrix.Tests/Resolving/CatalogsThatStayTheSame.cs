using FeatureMatrix.Tests.Resolving.Bulk;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Resolving.Oracles;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// The oracle and the laws on generated catalogs with numbers instead of random seeds: what a change of the code breaks here
/// stays broken until it is mended, so that changes (also the seeded ones of <c>tests/campaigns/mutate</c>) can be compared.
/// </summary>
public sealed class Catalogs_that_stay_the_same
{
    private const uint InOneBlock = 20;

    public static TheoryData<uint> Blocks { get; } = [.. Enumerable.Range(0, 12).Select(block => InOneBlock * (uint)block)];

    [Theory, MemberData(nameof(Blocks))]
    public void Are_answered_as_brute_force_answers(uint first) =>
        Assert.All(CatalogGenerator.Fixed(first, InOneBlock), plan => Assert.Null(Agreement.FirstDifference(CatalogBuilder.Build(plan))));

    [Theory, MemberData(nameof(Blocks))]
    public void Are_answered_as_brute_force_answers_where_much_was_seen(uint first) =>
        Assert.All(CatalogGenerator.FixedWithSightings(first, InOneBlock), plan => Assert.Null(Agreement.FirstDifference(CatalogBuilder.Build(plan))));

    [Theory, MemberData(nameof(Blocks))]
    public void Are_solved_in_bulk_as_the_resolver_answers(uint first) => Assert.All(CatalogGenerator.Fixed(first, InOneBlock), plan =>
    {
        Assert.Null(new BulkAgreement().FirstDifference(CatalogBuilder.Build(plan)));
        The_bulk_solver.CountsAgree(plan);
    });

    [Theory, MemberData(nameof(Blocks))]
    public void Keep_the_laws(uint first) => Assert.All(CatalogGenerator.Fixed(first, InOneBlock), plan =>
    {
        Assert.True(Every_verdict.IsIndependentOfOrder(plan));
        Assert.True(Every_verdict.IsOnlyNarrowed(plan));
    });
}
