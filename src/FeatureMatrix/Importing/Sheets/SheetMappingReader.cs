using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>Reads a mapping file.</summary>
internal sealed class SheetMappingReader
{
    private const string Silent = "unknown";

    private static readonly IReadOnlyList<(string, SheetStates)> AllStates =
        [("observations", SheetStates.Observations), ("facts", SheetStates.Facts), ("needs", SheetStates.Needs)];

    private static readonly IReadOnlyList<string> ScopeOfObservations =
        ["title", "renderer", "card", "specimen", "driver", "os", "wrapper", "mode", "depth", "rig", "feature"];

    private static readonly IReadOnlyList<string> ScopeOfFacts = ["chip", "card", "driver", "from", "to", "os", "api", "feature"];

    private static readonly IReadOnlyList<string> ScopeOfNeeds = ["title", "renderer", "feature"];

    private readonly FaultList _faults;

    private SheetMappingReader(FaultList faults) => _faults = faults;

    /// <summary>The mapping; null where the faults are too many to read it.</summary>
    public static SheetMapping? Read(SourceText file, FaultList faults)
    {
        if (NodeParser.Parse(file, faults) is not { } root)
        {
            if (faults.Count == 0)
                faults.Add(FaultTexts.MissingKey(new Origin(file.Path, 1, 1), "sheet", "a mapping"));
            return null;
        }

        if (Fields.Of(root, "a mapping", faults) is not { } top)
            return null;
        var fields = top.Inner("sheet");
        if (fields is null && faults.Count == 0)
            faults.Add(FaultTexts.MissingKey(root.Origin, "sheet", "a mapping"));
        top.Done();
        return fields is null ? null : new SheetMappingReader(faults).Read(fields);
    }

