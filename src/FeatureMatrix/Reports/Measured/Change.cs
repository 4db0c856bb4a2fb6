using FeatureMatrix.Bench;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>The one thing in which two series of the same scene differ.</summary>
/// <param name="What">Its name, for example <c>driver</c>.</param>
/// <param name="A">Its value on the side that is compared.</param>
/// <param name="B">Its value on the side that percentages refer to.</param>
public sealed record Change(string What, string A, string B)
{
    private const string Factor = "factor";

    /// <summary>
    /// The change from B to A; null where the scenes differ, nothing does or more than one thing. Another card or system brings its own driver, another
    /// card its own specimen, and so may a factor: in DOS a linear frame buffer often comes with a VESA extension.
    /// </summary>
    public static Change? Between(Circumstances a, Circumstances b)
    {
        if (a.Title != b.Title || a.Scene != b.Scene)
            return null;
        List<Change> changes =
        [
            .. Of("card", a.Card, b.Card, card => card.Name),
            .. Of("system", a.Os, b.Os, os => os.Name),
            .. Settings(a, b).OrderByDescending(change => change.What == Factor),
            .. Of("specimen", a.Specimen, b.Specimen, specimen => specimen.Id),
            .. Of("driver", a.Driver, b.Driver, driver => a.Driver?.Branch == b.Driver?.Branch ? $"driver {driver.Version}" : Names.Of(driver)),
            .. Of("wrapper", a.Wrapper, b.Wrapper, Names.Of, "no wrapper"),
            .. Of("renderer", a.Renderer, b.Renderer, Names.Of),
            .. Of("rig", a.Rig, b.Rig, rig => rig.Name),
            .. Of("colour depth", a.Depth, b.Depth, depth => $"{depth} bit"),
        ];
        if (changes.Count == 0)
            return null;
        var first = changes[0];
        return changes.Skip(1).All(change => Follows(change.What, first.What)) ? first : null;
    }

    /// <summary>
    /// Whether the second series is the natural base of a comparison: without a wrapper, the older driver of a branch, a setting that is off, the
    /// fewer samples; else the one that was logged first.
    /// </summary>
    public static bool IsBase(Circumstances first, Circumstances second)
    {
        if (first.Wrapper != second.Wrapper)
            return second.Wrapper is null;
        if (first.Driver is { } driver && second.Driver is { } other && driver.Branch == other.Branch && driver != other)
            return other.Order < driver.Order;
        if (first.Samples != second.Samples)
            return second.Samples < first.Samples;
        return first.Settings.Any(setting => setting.Value == "on" && second.Setting(setting.Key) == "off");
    }

    private static bool Follows(string what, string cause) => what switch
    {
        "driver" => cause is "card" or "system" or Factor,
        "specimen" => cause is "card",
        _ => false,
    };

    private static IEnumerable<Change> Of<T>(string what, T? a, T? b, Func<T, string> name, string none = "not noted")
    {
        if (!Equals(a, b))
            yield return new Change(what, a is null ? none : name(a), b is null ? none : name(b));
    }

    private static IEnumerable<Change> Settings(Circumstances a, Circumstances b) =>
        a.Settings.Concat(b.Settings).Select(setting => setting.Key).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Where(name => a.Setting(name) != b.Setting(name))
            .Select(name => new Change(name, BenchWording.Setting(name, a.Setting(name)), BenchWording.Setting(name, b.Setting(name))));
}
