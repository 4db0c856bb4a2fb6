using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Observations.</summary>
internal sealed class ObservationReader(Draft draft)
{
    private FaultList Faults => draft.Faults;

    /// <summary>One observation; null where its title or renderer is missing.</summary>
    public Observation? Read(Node node)
    {
        if (Fields.Of(node, "an observation", Faults) is not { } fields)
            return null;
        var evidence = Provenance.Of(fields, new UnsourcedCount(fields.Label), draft).Seen(draft.Sources.By(fields), fields.Origin);
        var route = StatedRoute.Read(fields, draft);
        var seen = Seen(fields).ToList();
        var observation = new Observation
        {
            Renderer = route.Renderer!,
            Card = route.Card,
            Specimen = route.Specimen,
            Driver = route.Driver,
            Os = route.Os,
            Wrapper = route.Wrapper,
            Mode = route.Mode,
            Depth = route.Depth,
            Rig = route.Rig,
            Runs = fields.YesNo("runs"),
            Seen = seen,
            Date = fields.Value("date", Quantities.Date),
            Note = fields.Text("note"),
            Evidence = evidence,
        };
        if (!fields.Has("runs") && !fields.Has("seen"))
            Faults.Add(FaultTexts.MissingKey(fields.Origin, "runs", fields.Label));
        if (observation.Runs == false && seen.Count > 0)
            Faults.Add(FaultTexts.SeenWithoutRunning(fields.OriginOf("seen")));
        fields.Done();
        return route.Renderer is null ? null : observation;
    }

    private IEnumerable<SeenFeature> Seen(Fields fields)
    {
        foreach (var (key, value) in fields.Entries("seen"))
        {
            var capability = draft.References.Capability(key);
            if (value is not Scalar word)
                Faults.Add(FaultTexts.WrongShape(value.Origin, $"'{key.Text}'", "a text", value.Shape));
            else if (Words.Read(word, $"'{key.Text}'", Words.SupportsSeen, Faults) is { } seen && capability is { } c)
                yield return new SeenFeature(c, seen);
        }
    }
}
