using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>What is known of a route's speed against the library's floor.</summary>
public enum FloorAnswer
{
    /// <summary>It reaches the floor, or speed does not count here.</summary>
    Reaches,

    /// <summary>Its measured interval lies under the floor: it counts as not running.</summary>
    Misses,

    /// <summary>Nobody measured it, or the interval spans the floor.</summary>
    NotKnown,
}

/// <summary>
/// Works out <see cref="Prospect"/>s: in each completion the best permitted route (rule R13), with ungraded losses settled one way
/// or the other, the same way wherever the same need of the same renderer is lost.
/// </summary>
public sealed class ProspectBuilder
{
    /// <summary>How many completions of one title on one card are walked before bounds are given instead.</summary>
    public const int CompletionLimit = 512;

    private readonly Completions _completions = new(CompletionLimit);

    /// <summary>What may come of a verdict's title on its card, as far as the picture goes.</summary>
    public Prospect Build(Verdict verdict) => Build(verdict, _ => FloorAnswer.Reaches);

    /// <summary>The same at the speed floor: a route that misses it counts as not running.</summary>
    public Prospect Build(Verdict verdict, Func<Route, FloorAnswer> floor) => Build(verdict.Routes, floor);

    /// <summary>What may come of a title where any of these routes may be taken, on whichever card.</summary>
    public Prospect Build(IEnumerable<RouteFinding> routes, Func<Route, FloorAnswer> floor)
    {
        var runners = routes
            .Where(finding => finding.Form.IsPermitted && !finding.Range.CertainlyFails)
            .Select(finding => Runner.Of(finding, floor(finding.Route)))
            .Where(runner => runner.Speed != FloorAnswer.Misses).ToList();
        if (runners.Count == 0)
            return Prospect.Certain(Standing.DoesNotRun);
        var floorStanding = runners.Max(runner => runner.Worst);
        var surest = runners.First(runner => runner.Worst == floorStanding);
        // A route that at its best is no better than the surest at its worst is never needed.
        var contenders = runners.Where(runner => runner == surest || runner.Best > floorStanding).OrderByDescending(runner => runner.Best).ToList();
        var ceiling = contenders[0].Best;
        if (ceiling == floorStanding)
            return Prospect.Certain(ceiling);
        var memory = new RouteMemory(contenders.ConvertAll(runner => runner.Form));
        var leaves = _completions.Walk<StandingResult>(Evaluate);
        return leaves is null ? Prospect.Between(floorStanding, ceiling) : Prospect.From(leaves);

        (StandingResult? Result, Question? Ask) Evaluate(IReadOnlyDictionary<UnknownFact, Support> settled)
        {
            var row = memory.Under(settled);
            var best = Standing.DoesNotRun;
            for (var i = 0; i < contenders.Count && contenders[i].Best > best; i++)
            {
                var (standing, ask) = contenders[i].Evaluate(row[i], settled, best);
                if (ask is { } question)
                    return (null, row.Ask(question));
                if (standing > best)
                    best = standing;
            }

            return (new StandingResult(best), null);
        }
    }

    /// <summary>A permitted route that may run.</summary>
    private sealed record Runner(RouteForm Form, Standing Best, Standing Worst, FloorAnswer Speed)
    {
        private static readonly IReadOnlyList<Support> NoOrYes = [Support.No, Support.Yes];

        public static Runner Of(RouteFinding finding, FloorAnswer speed) => new(
            finding.Form, BestOf(finding.Range.Best), speed == FloorAnswer.Reaches ? WorstOf(finding.Range.Worst) : Standing.DoesNotRun, speed);

        /// <summary>The standing in a completion; exact only where it beats the one to beat.</summary>
        public (Standing Standing, Question? Ask) Evaluate(Step step, IReadOnlyDictionary<UnknownFact, Support> settled, Standing toBeat)
        {
            if (step.Outcome is not { } outcome)
                return (default, step.Ask);
            if (BestOf(outcome) <= toBeat)
                return (Standing.DoesNotRun, null);
            var severe = outcome.Severe;
            for (var i = 0; outcome.Ungraded > 0 && i < outcome.Losses.Count; i++)
            {
                if (outcome.Losses[i] is not { Strength: Strength.Ungraded } loss)
                    continue;
                var unknown = GradeOf(loss);
                if (!settled.TryGetValue(unknown, out var isCosmetic))
                    return (default, new Question(unknown, NoOrYes));
                if (isCosmetic == Support.No)
                    severe++;
            }

            var standing = new Standing(true, severe, outcome.Losses.Count - severe);
            if (Speed == FloorAnswer.Reaches || standing <= toBeat)
                return (standing, null);
            var speed = new UnknownFact.ReachesFloor(Form.Route.Renderer, Form.Route.Setup, Form.Route.Wrapper);
            if (!settled.TryGetValue(speed, out var reaches))
                return (default, new Question(speed, NoOrYes));
            return (reaches == Support.Yes ? standing : Standing.DoesNotRun, null);
        }

        /// <summary>
        /// Rule R4: what is broken costs the need's strength where nothing else is recorded, so that both are one grade then;
        /// a strength recorded for the broken case alone, or found out apart, is another.
        /// </summary>
        private UnknownFact.LossIsCosmetic GradeOf(Loss loss)
        {
            var apart = loss.Kind == LossKind.WrongPicture && (loss.Need.WhenBroken is not null || loss.Need.Strength != Strength.Ungraded);
            return new UnknownFact.LossIsCosmetic(Form.Route.Renderer, loss.Need, apart);
        }

        private static Standing BestOf(Outcome outcome) =>
            outcome.Runs ? new Standing(true, outcome.Severe, outcome.Cosmetic + outcome.Ungraded) : Standing.DoesNotRun;

        private static Standing WorstOf(Outcome outcome) =>
            outcome.Runs ? new Standing(true, outcome.Severe + outcome.Ungraded, outcome.Cosmetic) : Standing.DoesNotRun;
    }
}
