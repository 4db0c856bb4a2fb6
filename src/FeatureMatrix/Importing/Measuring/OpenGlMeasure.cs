using System.Globalization;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>An OpenGL report in the words of the vocabulary.</summary>
internal sealed class OpenGlMeasure
{
    /// <summary>The API's id in the vocabulary.</summary>
    public const string ApiId = "opengl";

    /// <summary>As the limit of a feature: the length in bytes of the string of that name.</summary>
    public const string ExtensionString = "GL_EXTENSIONS";

    private static readonly string[] VendorSuffixes = ["_ARB", "_EXT", "_NV", "_SGIS"];

    private readonly OpenGlProfile _profile;
    private readonly bool _isCompatible;
    private readonly HashSet<string> _names;
    private readonly Dictionary<string, double> _limits;

    private OpenGlMeasure(OpenGlReport report, OpenGlProfile profile)
    {
        _profile = profile;
        _isCompatible = report.Compatibility is not null;
        _names = [.. profile.Extensions, .. report.WindowSystem];
        _limits = profile.Limits.GroupBy(l => Plain(l.Name)).ToDictionary(g => g.Key, g => g.First().Values[0]);
    }

    public static MeasuredSupply Of(OpenGlReport report, IReadOnlyList<Feature> vocabulary)
    {
        var profile = report.Compatibility ?? report.Core;
        var api = vocabulary.FirstOrDefault(f => f.IsApi && f.Id == ApiId);
        if (profile is null || api is null)
            return new(new([]), new([]), new([]), report.Software);

        var measure = new OpenGlMeasure(report, profile);
        var yes = report.Software is null ? Support.Yes : Support.Emulated;
        var known = vocabulary.SelectMany(f => f.Detection.OpenGlExtensions).ToHashSet();
        var findings = vocabulary.Select(f => Finding.Of(f, [f == api ? measure.Level(api) : measure.Claim(f)])).ToList();
        var unmapped = profile.Extensions.Concat(report.WindowSystem).Where(e => !known.Contains(e));
        return Finding.Supply(api, findings, yes, unmapped, report.Software);
    }

    private Claim Claim(Feature feature)
    {
        var how = feature.Detection;
        var limit = how.OpenGlLimit is null ? null : Limit(feature, how.OpenGlLimit);
        if (how.OpenGlExtensions.Count == 0 && how.OpenGlCore is null)
            return limit ?? Measuring.Claim.Silent(feature);

        var hit = how.OpenGlExtensions.FirstOrDefault(_names.Contains);
        if (hit is null && how.OpenGlCore is { } core && IsInCore(core) is var isIn and not false)
        {
            if (isIn is null)
                return limit ?? Measuring.Claim.Silent(feature);
            hit = $"OpenGL {core}";
        }

        if (hit is null)
            return Ladder.Without(feature, string.Join(" ", how.OpenGlExtensions.DefaultIfEmpty($"OpenGL {how.OpenGlCore}")));
        // The extension alone promises the lowest level; the limit says which it is.
        return !feature.HasLevels
            ? Measuring.Claim.Has(feature, hit)
            : limit ?? Measuring.Claim.AtLeast(feature, 1, hit);
    }

    /// <summary>
    /// Whether the version contains what a core version brought. Unknown without a version, and in a core profile, which
    /// removed much of the old.
    /// </summary>
    private bool? IsInCore(string core)
    {
        if (!_isCompatible || _profile.Version is not { } version || OpenGlReportParser.VersionOf(core) is not { } needed)
            return null;
        return version.CompareTo(needed) >= 0;
    }

    /// <summary>Sizes of buffers (GL_DEPTH_BITS) belong to the window that was asked, so they say "at least"; maxima say "up to".</summary>
    private Claim? Limit(Feature feature, string name)
    {
        if (name == ExtensionString)
            return _profile.Extensions.Count == 0 ? null : Ladder.UpTo(feature, _profile.ExtensionStringLength, name);
        if (!_limits.TryGetValue(Plain(name), out var amount))
            return null;
        var sign = string.Create(CultureInfo.InvariantCulture, $"{name} = {amount}");
        return name.StartsWith("GL_MAX_", StringComparison.Ordinal)
            ? Ladder.UpTo(feature, amount, sign)
            : Ladder.AtLeast(feature, amount, sign);
    }

    private Claim Level(Feature api)
    {
        if (_profile.Version is not { } version)
            return Measuring.Claim.Silent(api);
        var step = 0;
        for (var i = 0; i < api.Levels.Count; i++)
        {
            if (OpenGlReportParser.VersionOf(api.Levels[i]) is { } level && version.CompareTo(level) >= 0)
                step = i + 1;
        }

        return Measuring.Claim.UpTo(step, $"GL_VERSION {version.Major}.{version.Minor}");
    }

    /// <summary>The name without the suffix of who first added it: limits kept their number when they became core.</summary>
    private static string Plain(string name)
    {
        var suffix = VendorSuffixes.FirstOrDefault(s => name.EndsWith(s, StringComparison.Ordinal));
        return suffix is null ? name : name[..^suffix.Length];
    }
}
