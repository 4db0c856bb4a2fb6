using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>The route that an observation or a capture states; null where it states nothing or where what it names is a fault.</summary>
internal sealed record StatedRoute(Renderer? Renderer, Card? Card, Specimen? Specimen, Driver? Driver, Os? Os, ObservedWrapper Wrapper, Mode? Mode, int? Depth, Rig? Rig)
{
    /// <summary>Takes the keys of a route.</summary>
    public static StatedRoute Read(Fields fields, Draft draft)
    {
        var specimen = fields.Word("specimen") is { } board ? draft.Specimens.Find(board, draft.Faults) : null;
        var card = fields.Word("card") is { } word ? draft.Cards.Find(word, draft.Faults) : specimen?.Card;
        if (specimen is not null && card is not null && specimen.Card != card)
            draft.Faults.Add(FaultTexts.SpecimenOfAnother(fields.OriginOf("specimen"), specimen, card));
        return new StatedRoute(
            RendererOf(fields, draft), card, specimen,
            fields.Word("driver") is { } driver ? draft.References.Driver(driver) : null,
            fields.Word("os") is { } os ? draft.Oses.Find(os, draft.Faults) : null,
            WrapperOf(fields.Word("wrapper"), draft),
            fields.Value("mode", Quantities.Mode),
            fields.Value("depth", Quantities.Depth),
            fields.Word("rig") is { } rig ? draft.Rigs.Find(rig, draft.Faults) : null);
    }

    private static Renderer? RendererOf(Fields fields, Draft draft)
    {
        var title = fields.RequiredWord("title") is { } word ? draft.Titles.Find(word, draft.Faults) : null;
        if (fields.Word("renderer") is not { } named)
        {
            if (title?.Renderers.Count == 1)
                return title.Renderers[0];
            draft.Faults.AddDangling(FaultTexts.MissingKey(fields.Origin, "renderer", fields.Label));
            return null;
        }

        return title is null ? null : draft.References.Renderer(named, title);
    }

    private static ObservedWrapper WrapperOf(Scalar? word, Draft draft)
    {
        if (word is null)
            return ObservedWrapper.NotStated.Instance;
        if (word.Text.Trim() == "none")
            return ObservedWrapper.None.Instance;
        return draft.References.WrapperVersion(word) is { } version
            ? new ObservedWrapper.Version(version)
            : ObservedWrapper.NotStated.Instance;
    }
}
