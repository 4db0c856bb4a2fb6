using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>Observations that decide nothing: those that speak for no route on record, and those too weak to be heard (rule R15).</summary>
internal sealed class IdleObservations
{
    private readonly Catalog _catalog;
    private readonly IReadOnlyList<Decisions> _terms;

    /// <summary>Looks on the default terms and on those of every library.</summary>
    public IdleObservations(Decisions decisions)
    {
        _catalog = decisions.Catalog;
        _terms = [decisions, .. _catalog.Libraries.Where(library => library != decisions.Library).Select(library => new Decisions(_catalog, library))];
    }

    /// <summary>Why an observation decides nothing, in a clause; null where it decides or confirms something on some terms.</summary>
    public string? Reason(Observation observation)
    {
        var routes = (observation.Card is { } card ? [card] : _catalog.Cards)
            .SelectMany(one => _terms.SelectMany(terms => terms.On(observation.Renderer.Title, one).Routes)).Where(finding => finding.Route.Renderer == observation.Renderer).ToList();
        var spokenFor = routes.Where(finding => finding.Form.Observations.Contains(observation)).ToList();
        if (spokenFor.Count == 0)
            return Mismatch(observation, routes);
        if (spokenFor.SelectMany(finding => finding.Form.Answers).Any(answer => answer.Observations.Contains(observation)))
            return null;
        return observation.Evidence.Grade == Grade.Hearsay
            ? "hearsay alone decides nothing"
            : $"{observation.Renderer.Title.Name} asks for nothing that was looked at";
    }

    /// <summary>The first thing stated that no route shares.</summary>
    private static string Mismatch(Observation seen, List<RouteFinding> routes)
    {
        var left = routes;
        if (seen.Driver is { } driver && !Keep(finding => finding.Route.Setup.Driver == driver))
            return $"{Names.Of(driver)} is recorded neither to list {seen.Card?.Name ?? "the card"} nor for its chip";
        if (seen.Os is { } os && !Keep(finding => finding.Route.Setup.Os == os))
            return $"no setup of {seen.Card?.Name ?? "the card"} on record has {os.Name}{(seen.Driver is { } with ? $" with {Names.Of(with)}" : "")}";
        if (seen.Wrapper is ObservedWrapper.Version { Used: var wrapper } && !Keep(finding => finding.Route.Wrapper == wrapper))
            return $"no route on record goes through {Names.Of(wrapper)} there";
        if (seen.Mode is { } mode && !Keep(finding => finding.Form.Draw.Mode == mode))
            return $"it was seen at {mode}, and no library judges the title at that mode";
        if (seen.Depth is { } depth && !Keep(finding => finding.Form.Draw.Depth == depth))
            return $"it was seen at {depth} bit, and no library judges the title at that colour depth";
        return "no route on record agrees with all that it states";

        bool Keep(Predicate<RouteFinding> agrees)
        {
            left = left.FindAll(agrees);
            return left.Count > 0;
        }
    }
}
