using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Policies: those of libraries, and one in a file of its own that is laid over them key by key.</summary>
internal sealed class PolicyReader(Draft draft)
{
    private const string Key = "policy";

    private FaultList Faults => draft.Faults;

    /// <summary>A policy file: its name if it has one, and the keys of <c>policy</c>. What it does not state stays as it is.</summary>
    public Func<Policy, Policy> ReadFile(SourceText file)
    {
        const string Label = "the policy file";
        if (NodeParser.Parse(file, Faults) is not { } root)
            return policy => policy;
        if (Fields.Of(root, Label, Faults) is not { } fields)
            return policy => policy;
        var name = fields.Text("name");
        if (!fields.Has(Key))
            Faults.Add(FaultTexts.MissingKey(fields.Origin, Key, Label));
        var change = Read(fields.Inner(Key));
        fields.Done();
        return policy => change(policy) with { Name = name.Length > 0 ? name : file.Path };
    }

    /// <summary>What the keys of a policy change; nothing where there is none.</summary>
    public Func<Policy, Policy> Read(Fields? fields)
    {
        if (fields is null)
            return policy => policy;
        var worth = fields.Inner("worth");
        var (oses, wrappers) = (Oses(fields), Wrappers(fields));
        var (forced, software, oneDriver) = (fields.YesNo("forced"), fields.YesNo("software"), fields.YesNo("one-driver"));
        var mode = Unless("lowest", fields, "mode", Quantities.Mode);
        var depth = Unless("lowest", fields, "depth", Quantities.Depth);
        var samples = fields.Value("samples", Quantities.Whole(1, 16));
        var floor = Unless("none", fields, "fps-floor", Quantities.Number(1, 1000));
        var severe = worth?.Value("severe", Quantities.Number(0, 1));
        var cosmetic = worth?.Value("cosmetic", Quantities.Number(0, 1));
        worth?.Done();
        fields.Done();
        return policy => policy with
        {
            Oses = fields.Has("os") ? oses : policy.Oses,
            Wrappers = fields.Has("wrappers") ? wrappers : policy.Wrappers,
            AllowForced = forced ?? policy.AllowForced,
            AllowSoftware = software ?? policy.AllowSoftware,
            OneDriverPerOs = oneDriver ?? policy.OneDriverPerOs,
            Mode = fields.Has("mode") ? mode : policy.Mode,
            Depth = fields.Has("depth") ? depth : policy.Depth,
            Samples = samples ?? policy.Samples,
            FpsFloor = fields.Has("fps-floor") ? floor : policy.FpsFloor,
            SevereWorth = severe ?? policy.SevereWorth,
            CosmeticWorth = cosmetic ?? policy.CosmeticWorth,
        };
    }

    /// <summary>A value, or null for the word that says there is none.</summary>
    private static T? Unless<T>(string word, Fields fields, string key, Func<Scalar, string, FaultList, T?> read)
        where T : struct => fields.Take(key) is Scalar { Text: var text } && text.Trim() == word ? null : fields.Value(key, read);

    private IReadOnlyList<Os>? Oses(Fields fields) =>
        fields.Take("os") is null or Scalar { Text: "any" } ? null : draft.References.All(draft.Oses, fields.List("os"));

    private IReadOnlyList<Wrapper>? Wrappers(Fields fields) => fields.Take("wrappers") switch
    {
        null or Scalar { Text: "any" } => null,
        Scalar { Text: "none" } => [],
        _ => draft.References.All(draft.Wrappers, fields.List("wrappers")),
    };
}
