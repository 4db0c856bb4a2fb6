using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.OpenGl;

/// <summary>
/// What an OpenGL driver says of itself: read from the plain text that Mesa's information program prints, from labelled
/// lines (<c>GL_VENDOR: …</c>), from a bare extension string, or from a dump of the probe.
/// </summary>
/// <param name="Vendor">The vendor string; null where the report has none.</param>
/// <param name="Renderer">The renderer string; null where the report has none.</param>
/// <param name="Compatibility">The profile that old titles get; null where the report has none.</param>
/// <param name="Core">The core profile of newer drivers, which leaves out most old extensions; null where there is none.</param>
/// <param name="WindowSystem">Extensions of the window system that client and driver both have.</param>
/// <param name="Software">What gives the driver away as a software renderer; null for hardware or where nothing says so.</param>
/// <param name="Faults">In the order of the file; empty for a sound one.</param>
public sealed record OpenGlReport(
    string? Vendor,
    string? Renderer,
    OpenGlProfile? Compatibility,
    OpenGlProfile? Core,
    EquatableList<string> WindowSystem,
    SoftwareSign? Software,
    EquatableList<ImportFault> Faults)
{
    /// <summary>Reads a report. Never throws: what cannot be read is a fault, and the rest is still there.</summary>
    public static OpenGlReport Parse(ReadOnlySpan<byte> file) => OpenGlReportParser.Parse(file);
}

/// <summary>One profile of a driver.</summary>
/// <param name="VersionText">As the driver prints it; null for a bare extension string.</param>
/// <param name="ShadingLanguage">The shading language's version as printed; null where there is none.</param>
/// <param name="Extensions">In the order of the report, each once.</param>
/// <param name="Limits">In the order of the report, the first of each name.</param>
/// <param name="ReportedLength">The length in bytes of the extension string where the report gives it; else null.</param>
public sealed record OpenGlProfile(
    string? VersionText,
    string? ShadingLanguage,
    EquatableList<string> Extensions,
    EquatableList<OpenGlLimit> Limits,
    int? ReportedLength)
{
    /// <summary>Major and minor version; null where the driver's text does not begin with them.</summary>
    public (int Major, int Minor)? Version => OpenGlReportParser.VersionOf(VersionText);

    /// <summary>
    /// The length in bytes that a title receives in one string: as reported, else the names with one blank between them,
    /// which is the shortest it can be. Titles with a fixed buffer of 1 to 8 KiB fail when it is longer.
    /// </summary>
    public int ExtensionStringLength =>
        ReportedLength ?? Extensions.Sum(e => e.Length) + Math.Max(0, Extensions.Count - 1);

    /// <summary>The limit of a public name; null where the report does not have it.</summary>
    public OpenGlLimit? Limit(string name) => Limits.FirstOrDefault(l => l.Name == name);
}

/// <summary>A limit under its public name.</summary>
/// <param name="Name">For example <c>GL_MAX_TEXTURE_SIZE</c>.</param>
/// <param name="Values">One, or several for a vector or a range.</param>
public sealed record OpenGlLimit(string Name, EquatableList<double> Values);

/// <summary>What gives a software renderer away.</summary>
/// <param name="Where"><c>renderer</c>, <c>vendor</c>, <c>accelerated</c> or <c>pixel format</c>.</param>
/// <param name="Sign">The words found there.</param>
public sealed record SoftwareSign(string Where, string Sign);
