using System.Globalization;
using FeatureMatrix.Importing.Executables;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Records;

/// <summary>A title's renderers and candidate needs as its files make them likely: grade inferred, strength unknown.</summary>
public static class TitleRecord
{
    private const string OpenGl = "opengl";

    /// <summary>
    /// The renderers that are likely: of each interface the newest level that the files name, or its lowest where they name
    /// none; DirectDraw only where no Direct3D is named, since every older Direct3D program opens it.
    /// </summary>
    public static IReadOnlyList<(Capability Api, CandidateRenderer Candidate)> Renderers(TitleScan scan, IReadOnlyList<Feature> vocabulary)
    {
        ArgumentNullException.ThrowIfNull(scan);
        var known = scan.Renderers
            .Select(candidate => (Api: vocabulary.FirstOrDefault(feature => feature.IsApi && feature.Id == candidate.Use.Api), candidate))
            .Where(pair => pair.Api is not null)
            .Select(pair => (Api: (pair.candidate.Use.Level is { } level ? pair.Api!.At(level) : null) ?? pair.Api!.At(1), pair.candidate))
            .GroupBy(pair => pair.Api.Feature).Select(group => group.MaxBy(pair => pair.Api.Step)).ToList();
        return
        [
            .. known.Where(pair => pair.Api.Feature.Id != "directdraw" || known.TrueForAll(other => other.Api.Feature.Id != "direct3d"))
                .OrderBy(pair => pair.Api.Feature.Id, StringComparer.Ordinal),
        ];
    }

    /// <summary>The records. Renderers that the title has already stay as they are, whatever the files say.</summary>
    /// <param name="scan">What the files say.</param>
    /// <param name="catalog">The collection.</param>
    /// <param name="title">Id of the title.</param>
    /// <param name="name">Name of a new title.</param>
    /// <param name="oses">Systems of new renderers.</param>
    public static IEnumerable<RecordChange> Of(TitleScan scan, Catalog catalog, string title, string name, IReadOnlyList<Os> oses)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        var known = catalog.Titles.FirstOrDefault(one => one.Id == title);
        var renderers = Renderers(scan, catalog.Features);
        var needs = CandidateNeeds.Of(scan, catalog.Features);
        if (known is null && renderers.Count > 0)
        {
            yield return new RecordChange(
                [new Step.Key("titles"), new Step.Key(title)], $"titles/{title}.yaml",
                [KeyChange.Keep("name", name), new KeyChange("source", Evidence([.. renderers[0].Candidate.Sightings]), KeyRule.Keep)])
            { InLines = true };
        }

        foreach (var (api, candidate) in renderers.Where(pair => known is null || known.Renderers.All(other => other.Api?.Feature != pair.Api.Feature)))
        {
            List<(string, YamlValue)> keys =
            [
                ("api", new YamlValue.Text(api.ToString())),
                ("os", YamlValue.Words(oses.Select(os => os.Id))),
                ("source", Evidence(candidate.Sightings)),
            ];
            if (api.Feature.Id == OpenGl && needs.Count > 0)
                keys.Add(("needs", new YamlValue.Map([("unknown", new YamlValue.List([.. needs.Select(Need)]))])));
            yield return new RecordChange(
                [new Step.Key("titles"), new Step.Key(title), new Step.Key("renderers")], $"titles/{title}.yaml",
                [new KeyChange(api.Feature.Id, new YamlValue.Map(keys), KeyRule.Keep)]);
        }
    }

    /// <summary>A place in a title's files, as a source names it.</summary>
    public static string Place(Sighting sighting)
    {
        ArgumentNullException.ThrowIfNull(sighting);
        return PlainWords.Of(string.Create(CultureInfo.InvariantCulture, $"{sighting.Name} in {sighting.File} at 0x{sighting.Offset:X}"));
    }

    private static YamlValue.Map Need(CandidateNeed need) => new(
        [("need", new YamlValue.Text(need.Capability.ToString())), ("source", Evidence(need.Sightings))]);

    private static YamlValue.Map Evidence(IReadOnlyList<Sighting> sightings) => new(
        [("text", new YamlValue.Text(string.Join("; ", sightings.Take(3).Select(Place)))), ("grade", new YamlValue.Text("inferred"))]);
}
