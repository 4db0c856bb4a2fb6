using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Operating systems and buses.</summary>
internal sealed class SystemReader(Draft draft)
{
    public Os Os(Shelf<Os>.Item item)
    {
        var fields = item.Fields;
        var provenance = Provenance.Of(item, draft);
        return new Os
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            IsDos = fields.YesNo("dos") ?? false,
            Runtimes = [.. fields.Entries("runtimes").SelectMany(entry => Runtimes(entry, provenance))],
            Limits = [.. fields.Items("limits").Select(node => Limit(node, provenance)).OfType<OsLimit>()],
        };
    }

    public Bus Bus(Shelf<Bus>.Item item) => new()
    {
        Id = item.Id,
        Name = item.Fields.RequiredText("name"),
        Meaning = item.Fields.Text("meaning"),
        PeakMegabytesPerSecond = item.Fields.Value("peak", Quantities.MegabytesPerSecond),
        Evidence = Provenance.Of(item, draft).At(item.Origin),
    };

    /// <summary>
    /// A map from operating systems to <c>yes</c>, <c>no</c> or <c>unknown</c>, or to a long form with source;
    /// <c>unknown</c> states nothing.
    /// </summary>
    public IReadOnlyList<OsSupport> Support(IEnumerable<MappingEntry> entries, Provenance provenance)
    {
        var result = new List<OsSupport>();
        foreach (var (key, value) in entries)
        {
            var os = draft.Oses.Find(key, draft.Faults);
            if (Statement(value, $"'{key.Text}'", provenance) is not var (support, evidence))
                continue;
            if (os is not null && support != Model.Support.Unknown)
                result.Add(new OsSupport(os, support, evidence));
        }

        return result;
    }

    /// <summary><c>yes</c>, <c>no</c> or <c>unknown</c>, or <c>{is: …, source: …}</c>.</summary>
    private (Support Support, Evidence Evidence)? Statement(Node value, string label, Provenance provenance)
    {
        if (value is Scalar word)
        {
            return Words.Read(word, label, Words.YesNoUnknown, draft.Faults) is { } said
                ? (said, provenance.At(word.Origin))
                : null;
        }

        if (Fields.Of(value, label, draft.Faults) is not { } fields)
            return null;
        fields.RequiredWord("is");
        var support = fields.Choice("is", Words.YesNoUnknown);
        var evidence = provenance.Within(fields).At(fields.Origin);
        fields.Done();
        return support is { } s ? (s, evidence) : null;
    }

    private IEnumerable<RuntimeLimit> Runtimes(MappingEntry entry, Provenance provenance)
    {
        var api = draft.References.Api(entry.Key);
        if (api is { NeedsRuntime: false })
            draft.Faults.Add(FaultTexts.NeedsNoRuntime(entry.Key.Origin, api));

        foreach (var statement in entry.Value is Sequence list ? list.Items : [entry.Value])
        {
            var (highest, origin, evidence) = (statement as Scalar, statement.Origin, provenance);
            if (highest is null)
            {
                if (Fields.Of(statement, $"'{entry.Key.Text}'", draft.Faults) is not { } fields)
                    continue;
                highest = fields.RequiredWord("highest");
                evidence = provenance.Within(fields);
                fields.Done();
            }

            if (api is null || highest is null || highest.Text.Trim() == "unknown")
                continue;
            if (highest.Text.Trim() is "none" or "no")
                yield return new RuntimeLimit(api, 0, evidence.At(origin));
            else if (draft.References.Level(highest, api, highest.Text.Trim()) is { } level)
                yield return new RuntimeLimit(api, level.Step, evidence.At(origin));
        }
    }

    private OsLimit? Limit(Node node, Provenance provenance)
    {
        if (Fields.Of(node, "'limits'", draft.Faults) is not { } fields)
            return null;
        fields.RequiredWord("kind");
        var kind = fields.Choice("kind", Words.LimitKinds);
        var amount = fields.Value("amount", Quantities.Whole(1, int.MaxValue));
        var text = fields.RequiredText("text");
        var evidence = provenance.Within(fields).At(fields.Origin);
        fields.Done();
        return kind is { } k ? new OsLimit(k, amount, text, evidence) : null;
    }
}
