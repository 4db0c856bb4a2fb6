using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>Reads the answers of a sheet by its mapping. An empty cell answers nothing.</summary>
internal sealed class SheetReading
{
    private readonly SheetCells _sheet;
    private readonly SheetMapping _mapping;
    private readonly SheetNames _names;
    private readonly List<WorksheetFault> _faults;
    private readonly IReadOnlyList<FoundColumn> _columns;
    private readonly Dictionary<(string Word, string Meaning), (string Word, Meaning Meaning, int Count)> _met = [];
    private readonly Dictionary<int, string> _above = [];
    private int _blanks;
    private int _rows;
    private int _emptyRows;

    private SheetReading(SheetCells sheet, SheetMapping mapping, SheetNames names, List<WorksheetFault> faults)
    {
        (_sheet, _mapping, _names, _faults) = (sheet, mapping, names, faults);
        _columns = SheetColumns.Find(sheet, mapping, faults);
    }

    /// <summary>All answers, and what was understood.</summary>
    public static (IReadOnlyList<SheetAnswer> Answers, SheetUnderstanding Understanding) Read(
        SheetCells sheet, SheetMapping mapping, SheetNames names, List<WorksheetFault> faults)
    {
        var reading = new SheetReading(sheet, mapping, names, faults);
        if (!mapping.Columns.Any(column => column.Role is ColumnRole.Answers or ColumnRole.Holds { Key: "runs" }))
            faults.Add(new WorksheetFault(mapping.Columns.Count > 0 ? Place(mapping.Columns[0].Origin) : sheet.Name, SheetFaultTexts.NothingAnswers(Wanted(mapping.States))));
        var answers = sheet.Rows.Where(row => row > mapping.HeadingRow && row <= (mapping.LastRow ?? int.MaxValue)).SelectMany(reading.Row).ToList();
        return (answers, new SheetUnderstanding(sheet.Name, reading._columns, [.. reading._met.Values], reading._blanks, reading._rows, reading._emptyRows));
    }

    /// <summary>A place in the mapping.</summary>
    public static string Place(Origin origin) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{origin.File}({origin.Line},{origin.Column})");

