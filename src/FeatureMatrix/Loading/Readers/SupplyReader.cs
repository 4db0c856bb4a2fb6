using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>
/// Statements about supply: a map from features to <c>yes</c>, a level, or a long form with scope and source
/// (data/README.md, "Supply").
/// </summary>
internal sealed class SupplyReader(Draft draft)
{
    /// <summary>All statements of a map. <c>unknown</c> states nothing.</summary>
    /// <param name="entries">Feature ids and values.</param>
    /// <param name="scope">What all of them are about; the long form may narrow it.</param>
    /// <param name="branch">The driver branch whose versions <c>from</c> and <c>to</c> name; null outside branches.</param>
    /// <param name="provenance">What they inherit.</param>
    public IReadOnlyList<SupplyFact> Read(
        IEnumerable<MappingEntry> entries, Scope scope, DriverBranch? branch, Provenance provenance)
    {
        var facts = new List<SupplyFact>();
        foreach (var (key, value) in entries.Where(entry => !entry.Value.IsNothing))
        {
            if (draft.References.Feature(key) is not { } feature)
                continue;
            foreach (var statement in value is Sequence list ? list.Items : [value])
            {
                var fact = statement switch
                {
                    Scalar word => Short(word, feature, scope, provenance),
                    Mapping map => Long(map, feature, scope, branch, provenance),
                    _ => Wrong(statement, feature),
                };
                if (fact is not null)
                    facts.Add(fact);
            }
        }

        return facts;
    }

    /// <summary>APIs or features at the highest level each is offered at; <c>none</c> and <c>unknown</c> leave one out.</summary>
    public IReadOnlyList<Capability> Levels(IEnumerable<MappingEntry> entries, Provenance provenance) =>
    [
        .. Read(entries, Scope.Everything, null, provenance)
            .Where(fact => fact.Support is Support.Yes or Support.Emulated)
            .Select(fact => fact.Capability),
    ];

    private SupplyFact? Short(Scalar word, Feature feature, Scope scope, Provenance provenance)
    {
        var text = word.Text.Trim();
        if (text == "unknown")
            return null;
        if (!feature.HasLevels)
        {
            return Words.Read(word, feature.Id, Words.Supports, draft.Faults) is { } support
                ? new SupplyFact(scope, feature.At(1), Reach.At, support, provenance.At(word.Origin))
                : null;
        }

        if (text is "none" or "no")
            return new SupplyFact(scope, feature.At(1), Reach.At, Support.No, provenance.At(word.Origin));
        if (text is "yes" or "broken" or "emulated")
        {
            draft.Faults.Add(FaultTexts.LevelMissing(word.Origin, feature));
            return null;
        }

        var reach = text.EndsWith('+') ? Reach.AtLeast : Reach.UpTo;
        return draft.References.Level(word, feature, text.TrimEnd('+').TrimEnd()) is { } capability
            ? new SupplyFact(scope, capability, reach, Support.Yes, provenance.At(word.Origin))
            : null;
    }

    private SupplyFact? Long(Mapping map, Feature feature, Scope scope, DriverBranch? branch, Provenance provenance)
    {
        var fields = new Fields(map, $"'{feature.Id}'", draft.Faults);
        var narrowed = Narrow(fields, scope, branch);
        var support = fields.Choice("is", Words.Supports);
        var level = fields.Word("level");
        var reach = fields.Choice("reach", Words.Reaches);
        var note = fields.Text("note");
        var evidence = provenance.Within(fields);
        if (support is null && level is null && !fields.Has("is"))
            draft.Faults.Add(FaultTexts.MissingKey(fields.Origin, "is", fields.Label));
        fields.Done();
        support ??= level is null ? null : Support.Yes;
        if (support is not { } stated || stated == Support.Unknown || narrowed is null)
            return null;
        if (What(fields, feature, stated, level, reach) is not var (capability, spoken))
            return null;
        return new SupplyFact(narrowed, capability, spoken, stated, evidence.At(map.Origin)) { Note = note };
    }

    private (Capability Capability, Reach Reach)? What(
        Fields fields, Feature feature, Support stated, Scalar? level, Reach? reach)
    {
        if (!feature.HasLevels)
        {
            if (level is not null)
                draft.Faults.Add(FaultTexts.FlagHasNoLevel(level.Origin, feature, level.Text));
            return (feature.At(1), Reach.At);
        }

        if (level is null && stated == Support.No)
            return (feature.At(1), Reach.At);
        if (level is null)
        {
            draft.Faults.Add(FaultTexts.LevelMissing(fields.Origin, feature));
            return null;
        }

        if (draft.References.Level(level, feature, level.Text.Trim()) is not { } capability)
            return null;
        if (stated == Support.No && reach is Reach.UpTo or Reach.AtLeast)
        {
            draft.Faults.Add(FaultTexts.DenialReachesUp(fields.OriginOf("reach")));
            return null;
        }

        return (capability, reach ?? (stated == Support.Yes ? Reach.UpTo : Reach.At));
    }

    /// <summary>The scope with what the long form adds to it; null where a part of it leads nowhere.</summary>
    public Scope? Narrow(Fields fields, Scope scope, DriverBranch? branch)
    {
        var references = draft.References;
        var before = draft.Faults.Count;
        var result = scope with
        {
            Os = fields.Word("os") is { } os ? draft.Oses.Find(os, draft.Faults) : scope.Os,
            Api = fields.Word("api") is { } api ? references.Api(api) : scope.Api,
        };
        if (!scope.NamesHardware)
        {
            result = result with
            {
                Chip = fields.Word("chip") is { } chip ? draft.Chips.Find(chip, draft.Faults) : null,
                Card = fields.Word("card") is { } card ? draft.Cards.Find(card, draft.Faults) : null,
            };
        }

        if (!scope.NamesDriver || branch is not null)
            result = result with { Drivers = references.Range(fields, branch) ?? scope.Drivers };
        if (result is { Chip: { } of, Card: { } on } && on.Chip != of)
            draft.Faults.Add(FaultTexts.CardOfAnotherChip(fields.OriginOf("card"), on, of));
        return draft.Faults.Count == before ? result : null;
    }

    private SupplyFact? Wrong(Node statement, Feature feature)
    {
        draft.Faults.Add(FaultTexts.WrongShape(statement.Origin, $"'{feature.Id}'", "a text or a map of keys", statement.Shape));
        return null;
    }
}
