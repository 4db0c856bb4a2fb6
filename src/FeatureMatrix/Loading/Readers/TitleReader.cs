using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Engines and titles.</summary>
internal sealed class TitleReader(Draft draft)
{
    /// <summary>The value that takes an engine's renderer over as it is.</summary>
    private const string AsInEngine = "like-engine";

    private readonly RendererReader _renderers = new(draft);
    private readonly HazardReader _hazards = new(draft);

    private FaultList Faults => draft.Faults;

    /// <summary>One engine's profile.</summary>
    public Engine Engine(Shelf<Engine>.Item item)
    {
        var provenance = Provenance.Of(item, draft);
        var renderers = new Dictionary<string, RendererParts>();
        foreach (var (key, value) in item.Fields.Entries("renderers").Where(entry => Ids.Check(entry.Key, Faults)))
        {
            if (Fields.Of(value, $"renderer '{key.Text}' of {item.Fields.Label}", Faults) is not { } fields)
                continue;
            renderers.Add(key.Text, _renderers.Read(fields, provenance));
            fields.Done();
        }

        return new Engine(item.Fields.RequiredText("name"), renderers);
    }

    /// <summary>One title with its renderers. A title of an engine that lists no renderers has all of the engine's.</summary>
    public Title Build(Shelf<Title>.Item item)
    {
        var fields = item.Fields;
        var provenance = Provenance.Of(item, draft);
        var engine = fields.Word("engine") is { } word ? draft.Engines.Find(word, Faults) : null;
        var title = new Title
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            Version = fields.Text("version"),
            Year = fields.Value("year", Quantities.Year),
            Engine = engine?.Name ?? "",
            Genre = fields.Text("genre"),
            Hazards = [.. fields.Items("hazards").Select(node => _hazards.Read(node, provenance)).OfType<TimingHazard>()],
            Notes = fields.Text("notes"),
            Evidence = provenance.At(item.Origin),
        };
        var usual = draft.References.All(draft.Oses, fields.List("os"));
        if (!fields.Has("renderers") && !fields.Has("engine"))
            Faults.Add(FaultTexts.MissingKey(item.Origin, "renderers", fields.Label));
        var parts = fields.Has("renderers")
            ? Own(item, engine, provenance)
            : engine?.Renderers.Select(pair => (pair.Key, pair.Value with { Origin = item.Origin })) ?? [];
        title.Link([.. parts.Select(p => _renderers.Build(p.Item2, p.Key, title, usual)).OfType<Renderer>()]);
        return title;
    }

    private List<(string Key, RendererParts)> Own(Shelf<Title>.Item item, Engine? engine, Provenance provenance)
    {
        var result = new List<(string, RendererParts)>();
        foreach (var (key, value) in item.Fields.Entries("renderers").Where(entry => Ids.Check(entry.Key, Faults)))
        {
            if (value is Scalar { Text: AsInEngine } word)
            {
                if (OfEngine(word, key.Text, item, engine) is { } whole)
                    result.Add((key.Text, whole with { Origin = key.Origin }));
                continue;
            }

            if (Fields.Of(value, $"renderer '{key.Text}' of {item.Fields.Label}", Faults) is not { } fields)
                continue;
            var parts = _renderers.Read(fields, provenance) with { Origin = key.Origin };
            if (fields.Word(AsInEngine) is { } like && OfEngine(like, like.Text.Trim(), item, engine) is { } profile)
                parts = parts.Over(profile);
            fields.Done();
            result.Add((key.Text, parts));
        }

        return result;
    }

    private RendererParts? OfEngine(Scalar word, string id, Shelf<Title>.Item item, Engine? engine)
    {
        if (engine is not null && engine.Renderers.TryGetValue(id, out var parts))
            return parts;
        if (engine is not null)
            Faults.Add(FaultTexts.Unknown(word.Origin, $"renderer of engine '{engine.Name}'", id, engine.Renderers.Keys));
        else if (!item.Fields.Has("engine"))
            Faults.Add(FaultTexts.MissingKey(word.Origin, "engine", item.Fields.Label));
        return null;
    }
}
