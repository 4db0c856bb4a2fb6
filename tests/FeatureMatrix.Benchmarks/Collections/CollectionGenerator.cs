using System.Globalization;
using System.Text;
using FeatureMatrix.Model;

namespace FeatureMatrix.Benchmarks.Collections;

/// <summary>
/// Writes an invented collection of realistic shape as YAML, the same for the same size and seed: titles share the needs of their engine and
/// deviate one by one, cards share their chip's supply and deviate one by one, drivers add and take away; 14 of 100 statements about supply
/// are left out, some needs are conditional, alternative or not graded, some renderers break where a feature is present, and three wrappers
/// of three versions offer Glide and Direct3D.
/// </summary>
internal sealed class CollectionGenerator
{
    private static readonly string[] Ninex = ["windows-98", "windows-98se"];
    private static readonly string[] Nt = ["windows-2000", "windows-xp"];

    private readonly CollectionSize _size;
    private readonly IReadOnlyList<Feature> _features;
    private readonly Random _random;
    private readonly double _deviating;
    private readonly Dictionary<string, string> _files = [];

    private CollectionGenerator(CollectionSize size, IReadOnlyList<Feature> features, int seed, bool allDifferent)
    {
        _size = size;
        _features = features;
        _random = new Random(seed);
        _deviating = allDifferent ? 1 : 0.2;
    }

    /// <summary>The files of a collection by name.</summary>
    /// <param name="size">How much of everything.</param>
    /// <param name="features">The features of the vocabulary.</param>
    /// <param name="seed">Another seed is another collection.</param>
    /// <param name="allDifferent">True for titles and setups that share nothing.</param>
    public static IReadOnlyDictionary<string, string> Generate(CollectionSize size, IReadOnlyList<Feature> features, int seed, bool allDifferent = false)
    {
        var generator = new CollectionGenerator(size, features, seed, allDifferent);
        generator._files["collection.yaml"] = $"collection: {{name: Generated {size.Name}, note: Made by a program for its benchmarks.}}\nsources: {{notes: {{text: Notes of the bench, grade: documented}}, looks: {{text: Seen on the screen, grade: measured}}}}\n";
        generator.Chips();
        generator.Cards();
        generator.Drivers();
        generator.Wrappers();
        generator.Engines();
        generator.Titles();
        generator._files["libraries.yaml"] = $"libraries:\n  everything:\n    name: Everything\n    titles: [{string.Join(", ", Enumerable.Range(0, size.Titles).Select(title => $"title-{Text(title)}"))}]\n";
        return generator._files;
    }

    private static string Text(int number) => number.ToString("00000", CultureInfo.InvariantCulture);

    private bool Happens(double share) => _random.NextDouble() < share;

    private T Any<T>(IReadOnlyList<T> list) => list[_random.Next(list.Count)];

    /// <summary>A capability: the feature, with a level where it has levels.</summary>
    private string Capability(Feature feature) => feature.HasLevels ? $"{feature.Id} {feature.Levels[_random.Next((feature.Levels.Count + 1) / 2)]}" : feature.Id;

    private string Supply(Feature feature)
    {
        if (feature.HasLevels)
            return Happens(0.2) ? "none" : $"\"{Any(feature.Levels)}\"";
        var draw = _random.NextDouble();
        return draw switch { < 0.68 => "yes", < 0.9 => "no", < 0.95 => "emulated", _ => "broken" };
    }

    private void Chips()
    {
        var text = new StringBuilder("chips:\n");
        for (var chip = 0; chip < _size.Chips; chip++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  chip-{Text(chip)}:\n    name: Chip {Text(chip)}\n    year: {1995 + (chip % 10)}\n    source: notes\n    supply:\n");
            foreach (var feature in _features.Where(_ => !Happens(0.14)))
                text.Append(CultureInfo.InvariantCulture, $"      {feature.Id}: {Supply(feature)}\n");
        }

        _files["chips.yaml"] = text.ToString();
    }

