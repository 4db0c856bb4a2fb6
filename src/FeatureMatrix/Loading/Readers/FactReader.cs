using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Free-standing statements: scope keys, and beside them features with their values.</summary>
internal sealed class FactReader(Draft draft)
{
    public IReadOnlyList<SupplyFact> Read(Node node)
    {
        if (Fields.Of(node, "a fact", draft.Faults) is not { } fields)
            return [];
        var unsourced = new UnsourcedCount("this fact");
        var provenance = Provenance.Of(fields, unsourced, draft);
        var scope = draft.Supply.Narrow(fields, Scope.Everything, null);
        var note = fields.Text("note");
        var facts = draft.Supply.Read(fields.TakeRest(), scope ?? Scope.Everything, null, provenance);
        unsourced.Report(draft.Faults);
        return [.. facts.Select(fact => fact.Note.Length > 0 ? fact : fact with { Note = note })];
    }
}
