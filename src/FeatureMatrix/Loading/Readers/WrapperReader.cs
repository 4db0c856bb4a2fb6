using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Wrappers with their versions.</summary>
internal sealed class WrapperReader(Draft draft, SystemReader systems)
{
    private FaultList Faults => draft.Faults;

    public Wrapper Build(Shelf<Wrapper>.Item item)
    {
        var fields = item.Fields;
        var wrapper = new Wrapper { Id = item.Id, Name = fields.RequiredText("name"), Notes = fields.Text("notes") };
        if (!fields.Has("versions"))
            Faults.Add(FaultTexts.MissingKey(item.Origin, "versions", fields.Label));
        var versions = new List<WrapperVersion>();
        foreach (var node in fields.Items("versions"))
        {
            if (Fields.Of(node, $"version of {fields.Label}", Faults) is not { } version)
                continue;
            var made = Version(version, wrapper, Provenance.Of(item, draft));
            version.Done();
            if (made is null)
                continue;
            if (versions.Exists(other => other.Version == made.Version))
                Faults.Add(FaultTexts.Twice(version.Origin, "version", made.Version, fields.Label));
            else
                versions.Add(made);
        }

        wrapper.Link(versions);
        return wrapper;
    }

    private WrapperVersion? Version(Fields fields, Wrapper wrapper, Provenance inherited)
    {
        var provenance = inherited.Within(fields);
        var version = fields.RequiredText("version");
        var target = fields.RequiredWord("on") is { } on ? draft.References.ApiLevel(on) : null;
        var runtime = fields.Word("runtime") is { } word ? draft.References.ApiLevel(word) : target;
        var offers = draft.Supply.Levels(fields.Entries("offers"), provenance);
        var supplies = draft.Supply.Read(fields.Entries("supplies"), Scope.Everything, null, provenance);
        var passes = draft.References.All(draft.Features, fields.List("passes"));
        foreach (var both in passes.Intersect(supplies.Select(fact => fact.Capability.Feature)))
            Faults.Add(FaultTexts.SuppliedAndPassed(fields.OriginOf("passes"), both));
        Contradictions.Report(supplies, Faults);
        foreach (var offered in offers.Where(o => !o.Feature.IsApi))
            Faults.Add(FaultTexts.OffersNoApi(fields.OriginOf("offers"), offered.Feature));
        if (!fields.Has("offers"))
            Faults.Add(FaultTexts.MissingKey(fields.Origin, "offers", fields.Label));
        var made = new WrapperVersion
        {
            Id = $"{wrapper.Id}@{version}",
            Wrapper = wrapper,
            Version = version,
            Offers = offers,
            Target = target ?? default,
            Runtime = runtime ?? default,
            Supplies = supplies,
            Passes = passes,
            IsComplete = fields.YesNo("complete") ?? false,
            Needs = [.. fields.Items("needs").Select(node => Need(node, provenance)).OfType<WrapperNeed>()],
            Oses = systems.Support(fields.Entries("os"), provenance),
            VideoMemoryBytes = fields.Value("memory", Quantities.Bytes) ?? 0,
            Costs = fields.Text("costs"),
            Sha256 = DriverReader.Sha256(fields),
            Evidence = provenance.At(fields.Origin),
        };
        return target is null ? null : made;
    }

    private WrapperNeed? Need(Node node, Provenance inherited)
    {
        if (node is Scalar word)
            return draft.References.Capability(word) is { } bare ? new WrapperNeed(bare, inherited.At(word.Origin)) : null;
        if (Fields.Of(node, "'needs'", Faults) is not { } fields)
            return null;
        var capability = fields.RequiredWord("need") is { } need ? draft.References.Capability(need) : null;
        var evidence = inherited.Within(fields).At(fields.Origin);
        fields.Done();
        return capability is { } c ? new WrapperNeed(c, evidence) : null;
    }
}
