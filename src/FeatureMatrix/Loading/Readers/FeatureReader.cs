using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Features and APIs.</summary>
internal sealed class FeatureReader(Draft draft)
{
    /// <summary>The top-level key whose entries are APIs.</summary>
    public const string ApiSection = "apis";

    /// <summary>Red, green, blue and alpha.</summary>
    private const int ChannelCount = 4;

    /// <summary>One feature or API, without its implications.</summary>
    public Feature Build(Shelf<Feature>.Item item)
    {
        var fields = item.Fields;
        var isApi = item.Section == ApiSection;
        var levels = Levels(fields);
        return new Feature
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            Family = isApi ? "api" : fields.RequiredText("family"),
            Levels = levels,
            Unit = fields.Text("unit"),
            Meaning = fields.Text("meaning"),
            SeenWhenMissing = fields.Text("missing"),
            Detection = Detection(fields, levels),
            IsApi = isApi,
            NeedsRuntime = isApi && (fields.YesNo("runtime") ?? false),
            Evidence = Provenance.Of(item, draft).At(item.Origin),
        };
    }

    /// <summary>Completes the implications once all features exist.</summary>
    public void Link()
    {
        var implied = draft.Features.Made.ToDictionary(made => made.Item.Id, made => made.Item.Fields.List("implies"));
        foreach (var (item, feature) in draft.Features.Made)
        {
            var words = implied[item.Id];
            if (words.Any(word => LeadsTo(word, item.Id, implied, [])))
                draft.Faults.Add(FaultTexts.Cycle(item.Fields.OriginOf("implies"), draft.Features.Kind, item.Id, "implies"));
            else
                feature.Link([.. words.Select(draft.References.Capability).OfType<Capability>()]);
        }
    }

    private static bool LeadsTo(
        Scalar word, string id, Dictionary<string, IReadOnlyList<Scalar>> implied, HashSet<string> seen)
    {
        var next = word.Text.Trim().Split(' ')[0];
        return next == id
            || (seen.Add(next)
                && implied.TryGetValue(next, out var further)
                && further.Any(w => LeadsTo(w, id, implied, seen)));
    }

    private List<string> Levels(Fields fields)
    {
        var levels = new List<string>();
        foreach (var word in fields.List("levels"))
        {
            var level = word.Text.Trim();
            if (HasOtherMeaning(level))
                draft.Faults.Add(FaultTexts.NoNameOfALevel(word.Origin, level));
            else if (levels.Contains(level))
                draft.Faults.Add(FaultTexts.Twice(word.Origin, "level", level, fields.Label));
            else
                levels.Add(level);
        }

        return levels;
    }

    private static bool HasOtherMeaning(string level) =>
        level.Length == 0 || level.EndsWith('+') || level is "none" or "no" or "unknown" or "yes" or "broken" or "emulated";

    private Detection Detection(Fields fields, List<string> levels)
    {
        var openGl = fields.Inner("opengl");
        var result = new Detection
        {
            OpenGlCore = NullIfEmpty(openGl?.Text("core")),
            OpenGlLimit = NullIfEmpty(openGl?.Text("limit")),
            OpenGlExtensions = openGl is null ? [] : [.. openGl.List("extensions").Select(word => word.Text.Trim())],
            Direct3D =
            [
                .. fields.Items("direct3d")
                    .Select(node => Fields.Of(node, "'direct3d'", draft.Faults)).OfType<Fields>()
                    .Select(sign => Sign(sign, levels)).OfType<Direct3DSign>(),
            ],
        };
        openGl?.Done();
        return result;
    }

    private static Direct3DSign? Sign(Fields fields, List<string> levels)
    {
        var generation = fields.Value("generation", Quantities.Whole(7, 9));
        if (!fields.Has("generation"))
            fields.Faults.Add(FaultTexts.MissingKey(fields.Origin, "generation", fields.Label));
        var field = fields.RequiredText("field");
        var constant = fields.Text("constant");
        var value = fields.Value("value", Bits) ?? 0;
        var inverted = fields.YesNo("inverted") ?? false;
        var level = fields.Text("level");
        if (level.Length > 0 && !levels.Contains(level))
            fields.Faults.Add(FaultTexts.NotOneOf(fields.OriginOf("level"), "'level'", level, levels));
        var channels = fields.List("channels").Select(word => Quantities.Whole(0, 32)(word, "'channels'", fields.Faults)).OfType<int>().ToList();
        if (channels.Count is not (0 or ChannelCount))
            fields.Faults.Add(FaultTexts.WrongForm(fields.OriginOf("channels"), "'channels'", string.Join(", ", channels), Forms.Channels));
        fields.Done();
        return generation is { } g ? new Direct3DSign(g, field, constant, value, inverted) { Level = level, Channels = channels } : null;
    }

    /// <summary>A number of 32 bits, decimal or hexadecimal with <c>0x</c>.</summary>
    private static uint? Bits(Scalar word, string label, FaultList faults)
    {
        var text = word.Text.Trim();
        var bits = text.StartsWith("0x", StringComparison.Ordinal) ? Digits.Hexadecimal(text.AsSpan(2)) : Digits.Unsigned(text);
        if (bits is not null)
            return bits;
        faults.Add(FaultTexts.WrongForm(word.Origin, label, text, Forms.Bits));
        return null;
    }

    private static string? NullIfEmpty(string? text) => string.IsNullOrEmpty(text) ? null : text;
}
