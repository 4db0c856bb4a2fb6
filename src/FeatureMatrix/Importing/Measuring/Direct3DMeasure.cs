using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>The Direct3D parts of a dump in the words of the vocabulary.</summary>
internal static class Direct3DMeasure
{
    /// <summary>The API's id in the vocabulary.</summary>
    public const string ApiId = "direct3d";

    public static MeasuredSupply Of(CapabilityDump dump, IReadOnlyList<Feature> vocabulary, uint drawDevice, uint adapter)
    {
        var api = vocabulary.FirstOrDefault(f => f.IsApi && f.Id == ApiId);
        if (api is null)
            return new(new([]), new([]), new([]), null);

        var generations = Generations(dump, drawDevice, adapter).ToList();
        var findings = vocabulary.Select(f => Finding.Of(f, Claims(api, f, generations))).ToList();
        return Finding.Supply(api, findings, Support.Yes, Unmapped(generations, vocabulary), null);
    }

    private static List<Claim> Claims(Feature api, Feature feature, IReadOnlyList<Direct3DGeneration> generations) =>
        feature == api ? [.. Direct3DLevel.Claims(api, generations)] : [.. generations.Select(g => g.Claim(feature))];

    private static IEnumerable<Direct3DGeneration> Generations(CapabilityDump dump, uint drawDevice, uint adapter)
    {
        var draw = dump.SectionsOf("directdraw").Where(s => IsNumber(s, drawDevice)).Take(1);
        var devices = dump.SectionsOf("direct3d7").Where(s => IsNumber(s, drawDevice) && Direct3DGeneration.IsHardware(s)).ToList();
        if (devices.Count > 0)
            yield return new Direct3DGeneration(7, [.. devices], [.. draw]);
        foreach (var (kind, number) in new[] { ("direct3d8", 8), ("direct3d9", 9) })
        {
            var section = dump.SectionsOf(kind).FirstOrDefault(s => IsNumber(s, adapter));
            if (section is not null && Direct3DGeneration.IsHardware(section))
                yield return new Direct3DGeneration(number, [section], []);
        }
    }

    private static bool IsNumber(DumpSection section, uint number) => section.Ordinals.Count > 0 && section.Ordinals[0] == number;

    /// <summary>Set bits and unnamed ones that no feature knows by their generation and name.</summary>
    private static IEnumerable<string> Unmapped(List<Direct3DGeneration> generations, IReadOnlyList<Feature> vocabulary)
    {
        var known = vocabulary.SelectMany(f => f.Detection.Direct3D).Select(s => (s.Generation, s.Constant)).ToHashSet();
        return generations.SelectMany(g => g.Sections.SelectMany(CapabilityDecoder.Decode).OfType<CapabilityFlag>()
                .Where(f => f.IsSet && !known.Contains((g.Number, f.Constant?.Name ?? "")))
                .Select(f => $"{f.Structure.Name}.{f.Member.Name} {f.Constant?.Name ?? $"0x{f.Bit:X8}"}"))
            .Distinct();
    }
}
