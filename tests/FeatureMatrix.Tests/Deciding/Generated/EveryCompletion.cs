using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using State = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Deciding.Generated;

/// <summary>One completion of everything open in a library: how each title fares on each of two cards.</summary>
internal sealed record WholeCompletion(IReadOnlyDictionary<UnknownFact, State> Settled, IReadOnlyList<(Standing First, Standing Second)> Titles);

/// <summary>
/// Brute force: walks every completion of everything that any title asks on either card, all at once, with nothing left out, put
/// together, kept apart or cut short. Only the evaluation of one route is the resolver's, which has oracles of its own.
/// </summary>
internal static class EveryCompletion
{
    private static readonly State[] NoOrYes = [State.No, State.Yes];

    /// <summary>All completions; null where there are more than the limit.</summary>
    public static List<WholeCompletion>? Of(SmallLibrary small, Card first, Card second, int limit, Func<Route, FloorAnswer>? floor = null) => Of(
        small.Library.Entries.Select(entry => (Permitted(small, entry, small.Resolver.SetupsOf(first)), Permitted(small, entry, small.Resolver.SetupsOf(second)))).ToList(), limit,
        floor ?? (_ => FloorAnswer.Reaches));

    /// <summary>The worst standing of one title on one setup; null where there are more completions than the limit.</summary>
    public static Standing? Worst(SmallLibrary small, LibraryEntry entry, Setup setup, int limit) =>
        Of([(Permitted(small, entry, [setup]), [])], limit, _ => FloorAnswer.Reaches)?.Min(completion => completion.Titles[0].First);

    private static List<WholeCompletion>? Of(List<(List<RouteForm> First, List<RouteForm> Second)> routes, int limit, Func<Route, FloorAnswer> floor)
    {
        var found = new List<WholeCompletion>();
        return Walk([]) ? found : null;

        bool Walk(Dictionary<UnknownFact, State> settled)
        {
            var standings = new List<(Standing, Standing)>();
            foreach (var (one, other) in routes)
            {
                var (a, askA) = Best(one, settled, floor);
                var (b, askB) = askA is null ? Best(other, settled, floor) : (default, null);
                if ((askA ?? askB) is { } question)
                {
                    foreach (var state in Implications.Consistent(question.Unknown, question.Possible, settled))
                    {
                        settled[question.Unknown] = state;
                        if (!Walk(settled))
                            return false;
                        settled.Remove(question.Unknown);
                    }

                    return true;
                }

                standings.Add((a, b));
            }

            found.Add(new WholeCompletion(new Dictionary<UnknownFact, State>(settled), standings));
            return found.Count <= limit;
        }
    }

    /// <summary>The score of one side in a completion, in doubles and by the formula as DESIGN section 5 writes it.</summary>
    public static double Score(SmallLibrary small, WholeCompletion completion, bool first)
    {
        var policy = small.Library.Policy;
        return small.Library.Entries.Select((entry, i) => entry.Weight * Worth(first ? completion.Titles[i].First : completion.Titles[i].Second)).Sum();

        double Worth(Standing standing) => standing.Runs
            ? Math.Pow(policy.SevereWorth, standing.Severe) * (1 - ((1 - policy.SevereWorth) * (1 - Math.Pow(policy.CosmeticWorth, standing.Cosmetic))))
            : 0;
    }

    /// <summary>True where a side misses a must-have in a completion.</summary>
    public static bool Misses(SmallLibrary small, WholeCompletion completion, bool first) => small.Library.Entries.Where((entry, i) =>
    {
        var standing = first ? completion.Titles[i].First : completion.Titles[i].Second;
        return entry.MustHaveTolerance switch
        {
            null => false,
            Strength.Bonus => !standing.Runs || standing.Severe + standing.Cosmetic > 0,
            Strength.Cosmetic => !standing.Runs || standing.Severe > 0,
            _ => !standing.Runs,
        };
    }).Any();

    /// <summary>Who wins in a completion: must-haves first, then the score.</summary>
    public static Winner WinnerIn(SmallLibrary small, WholeCompletion completion)
    {
        var (firstMisses, secondMisses) = (Misses(small, completion, true), Misses(small, completion, false));
        if (firstMisses != secondMisses)
            return firstMisses ? Winner.Second : Winner.First;
        var difference = Score(small, completion, true) - Score(small, completion, false);
        if (Math.Abs(difference) < 1e-9)
            return Winner.Equal;
        return difference > 0 ? Winner.First : Winner.Second;
    }

    private static List<RouteForm> Permitted(SmallLibrary small, LibraryEntry entry, IReadOnlyList<Setup> setups) =>
        small.Resolver.Resolve(entry.Title, small.First, setups, small.TermsOf(entry.Title)).Routes.Where(finding => finding.Form.IsPermitted).Select(finding => finding.Form).ToList();

    private static (Standing Standing, Question? Ask) Best(List<RouteForm> routes, Dictionary<UnknownFact, State> settled, Func<Route, FloorAnswer> floor)
    {
        var best = Standing.DoesNotRun;
        foreach (var route in routes)
        {
            var step = RouteEvaluation.Evaluate(route, settled);
            if (step.Outcome is not { } outcome)
                return (default, step.Ask);
            if (!outcome.Runs || floor(route.Route) == FloorAnswer.Misses)
                continue;
            if (floor(route.Route) == FloorAnswer.NotKnown)
            {
                var reaches = new UnknownFact.ReachesFloor(route.Route.Renderer, route.Route.Setup, route.Route.Wrapper);
                if (!settled.TryGetValue(reaches, out var isFast))
                    return (default, new Question(reaches, NoOrYes));
                if (isFast == State.No)
                    continue;
            }

            int severe = 0, cosmetic = 0;
            foreach (var loss in outcome.Losses)
            {
                var strength = loss.Strength;
                if (strength == Strength.Ungraded)
                {
                    var need = loss.Need;
                    var apart = loss.Kind == LossKind.WrongPicture && (need.WhenBroken is not null || need.Strength != Strength.Ungraded);
                    var grade = new UnknownFact.LossIsCosmetic(route.Route.Renderer, need, apart);
                    if (!settled.TryGetValue(grade, out var isCosmetic))
                        return (default, new Question(grade, NoOrYes));
                    strength = isCosmetic == State.Yes ? Strength.Cosmetic : Strength.Severe;
                }

                if (strength == Strength.Severe)
                    severe++;
                else
                    cosmetic++;
            }

            var standing = new Standing(true, severe, cosmetic);
            if (standing > best)
                best = standing;
        }

        return (best, null);
    }
}