    private static string Wanted(SheetStates states) => states switch
    {
        SheetStates.Observations => "runs, {card: …} or {feature: …}",
        SheetStates.Facts => "{feature: …} or {card: …}",
        SheetStates.Needs => "{feature: …} or {title: …}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private List<SheetAnswer> Row(int row)
    {
        var about = _mapping.Same.ToDictionary(given => given.Key, given => new Placed(given.Value, Place(given.Origin)));
        foreach (var column in _columns)
        {
            if (column.Mapped?.Role is ColumnRole.Holds { Key: not "runs" } holds && Text(row, column) is { Length: > 0 } text)
                _names.Put(about, holds.Key, text, _sheet.Place(row, column.Number));
        }

        var answers = new List<SheetAnswer>();
        var whole = new SheetAnswer { About = about };
        foreach (var column in _columns)
        {
            switch (column.Mapped?.Role)
            {
                case ColumnRole.Holds { Key: "runs" } when Answer(row, column, []) is { } meaning:
                    whole = Merge(whole, meaning, _sheet.Place(row, column.Number), null);
                    break;
                case ColumnRole.Answers role when Answer(row, column, role.Words) is { } meaning:
                    if (_mapping.States == SheetStates.Observations && role.Keys.All(key => key.Key == "feature"))
                        whole = Merge(whole, meaning, _sheet.Place(row, column.Number), role.Keys[0]);
                    else
                        answers.Add(About(about, role, meaning, _sheet.Place(row, column.Number)));
                    break;
                default:
                    break;
            }
        }

        if (whole.Features.Count > 0 || whole.About.ContainsKey("runs"))
            answers.Add(whole);
        foreach (var answer in answers)
            Check(row, answer);
        _ = answers.Count > 0 ? _rows++ : _emptyRows++;
        return answers;
    }

    private SheetAnswer About(IReadOnlyDictionary<string, Placed> row, ColumnRole.Answers role, Meaning meaning, string place)
    {
        var about = new Dictionary<string, Placed>(row);
        foreach (var key in role.Keys)
            _names.Put(about, key.Key, key.Value, Place(key.Origin));
        var feature = about.Remove("feature", out var named) ? named : null;
        return Merge(new SheetAnswer { About = about }, meaning, place, feature is null ? null : new Given("feature", feature.Value, Origin.None), feature?.Place);
    }

    /// <summary>An answer with what a word adds to it.</summary>
    private SheetAnswer Merge(SheetAnswer answer, Meaning meaning, string place, Given? feature, string? featurePlace = null)
    {
        var about = new Dictionary<string, Placed>(answer.About);
        var features = answer.Features.ToList();
        var details = answer.Details.ToList();
        if (feature is not null)
        {
            var named = new Placed(_names.Feature(feature.Value), featurePlace ?? Place(feature.Origin));
            var value = meaning.Value.Length > 0 ? meaning.Value : meaning.Keys.FirstOrDefault(key => key.Key is "is" or "strength")?.Value ?? "";
            if (value.Length == 0 && !meaning.Keys.Any(key => key.Key == "level"))
                _faults.Add(new WorksheetFault(place, SheetFaultTexts.NoValue(named.Value, meaning.Word)));
            features.Add((named, new Placed(value, place)));
            details.AddRange(meaning.Keys.Where(key => key.Key is not ("is" or "strength")).Select(key => (key.Key, new Placed(key.Value, Place(key.Origin)))));
        }
        else if (meaning.Value.Length > 0)
        {
            about["runs"] = new Placed(meaning.Value, place);
        }
        else
        {
            foreach (var key in meaning.Keys)
            {
                if (key.Key is "runs" or "note")
                    about[key.Key] = new Placed(key.Value, Place(key.Origin));
                else
                    features.Add((new Placed(_names.Feature(key.Key), Place(key.Origin)), new Placed(key.Value, Place(key.Origin))));
            }
        }

        return answer with { About = about, Features = features, Details = details };
    }

    private void Check(int row, SheetAnswer answer)
    {
        var needed = _mapping.States switch
        {
            SheetStates.Observations => answer.About.ContainsKey("title") ? answer.About.ContainsKey("card") || answer.About.ContainsKey("specimen") ? null : "card" : "title",
            SheetStates.Facts => answer.Features.Count == 0 ? "feature" : answer.About.Keys.Any(key => key is "chip" or "card" or "driver") ? null : "chip, card or driver",
            SheetStates.Needs => answer.About.ContainsKey("title") ? answer.Features.Count == 0 ? "feature" : null : "title",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var place = _sheet.Place(row, _columns.Count > 0 ? _columns[0].Number : 1);
        if (needed is not null)
            _faults.Add(new WorksheetFault(place, SheetFaultTexts.Lacks(needed)));
        else if (_mapping.States == SheetStates.Observations && answer.About["title"] is var title && !answer.About.ContainsKey("renderer")
            && _names.RenderersToChooseFrom(title.Value) is { Count: > 0 } renderers)
            _faults.Add(new WorksheetFault(title.Place, SheetFaultTexts.NoRenderer(title.Value, renderers.Select(renderer => renderer.Id))));
    }

    /// <summary>What the cell says; null where it is empty, says nothing, or is not explained.</summary>
    private Meaning? Answer(int row, FoundColumn column, IReadOnlyList<Meaning> ownWords)
    {
        var text = Text(row, column);
        if (text.Length == 0)
        {
            _blanks++;
            return null;
        }

        var plain = SheetMapping.Plain(text);
        var meaning = ownWords.Concat(_mapping.Words).FirstOrDefault(word => SheetMapping.Plain(word.Word) == plain) ?? Own(text);
        if (meaning is null)
        {
            _faults.Add(new WorksheetFault(_sheet.Place(row, column.Number), SheetFaultTexts.NotExplained(text, ownWords.Concat(_mapping.Words).Select(word => word.Word))));
            return null;
        }

        var key = (plain, meaning.Word);
        _met[key] = _met.TryGetValue(key, out var met) ? met with { Count = met.Count + 1 } : (text, meaning, 1);
        return meaning.IsSilent ? null : meaning;
    }

    /// <summary>Words of the format itself need no explanation.</summary>
    private Meaning? Own(string text)
    {
        var own = _mapping.States switch
        {
            SheetStates.Observations => text is "yes" or "no" or "emulated" or "broken",
            SheetStates.Facts => text is "yes" or "no" or "emulated" or "broken" or "none" || char.IsAsciiDigit(text[0]),
            SheetStates.Needs => text is "must" or "severe" or "cosmetic" or "ungraded" or "bonus",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return own || text == "unknown" ? new Meaning(text, text == "unknown", text, []) : null;
    }

    private string Text(int row, FoundColumn column)
    {
        var text = _sheet[row, column.Number];
        if (column.Mapped is null || !_mapping.FillDown.Any(heading => SheetMapping.Plain(heading) == SheetMapping.Plain(column.Mapped.Heading)))
            return text;
        return text.Length > 0 ? _above[column.Number] = text : _above.GetValueOrDefault(column.Number, "");
    }
}
