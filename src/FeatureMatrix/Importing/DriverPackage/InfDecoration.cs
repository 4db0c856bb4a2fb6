using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>
/// The operating system decoration of a section name, <c>nt[architecture].[major[.minor[.product[.suite]]]]</c>.
/// A part that is null is left open by the decoration.
/// Source: Windows driver documentation, "INF Manufacturer Section", "TargetOSVersion".
/// </summary>
/// <param name="Text">The decoration as written, without the dot before it.</param>
/// <param name="Architecture">x86, amd64, ia64, arm or arm64 in lower case.</param>
/// <param name="Major">Lowest major version.</param>
/// <param name="Minor">Lowest minor version.</param>
/// <param name="Product">Product type; 1 is a workstation.</param>
/// <param name="Suite">Suites that must all be present, as a mask.</param>
public sealed record InfDecoration(string Text, string? Architecture, int? Major, int? Minor, int? Product, int? Suite)
{
    private const int Workstation = 1;

    /// <summary>Whether the decoration admits a plain x86 workstation of this version.</summary>
    public bool Admits(TargetWindows os) =>
        os.Family == WindowsFamily.Nt
        && Architecture is null or "x86"
        && (Major ?? 0, Minor ?? 0).CompareTo((os.Major, os.Minor)) <= 0
        && Product is null or Workstation
        && Suite is null or 0;

    /// <summary>
    /// Orders decorations that admit one system, the closest last: a version number outweighs everything, then the
    /// architecture, then the product type.
    /// </summary>
    public (int Major, int Minor, bool Architecture, bool Product) Closeness => (Major ?? 0, Minor ?? 0, Architecture is not null, Product is not null);

    /// <summary>Reads a decoration, or null where it does not follow its form.</summary>
    public static InfDecoration? Parse(string text)
    {
        var parts = text.Split('.');
        var platform = parts[0].ToLowerInvariant();
        if (platform is not ("nt" or "ntx86" or "ntamd64" or "ntia64" or "ntarm" or "ntarm64") || parts.Length > 6)
            return null;
        var numbers = new int?[5];
        for (var i = 1; i < parts.Length; i++)
        {
            if (parts[i].Length == 0)
                continue;
            if (Number(parts[i]) is not { } value)
                return null;
            numbers[i - 1] = value;
        }

        return new InfDecoration(text, platform.Length > 2 ? platform[2..] : null, numbers[0], numbers[1], numbers[2], numbers[3]);
    }

    private static int? Number(string text) =>
        text.StartsWith("0x", StringComparison.OrdinalIgnoreCase)
            ? Digits.Hexadecimal(text.AsSpan(2)) is { } value and <= int.MaxValue ? (int)value : null
            : Digits.Decimal(text);
}
