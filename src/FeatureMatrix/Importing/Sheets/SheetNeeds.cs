using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>Needs of titles that the collection has: they join the needs of one renderer, where the title stands.</summary>
internal static class SheetNeeds
{
    /// <summary>What a need says beside its feature: the column <c>effect</c> of the row, and the keys of the word.</summary>
    public static IReadOnlyList<(string Key, Placed Value)> Details(SheetAnswer need) =>
        [.. need.Details, .. need.About.TryGetValue("effect", out var effect) ? [("effect", effect)] : Array.Empty<(string, Placed)>()];

    /// <summary>The records. A need that the renderer has already, about the same feature, stays as it is and is named among those kept.</summary>
    public static IReadOnlyList<RecordChange> Of(
        IReadOnlyList<SheetAnswer> answers, IReadOnlyList<SourceText> collection, IReadOnlyList<Title> titles, SheetFile file, List<WorksheetFault> faults, List<string> kept)
    {
        var records = new List<RecordChange>();
        foreach (var answer in answers)
        {
            if (answer.About.GetValueOrDefault("title") is not { } named || answer.Features.Count == 0)
                continue;
            var (feature, strength) = answer.Features[0];
            if (titles.FirstOrDefault(title => title.Id == named.Value) is not { } title)
            {
                faults.Add(new WorksheetFault(named.Place, SheetFaultTexts.NoSuchTitle(named.Value, titles.Select(one => one.Id))));
                continue;
            }

            var renderer = answer.About.TryGetValue("renderer", out var wanted)
                ? title.Renderers.FirstOrDefault(one => one.Id == wanted.Value)
                : title.Renderers.Count == 1 ? title.Renderers[0] : null;
            if (renderer is null)
                faults.Add(new WorksheetFault(wanted?.Place ?? strength.Place, SheetFaultTexts.NoRenderer(title.Name, title.Renderers.Select(one => one.Id))));
            else if (renderer.Needs.FirstOrDefault(need => need.Choices.Any(choice => choice.ToString() == feature.Value || choice.Feature.Id == feature.Value)) is { } there)
                kept.AddRange(IsOurs(there, strength.Value, file) ? [] : [$"{title.Id}, {renderer.Id}: has a need of {feature.Value} already, which stays"]);
            else
                records.Add(Record(title, renderer, answer, file, IsMap(collection, title, renderer, strength.Value)));
        }

        return records;
    }

    /// <summary>True for what an earlier import of the sheet brought, and the sheet still says.</summary>
    private static bool IsOurs(Need need, string strength, SheetFile file) =>
        need.Evidence.Source?.Id == file.Source && Words.Strengths.Any(pair => pair.Item1 == strength && pair.Item2 == need.Strength);

    private static RecordChange Record(Title title, Renderer renderer, SheetAnswer answer, SheetFile file, bool inMap)
    {
        var (feature, strength) = answer.Features[0];
        IReadOnlyList<Step> needs = [new Step.Key("titles"), new Step.Key(title.Id), new Step.Key("renderers"), new Step.Key(renderer.Id), new Step.Key("needs")];
        IReadOnlyList<(string, YamlValue)> details =
        [
            .. Details(answer).Select(detail => (detail.Key, (YamlValue)new YamlValue.Text(detail.Value.Value))), ("source", new YamlValue.Text(file.Source)),
        ];
        return inMap
            ? new RecordChange([.. needs, new Step.Key(strength.Value)], $"titles/{title.Id}.yaml", [new KeyChange(feature.Value, new YamlValue.Map(details), KeyRule.Keep)])
            : new RecordChange(
                needs, $"titles/{title.Id}.yaml",
                [new KeyChange(strength.Value, new YamlValue.List([new YamlValue.Map([("need", new YamlValue.Text(feature.Value)), .. details])]), KeyRule.Join)]);
    }

    /// <summary>True where the needs of that strength stand as a map from features, not as a list.</summary>
    private static bool IsMap(IReadOnlyList<SourceText> collection, Title title, Renderer renderer, string strength) => collection
        .Where(file => file.Path.EndsWith("yaml", StringComparison.Ordinal) && file.Text.Contains(title.Id, StringComparison.Ordinal))
        .Any(file => new[] { "titles", title.Id, "renderers", renderer.Id, "needs", strength }
            .Aggregate(NodeParser.Parse(file, new FaultList()), (node, key) => (node as Mapping)?.Entries.FirstOrDefault(entry => entry.Key.Text == key).Value) is Mapping);
}
