using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>What a fast machine does to a title.</summary>
internal sealed class HazardReader(Draft draft)
{
    public TimingHazard? Read(Node node, Provenance inherited)
    {
        if (Fields.Of(node, "'hazards'", draft.Faults) is not { } fields)
            return null;
        var provenance = inherited.Within(fields);
        fields.RequiredWord("kind");
        var kind = fields.Choice("kind", Words.HazardKinds);
        var hazard = new TimingHazard(
            kind ?? default,
            fields.Choice("follows", Words.HazardCauses) ?? false,
            fields.Value("highest-fps", Quantities.Number(1, 1000)),
            fields.RequiredText("effect"),
            fields.Text("remedy"),
            [.. fields.Items("seen").Select(seen => Sighting(seen, provenance)).OfType<TimingSighting>()],
            provenance.At(fields.Origin));
        if (hazard is { HighestFps: not null, FollowsFrameRate: false })
            draft.Faults.Add(FaultTexts.CountsOnlyWith(fields.OriginOf("highest-fps"), "highest-fps", "follows: frame-rate"));
        fields.Done();
        return kind is null ? null : hazard;
    }

    private TimingSighting? Sighting(Node node, Provenance inherited)
    {
        if (Fields.Of(node, "'seen'", draft.Faults) is not { } fields)
            return null;
        var family = fields.RequiredText("processor");
        fields.RequiredWord("mhz");
        var megahertz = fields.Value("mhz", Quantities.Number(1, 10_000));
        fields.RequiredWord("works");
        var works = fields.YesNo("works");
        var evidence = inherited.Within(fields).At(fields.Origin);
        fields.Done();
        return megahertz is { } mhz && works is { } w ? new TimingSighting(family, mhz, w, evidence) : null;
    }
}
