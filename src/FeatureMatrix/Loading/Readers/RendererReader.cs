using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Renderers of engines and titles.</summary>
internal sealed class RendererReader(Draft draft)
{
    private readonly NeedReader _needs = new(draft);

    private FaultList Faults => draft.Faults;

    /// <summary>What one map states about a renderer. The caller finishes the fields.</summary>
    public RendererParts Read(Fields fields, Provenance inherited)
    {
        var provenance = inherited.Within(fields);
        var needs = fields.Inner("needs", FaultTexts.NeedsByStrength);
        var api = fields.Word("api");
        var parts = new RendererParts(fields.Origin)
        {
            Name = fields.Text("name"),
            Api = api is null ? null : draft.References.ApiLevel(api),
            StatesApi = api is not null,
            Runtime = fields.Word("runtime") is { } runtime ? draft.References.ApiLevel(runtime) : null,
            IsSoftware = fields.YesNo("software"),
            Oses = fields.Has("os") ? draft.References.All(draft.Oses, fields.List("os")) : null,
            Needs = _needs.Read(needs, provenance),
            NotNeeded = _needs.NotNeeded(needs),
            Defects = [.. fields.Items("defects").Select(node => Defect(node, provenance)).OfType<Defect>()],
            Memory = MemoryParts.Read(fields.Inner("memory")),
        };
        needs?.Done();
        return parts;
    }

    /// <summary>The renderer; null where it neither draws by an API nor in software.</summary>
    public Renderer? Build(RendererParts parts, string id, Title title, IReadOnlyList<Os> usual)
    {
        var isSoftware = parts.IsSoftware ?? false;
        var label = $"renderer '{id}' of title '{title.Id}'";
        if (isSoftware == parts.StatesApi)
        {
            Faults.Add(FaultTexts.NeitherApiNorSoftware(parts.Origin, label));
            return null;
        }

        var renderer = new Renderer
        {
            Id = id,
            Title = title,
            Name = parts.Name,
            Api = parts.Api,
            Runtime = isSoftware ? null : parts.Runtime ?? parts.Api,
            Oses = parts.Oses ?? usual,
            Needs = parts.Needs,
            Defects = parts.Defects,
            Memory = parts.Memory.Build(),
        };
        if (renderer.Oses.Count == 0)
            Faults.AddDangling(FaultTexts.MissingKey(parts.Origin, "os", label));
        CheckPresets(renderer);
        return isSoftware || parts.Api is not null ? renderer : null;
    }

    private void CheckPresets(Renderer renderer)
    {
        var presets = renderer.Memory.Presets.Select(preset => preset.Name).ToList();
        foreach (var need in renderer.Needs)
        {
            if (need.Condition is NeedCondition.AtPreset { Preset: var name } && !presets.Contains(name))
                Faults.Add(FaultTexts.Unknown(need.Evidence.Origin, $"preset of renderer '{renderer}'", name, presets));
        }
    }

    private Defect? Defect(Node node, Provenance inherited)
    {
        if (Fields.Of(node, "'defects'", Faults) is not { } fields)
            return null;
        var ifPresent = fields.Word("if-present") is { } word ? draft.References.Capability(word) : null;
        var wrapper = fields.Word("wrapper") is { } used ? draft.References.WrapperVersion(used) : null;
        var scope = draft.Supply.Narrow(fields, Scope.Everything, null);
        var effect = fields.RequiredText("effect");
        var evidence = inherited.Within(fields).At(fields.Origin);
        fields.Done();
        return scope is null ? null : new Defect(ifPresent, scope, wrapper, effect, evidence);
    }
}
