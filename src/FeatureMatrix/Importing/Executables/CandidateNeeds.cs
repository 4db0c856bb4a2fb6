using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Executables;

/// <summary>A need that a title's files make likely. Grade inferred, strength unknown: nobody saw what happens without it.</summary>
/// <param name="Capability">The feature, at the lowest of its levels.</param>
/// <param name="Sightings">The names that say so.</param>
public sealed record CandidateNeed(Capability Capability, IReadOnlyList<Sighting> Sightings)
{
    /// <summary>Always <see cref="Grade.Inferred"/>: a name in a file is not a use of it.</summary>
    public static Grade Grade => Grade.Inferred;

    /// <summary>Always <see cref="Strength.Unknown"/>.</summary>
    public static Strength Strength => Strength.Unknown;
}

/// <summary>Maps the extensions that a title names to features of the vocabulary.</summary>
public static class CandidateNeeds
{
    /// <summary>The needs, by feature; extensions that no feature is detected by stay in the scan.</summary>
    public static IReadOnlyList<CandidateNeed> Of(TitleScan scan, IEnumerable<Feature> vocabulary)
    {
        ArgumentNullException.ThrowIfNull(scan);
        ArgumentNullException.ThrowIfNull(vocabulary);
        var sightings = scan.Extensions.ToDictionary(e => e.Name, e => e.Sightings, StringComparer.Ordinal);
        return
        [
            .. from feature in vocabulary.OrderBy(f => f.Id, StringComparer.Ordinal)
               let seen = feature.Detection.OpenGlExtensions.SelectMany(e => sightings.GetValueOrDefault(e) ?? []).ToList()
               where seen.Count > 0
               select new CandidateNeed(feature.At(1), seen),
        ];
    }
}
