using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>Where what a capture shows is not what the records come to on its route. Silent where they leave it open, or say nothing of that route.</summary>
/// <param name="DoesNotRun">True where by the records the route does not run.</param>
/// <param name="Kept">What is seen to be missing although by the records it is there.</param>
/// <param name="Lost">What is seen although by the records it is lost.</param>
internal sealed record CaptureCheck(bool DoesNotRun, IReadOnlyList<Capability> Kept, IReadOnlyList<Capability> Lost)
{
    private static readonly CaptureCheck Agrees = new(false, [], []);

    /// <summary>True where records and picture agree as far as anybody knows.</summary>
    public bool IsFine => !DoesNotRun && Kept.Count == 0 && Lost.Count == 0;

    /// <summary>Holds a picture against the verdict on its own route.</summary>
    /// <param name="decisions">The verdicts.</param>
    /// <param name="capture">The picture.</param>
    /// <param name="lost">What its pair is about: what it loses, or as a baseline keeps.</param>
    public static CaptureCheck Of(Decisions decisions, Capture capture, IReadOnlyList<Capability> lost)
    {
        if (RouteOf(capture) is not { } route || decisions.On(route.Renderer.Title, route.Setup.Card).Routes.FirstOrDefault(finding => finding.Route == route) is not { } found)
            return Agrees;
        var range = found.Range;
        if (range.CertainlyFails)
            return Agrees with { DoesNotRun = true };
        // That it runs there is seen: what counts is what the records say of the outcomes in which it does.
        var running = range.Outcomes.Where(outcome => outcome.Runs).ToList();
        if (!range.IsExact || running.Count == 0)
            return Agrees;
        if (capture.Loses.Count == 0)
            return Agrees with { Lost = [.. lost.Where(one => running.TrueForAll(outcome => Holds(outcome, one)))] };
        var asked = route.Renderer.Needs.SelectMany(need => need.Choices).Select(choice => choice.Feature).ToHashSet();
        return Agrees with { Kept = [.. lost.Where(one => asked.Contains(one.Feature) && !running.Exists(outcome => Holds(outcome, one)))] };
    }

    /// <summary>The route it was taken on; null where nobody said whether a wrapper was in use.</summary>
    private static Route? RouteOf(Capture capture) => capture.Wrapper switch
    {
        ObservedWrapper.NotStated => null,
        ObservedWrapper.None => new Route(capture.Renderer, capture.Setup, null),
        ObservedWrapper.Version version => new Route(capture.Renderer, capture.Setup, version.Used),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static bool Holds(Outcome outcome, Capability lost) => outcome.Losses.Any(loss => loss.Choices.Any(choice => choice.Feature == lost.Feature));
}
