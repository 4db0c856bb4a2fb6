using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>The answers of a sheet as one file of the collection, which every import of the sheet writes anew.</summary>
internal sealed class SheetFile(SheetMapping mapping, PlaceMap places)
{
    private static readonly IReadOnlyList<string> ObservationKeys =
        ["title", "renderer", "card", "specimen", "driver", "os", "wrapper", "mode", "depth", "rig", "runs"];

    private static readonly IReadOnlyList<string> FactKeys = ["chip", "card", "driver", "from", "to", "os", "api"];

    private readonly List<string> _lines = ["# Written by 'import sheet'. Importing the same sheet again replaces this file."];

    /// <summary>Id of the source that all its statements name.</summary>
    public string Source { get; } = $"from-sheet-{mapping.Name}";

    /// <summary>Where the file lies.</summary>
    public string Path { get; } = PathOf(mapping);

    /// <summary>Where the file of a mapping lies.</summary>
    public static string PathOf(SheetMapping mapping) => $"sheets/from-sheet-{mapping.Name}.yaml";

    /// <summary>The file. Needs of titles that the collection has are not in it: they belong where those titles stand.</summary>
    public SourceText Write(IReadOnlyList<SheetAnswer> answers, IReadOnlyDictionary<string, Placed> newTitles)
    {
        _lines.Add("sources:");
        var source = Line().Raw($"  {Source}: {{");
        foreach (var given in mapping.Source)
            source.Pair(given.Key, given.Value, SheetReading.Place(given.Origin));
        _lines.Add(source.Close('}').ToString());
        if (newTitles.Count > 0)
            _lines.Add("titles:");
        foreach (var (id, name) in newTitles)
            Title(id, name, [.. answers.Where(answer => mapping.States == SheetStates.Needs && answer.About.GetValueOrDefault("title")?.Value == id)]);
        if (answers.Count > 0 && mapping.States != SheetStates.Needs)
            _lines.Add(mapping.States == SheetStates.Facts ? "facts:" : "observations:");
        if (mapping.States == SheetStates.Observations)
        {
            foreach (var answer in answers)
                Observation(answer);
        }
        else if (mapping.States == SheetStates.Facts)
        {
            foreach (var same in answers.GroupBy(ScopeOf))
                Fact([.. same]);
        }

        return new SourceText(Path, string.Concat(_lines.Select(line => line + "\n")));
    }

    private FlowLine Line() => new(Path, _lines.Count + 1, places);

    private void Title(string id, Placed name, IReadOnlyList<SheetAnswer> needs)
    {
        var add = mapping.NewTitles!;
        var line = Line().Raw("  ").Note(id, name.Place).Raw($"{id}: {{");
        line.Pair("name", name.Value, name.Place).Pair("source", Source, name.Place).Open("renderers", '{');
        line.Open(RendererOf(add), '{').Pair("api", add.Api.Value, SheetReading.Place(add.Api.Origin)).Open("os", '[');
        foreach (var os in add.Os)
            line.Item(os.Value, SheetReading.Place(os.Origin));
        line.Close(']');
        if (needs.Count > 0)
        {
            line.Open("needs", '{');
            foreach (var strength in needs.GroupBy(need => need.Features[0].State.Value))
            {
                line.Open(strength.Key, '[', strength.First().Features[0].State.Place);
                foreach (var need in strength)
                    Need(line, need);
                line.Close(']');
            }

            line.Close('}');
        }

        _lines.Add(line.Close('}').Close('}').Close('}').ToString());
    }

    private static void Need(FlowLine line, SheetAnswer need)
    {
        var (feature, _) = need.Features[0];
        var details = SheetNeeds.Details(need);
        if (details.Count == 0)
        {
            line.Item(feature.Value, feature.Place);
            return;
        }

        line.Open("", '{').Pair("need", feature.Value, feature.Place);
        foreach (var (key, value) in details)
            line.Pair(key, value.Value, value.Place);
        line.Close('}');
    }

    /// <summary>The id of the renderer that a new title gets: the id of its API.</summary>
    public static string RendererOf(NewTitles add) => add.Api.Value.Trim().Split(' ')[0];

    private void Observation(SheetAnswer answer)
    {
        var line = Line().Raw("  - {");
        foreach (var key in ObservationKeys)
            Pair(line, answer, key);
        if (answer.Features.Count > 0)
        {
            line.Open("seen", '{');
            foreach (var (feature, state) in answer.Features)
                line.Pair(feature.Value, feature.Place, state.Value, state.Place);
            line.Close('}');
        }

        foreach (var key in new[] { "date", "by", "note" })
            Pair(line, answer, key);
        _lines.Add(line.Pair("source", Source, "").Close('}').ToString());
    }

    private void Fact(IReadOnlyList<SheetAnswer> answers)
    {
        var line = Line().Raw("  - {");
        foreach (var key in FactKeys)
            Pair(line, answers[0], key);
        foreach (var answer in answers)
        {
            foreach (var (feature, state) in answer.Features)
            {
                if (answer.Details.Count == 0)
                {
                    line.Pair(feature.Value, feature.Place, state.Value, state.Place);
                    continue;
                }

                line.Open(feature.Value, '{', feature.Place);
                if (state.Value.Length > 0)
                    line.Pair("is", state.Value, state.Place);
                foreach (var (key, value) in answer.Details)
                    line.Pair(key, value.Value, value.Place);
                line.Close('}');
            }
        }

        Pair(line, answers[0], "note");
        _lines.Add(line.Pair("source", Source, "").Close('}').ToString());
    }

    private static void Pair(FlowLine line, SheetAnswer answer, string key)
    {
        if (answer.About.TryGetValue(key, out var value))
            line.Pair(key, value.Value, value.Place);
    }

    private static string ScopeOf(SheetAnswer answer) => string.Join('\n', FactKeys.Append("note").Select(key => answer.About.GetValueOrDefault(key)?.Value ?? ""));
}
