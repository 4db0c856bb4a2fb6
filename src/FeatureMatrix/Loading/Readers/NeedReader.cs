using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>What a renderer asks for, by strength.</summary>
internal sealed class NeedReader(Draft draft)
{
    private FaultList Faults => draft.Faults;

    /// <summary>All needs of a map such as <c>{must: […], severe: {…}}</c>.</summary>
    public IReadOnlyList<Need> Read(Fields? fields, Provenance provenance)
    {
        if (fields is null)
            return [];
        var needs = new List<Need>();
        foreach (var (key, strength) in Words.Strengths)
        {
            foreach (var (capability, node) in Statements(fields, key))
            {
                if (Read(capability, node, strength, provenance) is not { } need)
                    continue;
                if (needs.Exists(other => AsksTheSame(other, need)))
                    Faults.Add(FaultTexts.Twice(need.Evidence.Origin, "need", need.ToString(), fields.Label));
                else
                    needs.Add(need);
            }
        }

        return needs;
    }

    /// <summary>The features that a title does not need although its engine does: the list <c>none</c>.</summary>
    public IReadOnlyList<Feature> NotNeeded(Fields? fields) =>
        fields is null ? [] : draft.References.All(draft.Features, fields.List("none"));

    private static bool AsksTheSame(Need left, Need right) =>
        left.Choices.SequenceEqual(right.Choices) && left.Condition == right.Condition;

    /// <summary>A list of statements, or a map from capabilities to their effects or long forms.</summary>
    private static IEnumerable<(Scalar? Capability, Node Node)> Statements(Fields fields, string key) => fields.Take(key) switch
    {
        null => [],
        Mapping map => map.Entries.Select(entry => ((Scalar?)entry.Key, entry.Value)),
        Sequence list => list.Items.Select(item => ((Scalar?)null, item)),
        { } one => [(null, one)],
    };

    private Need? Read(Scalar? capability, Node node, Strength strength, Provenance inherited)
    {
        if (node is Scalar text)
        {
            var word = capability ?? text;
            return draft.References.Capability(word) is { } asked
                ? new Need
                {
                    Choices = [asked],
                    Strength = strength,
                    Effect = capability is null || text.IsNothing ? "" : text.Text.Trim(),
                    Evidence = inherited.At(word.Origin),
                }
                : null;
        }

        var wanted = capability is null ? FaultTexts.OneNeed : FaultTexts.EffectOfANeed;
        if (Fields.Of(node, capability is null ? "a need" : $"'{capability.Text}'", Faults, wanted) is not { } fields)
            return null;
        var choices = Choices(fields, capability);
        var need = new Need
        {
            Choices = choices,
            Strength = strength,
            HardwareOnly = fields.YesNo("hardware") ?? false,
            WhenBroken = fields.Choice("broken", Words.Strengths),
            Condition = Condition(fields.Inner("when")),
            Effect = fields.Text("effect"),
            Evidence = inherited.Within(fields).At(capability?.Origin ?? fields.Origin),
        };
        fields.Done();
        return choices.Count == 0 ? null : need;
    }

    private List<Capability> Choices(Fields fields, Scalar? capability)
    {
        if (capability is not null)
            return draft.References.Capability(capability) is { } keyed ? [keyed] : [];
        var hasNeed = fields.Has("need");
        if (hasNeed == fields.Has("any-of"))
        {
            Faults.Add(FaultTexts.NeitherOneNorSeveral(fields.Origin));
            return [];
        }

        if (hasNeed)
            return fields.Word("need") is { } one && draft.References.Capability(one) is { } named ? [named] : [];
        var words = fields.List("any-of");
        if (words.Count == 0)
            Faults.Add(FaultTexts.EmptyChoice(fields.OriginOf("any-of")));
        return [.. words.Select(draft.References.Capability).OfType<Capability>().Distinct()];
    }

    private NeedCondition? Condition(Fields? fields)
    {
        if (fields is null)
            return null;
        var depth = fields.Value("depth", Quantities.Depth);
        var preset = fields.Text("preset");
        if (fields.Has("depth") == fields.Has("preset"))
            Faults.Add(FaultTexts.NeitherDepthNorPreset(fields.Origin));
        fields.Done();
        if (depth is { } bits)
            return new NeedCondition.AtDepth(bits);
        return preset.Length > 0 ? new NeedCondition.AtPreset(preset) : null;
    }
}