    private void Cards()
    {
        var sizes = new[] { 4, 8, 16, 16, 32, 64 };
        var text = new StringBuilder("cards:\n");
        for (var card = 0; card < _size.Cards; card++)
        {
            text.Append(CultureInfo.InvariantCulture, $$"""
                  card-{{Text(card)}}:
                    name: Card {{Text(card)}}
                    chip: chip-{{Text(card % _size.Chips)}}
                    source: notes
                    memory: {unified: {{Any(sizes)}} MiB, textures-from-system: {{(Happens(0.8) ? "yes" : "no")}}}
                    drivers-complete: [dos, windows-95, windows-98, windows-98se, windows-me, windows-2000, windows-xp]

                """);
            if (Happens(_deviating))
                text.Append(CultureInfo.InvariantCulture, $"    supply: {{{Deviation(_size.Cards > 100 ? 2 : 1)}}}\n");
        }

        _files["cards.yaml"] = text.ToString();
    }

    private string Deviation(int count) => string.Join(", ", Enumerable.Range(0, count).Select(_ => Any(_features)).DistinctBy(feature => feature.Id)
        .Select(feature => $"{feature.Id}: {{{(feature.HasLevels ? $"level: {Supply(feature)}" : $"is: {Supply(feature)}")}, source: looks}}".Replace("level: none", "is: no", StringComparison.Ordinal)));

