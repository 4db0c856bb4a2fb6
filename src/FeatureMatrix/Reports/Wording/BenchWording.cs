using System.Globalization;
using FeatureMatrix.Bench;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Wording;

/// <summary>What was run, and under what circumstances, in words.</summary>
public static class BenchWording
{
    // Settings come after these. From what tells lines of a chart apart best to what does least.
    private static readonly Func<Circumstances, string>[] Aspects =
    [
        one => one.Card.Name,
        one => one.Wrapper is { } wrapper ? $"through {Names.Of(wrapper)}" : "",
        one => one.Setting("factor") ?? "",
        one => one.Driver is { } driver ? Names.Of(driver) : "",
        one => one.Os?.Name ?? "",
        one => one.Renderer is { } renderer ? Names.Of(renderer) : "",
        one => one.Rig?.Name ?? "",
        one => one.Specimen?.Id ?? "",
        one => one.Depth is { } depth ? $"{Number(depth)} bit" : "",
    ];

    /// <summary>Title and scene.</summary>
    public static string Subject(Circumstances circumstances) =>
        circumstances.Scene.Length > 0 ? $"{circumstances.Title.Name}, {circumstances.Scene}" : circumstances.Title.Name;

    /// <summary>The route: renderer and wrapper.</summary>
    public static string Way(Circumstances circumstances)
    {
        var renderer = circumstances.Renderer is { } path ? Names.Of(path) : "renderer not noted";
        return circumstances.Wrapper is { } wrapper ? $"{renderer} through {Names.Of(wrapper)}" : renderer;
    }

    /// <summary>Everything but title and scene, as a header states it.</summary>
    public static string Setup(Circumstances circumstances) => string.Join(", ", new[]
    {
        circumstances.Card.Name,
        circumstances.Driver is { } driver ? Names.Of(driver) : "driver not noted",
        circumstances.Os?.Name ?? "system not noted",
        Way(circumstances),
        circumstances.Rig is { } rig ? $"on {Names.InMiddle(rig.Name)}" : "rig not noted",
        SettingsText(circumstances),
    }.Where(part => part.Length > 0));

    /// <summary>Colour depth and all settings.</summary>
    public static string SettingsText(Circumstances circumstances) => string.Join(", ",
        (circumstances.Depth is { } depth ? [$"{Number(depth)} bit"] : Array.Empty<string>())
            .Concat(circumstances.Settings.Select(setting => Setting(setting.Key, setting.Value))));

    /// <summary>A setting with its value: <c>sound off</c>, <c>4 samples</c>.</summary>
    public static string Setting(string name, string? value) => (name, value) switch
    {
        (_, null) => $"{name} not noted",
        ("samples", "1") => "1 sample",
        ("samples", _) => $"{value} samples",
        ("refresh", _) => $"{value} Hz",
        ("factor" or "filtering", _) => value,
        ("preset", _) => $"preset {value}",
        _ => $"{name} {value}",
    };

    /// <summary>
    /// A short name for each of several circumstances, no two alike where the circumstances differ: the card, and as much more as it takes.
    /// </summary>
    public static IReadOnlyList<string> Apart(IReadOnlyList<Circumstances> all)
    {
        var settings = all.SelectMany(one => one.Settings).Select(setting => setting.Key).Distinct(StringComparer.Ordinal)
            .Where(name => name != "factor").Order(StringComparer.Ordinal).Select(name => (Func<Circumstances, string>)(one => Setting(name, one.Setting(name))));
        var telling = Aspects.Concat(settings).Where(aspect => all.Select(one => aspect(one)).Distinct(StringComparer.Ordinal).Skip(1).Any()).ToList();
        if (telling.Count == 0)
            return all.Select(one => one.Card.Name).ToList();
        List<Func<Circumstances, string>> used = [];
        foreach (var aspect in telling)
        {
            used.Add(aspect);
            if (Named(used).Distinct(StringComparer.Ordinal).Count() == all.Count)
                break;
        }

        return Named(used);

        List<string> Named(List<Func<Circumstances, string>> aspects) => all
            .Select(one => string.Join(", ", aspects.Select(aspect => aspect(one)).Where(part => part.Length > 0)))
            .Select((name, i) => name.Length > 0 ? name : all[i].Card.Name).ToList();
    }

    /// <summary>The card, where all are of one, and the rig of the first: <c>Kite 2, on the loft bench</c>. May be empty.</summary>
    public static string Shared(IReadOnlyList<Circumstances> all)
    {
        var card = all.All(one => one.Card == all[0].Card) ? all[0].Card.Name : "";
        return string.Join(", ", new[] { card, all[0].Rig is { } rig ? $"on {Names.InMiddle(rig.Name)}" : "" }.Where(part => part.Length > 0));
    }

    /// <summary>A mode: <c>640x480</c>.</summary>
    public static string Of(Mode? mode) => mode?.ToString() ?? "mode not noted";

    /// <summary>A probability: <c>p = 0.034</c>, <c>p under 0.001</c>.</summary>
    public static string P(double p) => p < 0.001 ? "p under 0.001" : $"p = {p.ToString("0.###", CultureInfo.InvariantCulture)}";

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