    /// <summary>The keys that a sheet may state something about.</summary>
    public static IReadOnlyList<string> ScopeOf(SheetStates states) => states switch
    {
        SheetStates.Observations => ScopeOfObservations,
        SheetStates.Facts => ScopeOfFacts,
        SheetStates.Needs => ScopeOfNeeds,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The keys that a column may hold.</summary>
    public static IReadOnlyList<string> HeldBy(SheetStates states) => states switch
    {
        SheetStates.Observations => [.. ScopeOfObservations.Where(key => key != "feature"), "runs", "date", "by", "note"],
        SheetStates.Facts => [.. ScopeOfFacts, "note"],
        SheetStates.Needs => [.. ScopeOfNeeds, "effect"],
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private SheetMapping? Read(Fields fields)
    {
        var name = fields.RequiredWord("name");
        if (name is not null)
            Ids.Check(name, _faults);
        var states = fields.Choice("states", AllStates);
        if (states is null && !fields.Has("states"))
            _faults.Add(FaultTexts.MissingKey(fields.Origin, "states", fields.Label));
        var source = fields.Inner("source");
        if (source is null && !fields.Has("source"))
            _faults.Add(FaultTexts.MissingKey(fields.Origin, "source", fields.Label));
        if (!fields.Has("columns"))
            _faults.Add(FaultTexts.MissingKey(fields.Origin, "columns", fields.Label));
        var mapping = new SheetMapping
        {
            Name = name?.Text ?? "",
            States = states ?? SheetStates.Observations,
            Tab = fields.Text("tab"),
            TabOrigin = fields.OriginOf("tab"),
            HeadingRow = Row(fields, "heading-row") ?? 1,
            LastRow = Row(fields, "last-row"),
            Source = source is null ? [] : Source(source),
            Same = Givens(fields, "same", ScopeOf(states ?? SheetStates.Observations)),
            Columns = [.. fields.Entries("columns").Select(entry => Column(entry, states ?? SheetStates.Observations)).OfType<MappedColumn>()],
            Words = Meanings(fields, "words"),
            Names = Meanings(fields, "names"),
            FillDown = [.. fields.List("fill-down").Select(word => word.Text)],
            NewTitles = fields.Inner("add-titles") is { } add ? Added(add) : null,
        };
        fields.Done();
        return _faults.HasErrors ? null : mapping;
    }

    private int? Row(Fields fields, string key)
    {
        if (fields.Word(key) is not { } word)
            return null;
        if (int.TryParse(word.Text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var row) && row is > 0 and <= 1_048_576)
            return row;
        _faults.Add(FaultTexts.WrongForm(word.Origin, $"'{key}'", word.Text, "the number of a row, from 1"));
        return null;
    }

    private static List<Given> Source(Fields source)
    {
        source.RequiredText("text");
        source.Choice("grade", Words.Grades);
        var given = new[] { "text", "grade", "link" }.Where(source.Has).Select(key => new Given(key, source.Text(key), source.Word(key)!.Origin)).ToList();
        source.Done();
        return given;
    }

    private NewTitles? Added(Fields fields)
    {
        var api = fields.RequiredWord("api");
        var os = fields.List("os");
        if (os.Count == 0)
            _faults.Add(FaultTexts.MissingKey(fields.Origin, "os", fields.Label));
        fields.Done();
        return api is null ? null : new NewTitles(new Given("api", api.Text, api.Origin), [.. os.Select(word => new Given("os", word.Text, word.Origin))]);
    }

    private MappedColumn? Column(MappingEntry entry, SheetStates states)
    {
        if (entry.Value is not Mapping)
            return entry.Value is Scalar { IsNothing: true } ? new MappedColumn(entry.Key.Text, new ColumnRole.PassedOver(), entry.Key.Origin) : Held(entry, states);
        var fields = Fields.Of(entry.Value, $"the column '{entry.Key.Text}'", _faults)!;
        var words = Meanings(fields, "words");
        var keys = ScopeOf(states).Where(fields.Has).Select(key => fields.Word(key) is { } word ? new Given(key, word.Text, word.Origin) : null).OfType<Given>().ToList();
        if (keys.Count == 0)
            _faults.Add(FaultTexts.MissingKey(entry.Key.Origin, string.Join("' or '", ScopeOf(states).Take(3)), fields.Label));
        fields.Done();
        return new MappedColumn(entry.Key.Text, new ColumnRole.Answers(keys, words), entry.Key.Origin);
    }

    private MappedColumn? Held(MappingEntry entry, SheetStates states)
    {
        var legal = HeldBy(states).Append("nothing").Select(word => (word, 0)).ToList();
        if (entry.Value is not Scalar word)
        {
            _faults.Add(FaultTexts.WrongShape(entry.Value.Origin, $"the column '{entry.Key.Text}'", "a word or a map of keys", entry.Value.Shape));
            return null;
        }

        if (Words.Read(word, $"the column '{entry.Key.Text}'", legal, _faults) is null)
            return null;
        ColumnRole role = word.Text.Trim() == "nothing" ? new ColumnRole.PassedOver() : new ColumnRole.Holds(word.Text.Trim());
        return new MappedColumn(entry.Key.Text, role, entry.Key.Origin);
    }

    private static List<Given> Givens(Fields fields, string key, IReadOnlyList<string> legal)
    {
        if (fields.Inner(key) is not { } inner)
            return [];
        var given = legal.Where(inner.Has).Select(name => inner.Word(name) is { } word ? new Given(name, word.Text, word.Origin) : null).OfType<Given>().ToList();
        inner.Done();
        return given;
    }

    private List<Meaning> Meanings(Fields fields, string key) => [.. fields.Entries(key).Select(MeaningOf).OfType<Meaning>()];

    private Meaning? MeaningOf(MappingEntry entry)
    {
        switch (entry.Value)
        {
            case Scalar word:
                return new Meaning(entry.Key.Text, word.IsNothing || word.Text.Trim() == Silent, word.Text.Trim(), []);
            case Mapping map:
                var keys = map.Entries.Select(one => one.Value is Scalar value ? new Given(one.Key.Text, value.Text, value.Origin) : null).ToList();
                if (!keys.Contains(null))
                    return new Meaning(entry.Key.Text, keys.Count == 0, "", [.. keys.OfType<Given>()]);
                goto default;
            default:
                _faults.Add(FaultTexts.WrongShape(entry.Value.Origin, $"'{entry.Key.Text}'", "a word or a map of keys with words", entry.Value.Shape));
                return null;
        }
    }
}
