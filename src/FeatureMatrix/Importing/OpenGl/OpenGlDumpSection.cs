using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.OpenGl;

/// <summary>The OpenGL part of a dump as a report, so that both go the same way from here on.</summary>
public static class OpenGlDumpSection
{
    private const uint GenericFormat = 0x40;
    private const uint GenericAccelerated = 0x1000;

    /// <summary>
    /// The report of an <c>opengl</c> section. A pixel format that is generic without being accelerated belongs to the
    /// system's own software renderer (PFD_GENERIC_FORMAT and PFD_GENERIC_ACCELERATED in wingdi.h).
    /// </summary>
    public static OpenGlReport ToReport(DumpSection section)
    {
        var renderer = section.Text("renderer");
        var vendor = section.Text("vendor");
        var flags = section.Field("PIXELFORMATDESCRIPTOR", "dwFlags") ?? 0;
        var isGeneric = (flags & GenericFormat) != 0 && (flags & GenericAccelerated) == 0;
        var length = section.Entries.OfType<ExtensionLengthEntry>().FirstOrDefault(e => e.Kind == "gl");
        var profile = section.Text("version") is { } version
            ? new OpenGlProfile(
                version,
                section.Text("shading-language"),
                Names(section, "gl"),
                new(section.Entries.OfType<LimitEntry>().DistinctBy(l => l.Name)
                    .Select(l => new OpenGlLimit(l.Name, new(l.Values.Select(v => (double)v))))),
                (int?)length?.Bytes)
            : null;
        return new OpenGlReport(
            vendor,
            renderer,
            profile,
            null,
            Names(section, "wgl"),
            SoftwareRenderers.SignOf(renderer, vendor) ?? (isGeneric ? new SoftwareSign("pixel format", "generic") : null),
            new([]));
    }

    private static EquatableList<string> Names(DumpSection section, string kind) =>
        new(section.Entries.OfType<ExtensionEntry>().Where(e => e.Kind == kind).Select(e => e.Name).Distinct());
}