    private void Drivers()
    {
        for (var chip = 0; chip < _size.Chips; chip++)
        {
            var cards = string.Join(", ", Enumerable.Range(0, _size.Cards).Where(card => card % _size.Chips == chip).Select(card => $"card-{Text(card)}"));
            var text = new StringBuilder("drivers:\n");
            foreach (var (line, systems) in new[] { ("9x", Ninex), ("nt", Nt) })
            {
                text.Append(CultureInfo.InvariantCulture, $"  driver-{Text(chip)}-{line}:\n    name: Driver {Text(chip)} {line}\n    os: [{string.Join(", ", systems)}]\n    lists: [{cards}]\n    source: notes\n    versions:\n");
                var level = 5 + _random.Next(3);
                for (var version = 1; version <= _size.Versions; version++)
                {
                    level = Math.Min(9, level + (Happens(0.4) ? 1 : 0));
                    text.Append(CultureInfo.InvariantCulture, $"      - {{version: \"{version}.0\", offers: {{direct3d: \"{level}\"{(Happens(0.8) ? $", opengl: \"1.{level - 4}\"" : "")}{(Happens(0.1) ? ", glide: \"2\"" : ", glide: none")}}}");
                    text.Append(Happens(_deviating * 2) ? $", supply: {{{Deviation(2)}}}}}\n" : "}\n");
                }
            }

            _files[$"drivers/driver-{Text(chip)}.yaml"] = text.ToString();
        }
    }

    private void Wrappers()
    {
        var text = new StringBuilder("wrappers:\n");
        foreach (var (name, offers, on) in new[] { ("pane", "glide: \"2\"", "direct3d 7"), ("shutter", "glide: \"2\"", "opengl 1.3"), ("lattice", "direct3d: \"7\"", "direct3d 8") })
        {
            text.Append(CultureInfo.InvariantCulture, $"  {name}:\n    name: {name}\n    source: notes\n    versions:\n");
            for (var version = 1; version <= 3; version++)
            {
                var own = _features.Where(feature => !feature.HasLevels && Happens(0.15)).ToList();
                var supplies = own.Select(feature => $"{feature.Id}: {(Happens(0.8) ? "emulated" : "broken")}").ToList();
                var passes = _features.Except(own).Where(_ => Happens(0.75)).Select(feature => feature.Id).ToList();
                text.Append(CultureInfo.InvariantCulture, $"      - version: \"{version}\"\n        offers: {{{offers}}}\n        on: {on}\n        supplies: {{{string.Join(", ", supplies)}}}\n        passes: [{string.Join(", ", passes)}]\n");
                text.Append(CultureInfo.InvariantCulture, $"        complete: {(version < 3 ? "yes" : "no")}\n        needs: [{Capability(Any(_features))}]\n        memory: {version * 4} MiB\n");
                text.Append(CultureInfo.InvariantCulture, $"        os: {{windows-98: {(version < 3 ? "yes" : "no")}, windows-98se: yes, windows-2000: yes, windows-xp: {(version > 1 ? "yes" : "unknown")}}}\n");
            }
        }

        _files["wrappers.yaml"] = text.ToString();
    }

    private void Engines()
    {
        var text = new StringBuilder("engines:\n");
        for (var engine = 0; engine < _size.Engines; engine++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  engine-{Text(engine)}:\n    name: Engine {Text(engine)}\n    source: notes\n    renderers:\n");
            foreach (var api in Apis())
                Renderer(text, api);
        }

        _files["engines.yaml"] = text.ToString();
    }

    private IEnumerable<string> Apis()
    {
        yield return $"direct3d {5 + _random.Next(4)}";
        if (Happens(0.5))
            yield return $"opengl 1.{1 + _random.Next(3)}";
        if (Happens(0.25))
            yield return "glide 2";
    }

    private void Renderer(StringBuilder text, string api)
    {
        text.Append(CultureInfo.InvariantCulture, $"      {api.Split(' ')[0]}:\n        api: {api}\n        needs:\n");
        var left = _features.ToList();
        foreach (var (strength, count) in new[] { ("must", 1 + _random.Next(2)), ("severe", _random.Next(1, 4)), ("cosmetic", _random.Next(1, 5)), ("ungraded", Happens(0.12) ? 1 : 0), ("bonus", _random.Next(2)) })
        {
            var needs = Enumerable.Range(0, count).Select(_ => Need(left)).ToList();
            if (needs.Count > 0)
                text.Append(CultureInfo.InvariantCulture, $"          {strength}: [{string.Join(", ", needs)}]\n");
        }

        if (Happens(0.06))
            text.Append(CultureInfo.InvariantCulture, $"        defects: [{{if-present: {Capability(Take(left))}, effect: The picture turns white}}]\n");
        var depth = Happens(0.3) ? "[16, 32]" : "[16]";
        var presets = Happens(0.5) ? $", presets: [{{name: low, textures: 1 MiB, format: 16-bit, measured: yes}}, {{name: high, textures: {2 + _random.Next(3) * 6} MiB, format: {(Happens(0.3) ? "8-bit-palette" : "16-bit")}}}]" : "";
        text.Append(CultureInfo.InvariantCulture, $"        memory: {{lowest: {(Happens(0.7) ? "640x480" : "800x600")}, depths: {depth}{presets}}}\n");
    }

    private string Need(List<Feature> left)
    {
        var first = Capability(Take(left));
        if (Happens(0.08))
            return $"{{any-of: [{first}, {Capability(Take(left))}]}}";
        if (Happens(0.06))
            return $"{{need: {first}, when: {{depth: 32}}}}";
        return Happens(0.15) ? $"{{need: {first}, broken: severe}}" : first;
    }

    private Feature Take(List<Feature> left)
    {
        var i = _random.Next(left.Count);
        var feature = left[i];
        left.RemoveAt(i);
        return feature;
    }

    private void Titles()
    {
        const int InOneFile = 1_000;
        for (var start = 0; start < _size.Titles; start += InOneFile)
        {
            var text = new StringBuilder("titles:\n");
            for (var title = start; title < Math.Min(start + InOneFile, _size.Titles); title++)
            {
                text.Append(CultureInfo.InvariantCulture, $"  title-{Text(title)}:\n    name: Title {Text(title)}\n    year: {1996 + (title % 10)}\n    engine: engine-{Text(_random.Next(_size.Engines))}\n    genre: racing\n    os: [windows-98, windows-98se, windows-2000{(Happens(0.5) ? ", windows-xp" : "")}]\n    source: notes\n");
                if (Happens(_deviating))
                    text.Append(CultureInfo.InvariantCulture, $"    renderers:\n      direct3d:\n        like-engine: direct3d\n        needs:\n          {(Happens(0.5) ? "severe" : "cosmetic")}: [{Capability(Any(_features))}]\n");
            }

            _files[$"titles/titles-{Text(start)}.yaml"] = text.ToString();
        }
    }
}
