using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using System.Text;
using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>The exact search for the fewest cards and installs.</summary>
public sealed class Fewest_installs
{
    [Fact]
    public void Equal_brute_force_over_every_subset() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var (options, wanted) = Make(seed, installs: 9, things: 6);
        var found = FewestInstalls.Of(options, wanted);
        var coverable = options.Aggregate(0ul, (bits, option) => bits | option.Covers) & wanted;
        var best = Enumerable.Range(0, 1 << options.Count)
            .Select(set => options.Where((_, i) => (set >> i & 1) != 0).ToList())
            .Where(set => (coverable & ~set.Aggregate(0ul, (bits, option) => bits | option.Covers)) == 0)
            .Min(Cost);
        Assert.Equal(best, (found.Cost.Bought, found.Cost.Cards, found.Cost.Installs));
        Assert.Equal(0ul, coverable & ~found.Chosen.Aggregate(0ul, (bits, option) => bits | option.Covers));
        Assert.Equal(wanted & ~coverable, found.CannotCover);
        Assert.True(found.IsProved);
        Assert.True(found.LowerBound <= found.Chosen.Count);
    }, iter: 400, threads: 1);

    /// <summary>The answer-set solver clingo, from the Debian package gringo, minimises the same three counts in the same order.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Agree_with_a_general_purpose_solver_on_larger_plans(int seed)
    {
        var clingo = External.Command("clingo", "gringo");
        var (options, wanted) = Make(seed, installs: 60, things: 24);
        var program = new StringBuilder("{ in(I) : option(I,_,_) }. card(C) :- in(I), option(I,C,_). bought(C) :- in(I), option(I,C,0).\n"
            + ":- want(T), not got(T). got(T) :- in(I), covers(I,T).\n#minimize { 1@3,C : bought(C) }. #minimize { 1@2,C : card(C) }. #minimize { 1@1,I : in(I) }.\n");
        foreach (var option in options)
        {
            program.Append(CultureInfo.InvariantCulture, $"option({option.Index},{option.Card},{(option.IsOwned ? 1 : 0)}).\n");
            foreach (var thing in Things(option.Covers & wanted))
                program.Append(CultureInfo.InvariantCulture, $"covers({option.Index},{thing}).\n");
        }

        foreach (var thing in Things(options.Aggregate(0ul, (bits, option) => bits | option.Covers) & wanted))
            program.Append(CultureInfo.InvariantCulture, $"want({thing}).\n");
        using var solver = Process.Start(new ProcessStartInfo(clingo, "--quiet=1,1 -") { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true })!;
        solver.StandardInput.Write(program);
        solver.StandardInput.Close();
        var output = solver.StandardOutput.ReadToEnd();
        Assert.Contains("OPTIMUM FOUND", output);
        var cost = FewestInstalls.Of(options, wanted);
        Assert.True(cost.IsProved);
        var expected = output.Split('\n').Single(text => text.StartsWith("Optimization :", StringComparison.Ordinal)).Split(':')[1].Trim();
        Assert.Equal(expected, string.Create(CultureInfo.InvariantCulture, $"{cost.Cost.Bought} {cost.Cost.Cards} {cost.Cost.Installs}"));
    }

    private static (int, int, int) Cost(List<InstallOption> set) => (
        set.Where(option => !option.IsOwned).Select(option => option.Card).Distinct().Count(), set.Select(option => option.Card).Distinct().Count(), set.Count);

    private static IEnumerable<int> Things(ulong bits)
    {
        for (; bits != 0; bits &= bits - 1)
            yield return BitOperations.TrailingZeroCount(bits);
    }

    private static (List<InstallOption> Options, ulong Wanted) Make(int seed, int installs, int things)
    {
        var random = new Random(seed);
        var owned = Enumerable.Range(0, installs).Select(_ => random.Next(3) == 0).ToArray();
        var options = Enumerable.Range(0, installs).Select(i =>
        {
            var card = random.Next(Math.Max(2, installs / 3));
            var covers = Enumerable.Range(0, things).Where(_ => random.Next(4) == 0).Aggregate(0ul, (bits, thing) => bits | 1ul << thing);
            return new InstallOption(i, card, owned[card], covers, random.Next(5));
        }).ToList();
        return (options, (1ul << things) - 1);
    }
}
