using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Imports;

/// <summary>Which features a public name speaks of, and how many titles ask for them.</summary>
public sealed class SignIndex
{
    private readonly IReadOnlyList<Feature> _features;
    private readonly Dictionary<Feature, List<Title>> _askers;

    /// <summary>Looks the needs of the titles up once.</summary>
    public SignIndex(IReadOnlyList<Feature> features, IReadOnlyList<Title> titles)
    {
        _features = features;
        _askers = titles
            .SelectMany(title => title.Renderers.SelectMany(renderer => renderer.Needs.SelectMany(need => need.Choices.Select(choice => choice.Feature))
                .Concat(renderer.Defects.Select(defect => defect.IfPresent?.Feature).OfType<Feature>())
                .Concat(renderer.Api is { } api ? [api.Feature] : [])).Select(feature => (feature, title)))
            .Distinct().GroupBy(pair => pair.feature, pair => pair.title).ToDictionary(group => group.Key, group => group.ToList());
    }

    /// <summary>Features that a bit of a structure speaks of.</summary>
    public IReadOnlyList<Feature> OfConstant(int generation, string constant) =>
        [.. _features.Where(feature => feature.Detection.Direct3D.Any(sign => sign.Generation == generation && sign.Constant == constant))];

    /// <summary>Features whose level is the number in a field; Direct3D 7 puts a letter for the type before each name.</summary>
    public IReadOnlyList<Feature> OfField(int generation, string member)
    {
        var name = member[(member.LastIndexOf('.') + 1)..];
        return
        [
            .. _features.Where(feature => feature.Detection.Direct3D.Any(sign => sign.Generation == generation && sign.Constant.Length == 0
                && (sign.Field == member || sign.Field == name || (generation == 7 && (name == "dw" + sign.Field || name == "w" + sign.Field))))),
        ];
    }

    /// <summary>Features that a texture format of Direct3D 7 speaks of, by its flags, its channels or its four-character code; or a depth format.</summary>
    public IReadOnlyList<Feature> OfPixelFormat(PixelFormatEntry format)
    {
        ArgumentNullException.ThrowIfNull(format);
        return
        [
            .. _features.Where(feature => feature.Detection.Direct3D.Any(sign => sign is { Generation: 7 } && (format.Use, sign.Field) switch
            {
                ("texture", "formats") => Direct3DFormats.Matches(sign, format),
                ("depth", Direct3DFormats.Depth) => (format.Flags & sign.Value) != 0,
                _ => false,
            })),
        ];
    }

    /// <summary>Features that an extension or an OpenGL limit speaks of.</summary>
    public IReadOnlyList<Feature> OfOpenGl(string name) =>
        [.. _features.Where(feature => feature.Detection.OpenGlLimit == name || feature.Detection.OpenGlExtensions.Contains(name))];

    /// <summary>Features that a decoded bit or number speaks of.</summary>
    public IReadOnlyList<Feature> Of(DecodedCapability decoded) => decoded switch
    {
        CapabilityFlag { Constant: { } constant } => OfConstant(decoded.Structure.Generation, constant.Name),
        CapabilityFlag => [],
        CapabilityLimit { Constant: { } mask } => OfConstant(decoded.Structure.Generation, mask.Name),
        CapabilityLimit => OfField(decoded.Structure.Generation, decoded.Member.Name),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The titles that ask for any of these features, by name; also those that break where it is present.</summary>
    public IReadOnlyList<Title> AskersOf(IEnumerable<Feature> features) =>
        [.. features.SelectMany(feature => _askers.GetValueOrDefault(feature) ?? []).Distinct().OrderBy(title => title.Name, StringComparer.Ordinal)];
}
