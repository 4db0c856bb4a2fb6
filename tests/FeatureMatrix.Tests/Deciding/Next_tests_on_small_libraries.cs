using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Asking;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>What to test next, against brute force over every assignment of answers, on generated libraries.</summary>
public sealed class Next_tests_on_small_libraries(ITestOutputHelper output)
{
    private const int MostCompletions = 500;
    private const int MostAssignments = 1500;
    private const int Usual = 200;
    private const int Campaign = 20_000;
    private int _undecided;
    private int _questions;

    [Fact]
    public void Qualify_exactly_where_brute_force_says_and_settle_with_as_few() => Run(Usual, 1_000_000, 1);

    [Fact, Trait("Category", "campaign")]
    public void Qualify_exactly_many_times() => Run(Campaign, 100_000_000, 2);

    private void Run(int count, int seeds, int threads)
    {
        Gen.Int[0, seeds].Sample(AgreesWithBruteForce, iter: count, threads: threads);
        output.WriteLine($"{count} libraries, {_undecided} undecided and small enough, {_questions} questions compared");
        Assert.True(_undecided > count / 20, "too few undecided comparisons were small enough to compare");
    }

    private void AgreesWithBruteForce(int seed)
    {
        var small = new SmallLibrary(seed);
        if (EveryCompletion.Of(small, small.First, small.Second, MostCompletions) is not { } completions)
            return;
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var next = NextTest.Of(comparison);
        if (comparison.Winner != Winner.Undecided)
        {
            Assert.Empty(next.Proposals);
            return;
        }

        if (!next.IsExact || WholeDecisions.Of(completions, completion => EveryCompletion.WinnerIn(small, completion), MostAssignments) is not { } whole)
            return;
        Interlocked.Increment(ref _undecided);
        Interlocked.Add(ref _questions, whole.Unknowns.Count);
        var expected = whole.Unknowns.Where(whole.Qualifies).Select(unknown => unknown.ToString()).Order(StringComparer.Ordinal);
        Assert.Equal(expected, next.Proposals.Select(proposal => proposal.Unknown.ToString()).Order(StringComparer.Ordinal));
        Assert.Equal(whole.SmallestSet(3), next.SmallestSet.Count);
    }
}
