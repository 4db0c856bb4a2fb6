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
        var renderer = Renderer(fields);
        var specimen = fields.Word("specimen") is { } board ? draft.Specimens.Find(board, Faults) : null;
        var card = fields.Word("card") is { } word ? draft.Cards.Find(word, Faults) : specimen?.Card;
        if (specimen is not null && card is not null && specimen.Card != card)
            Faults.Add(FaultTexts.SpecimenOfAnother(fields.OriginOf("specimen"), specimen, card));

        var seen = Seen(fields).ToList();
        var observation = new Observation
        {
            Renderer = renderer!,
            Card = card,
            Specimen = specimen,
            Driver = fields.Word("driver") is { } driver ? draft.References.Driver(driver) : null,
            Os = fields.Word("os") is { } os ? draft.Oses.Find(os, Faults) : null,
            Wrapper = Wrapper(fields.Word("wrapper")),
            Mode = fields.Value("mode", Quantities.Mode),
            Depth = fields.Value("depth", Quantities.Depth),
            Rig = fields.Word("rig") is { } rig ? draft.Rigs.Find(rig, Faults) : null,
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
        return renderer is null ? null : observation;
    }

    private Renderer? Renderer(Fields fields)
    {
        var title = fields.RequiredWord("title") is { } word ? draft.Titles.Find(word, Faults) : null;
        if (fields.Word("renderer") is not { } named)
        {
            if (title?.Renderers.Count == 1)
                return title.Renderers[0];
            Faults.AddDangling(FaultTexts.MissingKey(fields.Origin, "renderer", fields.Label));
            return null;
        }

        return title is null ? null : draft.References.Renderer(named, title);
    }

    private ObservedWrapper Wrapper(Scalar? word)
    {
        if (word is null)
            return ObservedWrapper.NotStated.Instance;
        if (word.Text.Trim() == "none")
            return ObservedWrapper.None.Instance;
        return draft.References.WrapperVersion(word) is { } version
            ? new ObservedWrapper.Version(version)
            : ObservedWrapper.NotStated.Instance;
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
