using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>
/// Finds what the names in a sheet mean: first by the mapping, then as an id or a name of the collection, whose capitals and blanks do not
/// matter. A title that is neither may be added.
/// </summary>
internal sealed class SheetNames(Catalog catalog, IReadOnlyList<Title> titles, SheetMapping mapping)
{
    private readonly SortedDictionary<string, Placed> _newTitles = new(StringComparer.Ordinal);

    /// <summary>Titles that the collection lacks: id to name.</summary>
    public IReadOnlyDictionary<string, Placed> NewTitles => _newTitles;

    /// <summary>Puts what a name means among the things that an answer is about.</summary>
    public void Put(Dictionary<string, Placed> about, string key, string text, string place)
    {
        var meaning = mapping.Names.FirstOrDefault(name => SheetMapping.Plain(name.Word) == SheetMapping.Plain(text));
        if (meaning is null || key is not ("title" or "renderer" or "card" or "specimen" or "driver" or "os" or "wrapper" or "rig" or "chip" or "api" or "feature"))
        {
            about[key] = new Placed(Found(key, text, place), place);
            return;
        }

        if (meaning.Value.Length > 0)
            about[key] = new Placed(Found(key, meaning.Value, place), place);
        foreach (var given in meaning.Keys)
            about[given.Key] = new Placed(given.Value, SheetReading.Place(given.Origin));
    }

    /// <summary>The renderers of a title of the collection, of which an answer has to name one; empty where there is no choice.</summary>
    public IReadOnlyList<Renderer> RenderersToChooseFrom(string title) =>
        titles.FirstOrDefault(one => one.Id == title) is { Renderers.Count: > 1 } found ? found.Renderers : [];

    /// <summary>A feature by id, with its level if it has one, or by name.</summary>
    public string Feature(string text) => Known(text, catalog.Features, feature => feature.Id, feature => feature.Name) ?? text;

    private string Found(string key, string text, string place) => key switch
    {
        "title" => Known(text, titles, title => title.Id, title => title.Name) ?? Added(text, place),
        "card" => Known(text, catalog.Cards, card => card.Id, card => card.Name) ?? text,
        "chip" => Known(text, catalog.Chips, chip => chip.Id, chip => chip.Name) ?? text,
        "os" => Known(text, catalog.Oses, os => os.Id, os => os.Name) ?? text,
        "rig" => Known(text, catalog.Rigs, rig => rig.Id, rig => rig.Name) ?? text,
        "feature" => Feature(text),
        _ => text,
    };

    private string Added(string text, string place)
    {
        if (mapping.NewTitles is null || PlainWords.AsId(text) is not { Length: > 0 } id || titles.Any(title => title.Id == id))
            return text;
        _newTitles.TryAdd(id, new Placed(text, place));
        return id;
    }

    private static string? Known<T>(string text, IReadOnlyList<T> all, Func<T, string> id, Func<T, string> name)
    {
        var plain = SheetMapping.Plain(text);
        var found = all.Where(one => id(one) == text).DefaultIfEmpty().First();
        if (found is not null)
            return id(found);
        var named = all.Where(one => SheetMapping.Plain(name(one)) == plain).ToList();
        return named.Count == 1 ? id(named[0]) : null;
    }
}
