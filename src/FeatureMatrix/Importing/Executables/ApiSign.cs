namespace FeatureMatrix.Importing.Executables;

/// <summary>An interface and the lowest level of it that a sign speaks for.</summary>
/// <param name="Api">Id in the vocabulary of APIs, or a name of our own where the vocabulary has none.</param>
/// <param name="Level">A level's name; null where the sign tells none.</param>
public sealed record ApiUse(string Api, string? Level);

/// <summary>A library file whose presence or import speaks for an interface.</summary>
/// <param name="File">Its name in lower case.</param>
/// <param name="Use">What it speaks for.</param>
/// <param name="Proprietary">True where it belongs to one maker's boards rather than to Windows.</param>
public sealed record ApiLibraryName(string File, ApiUse Use, bool Proprietary);

/// <summary>
/// The names by which programs reach graphics interfaces. System libraries, functions and interface identifiers:
/// ddraw.h, d3d.h, d3d8.h and d3d9.h of the Debian package mingw-w64-common 10.0.0-3; levels: the vocabulary of APIs.
/// Names of proprietary libraries: from stored texts and memory, no specification seen.
/// </summary>
internal static class ApiSigns
{
    private const string DirectDraw = "directdraw";
    private const string Direct3D = "direct3d";
    private const string OpenGl = "opengl";
    private const string Glide = "glide";

    /// <summary>Libraries by file name. The level is the lowest that the library serves, so it is a floor.</summary>
    public static IReadOnlyDictionary<string, ApiLibraryName> Libraries { get; } = new[]
    {
        new ApiLibraryName("ddraw.dll", new ApiUse(DirectDraw, "1"), false),
        new ApiLibraryName("d3drm.dll", new ApiUse(Direct3D, "2"), false),
        new ApiLibraryName("d3d8.dll", new ApiUse(Direct3D, "8"), false),
        new ApiLibraryName("d3d9.dll", new ApiUse(Direct3D, "9"), false),
        new ApiLibraryName("opengl32.dll", new ApiUse(OpenGl, "1.1"), false),
        new ApiLibraryName("libgl.so.1", new ApiUse(OpenGl, null), false),
        new ApiLibraryName("glide.dll", new ApiUse(Glide, null), true),
        new ApiLibraryName("glide2x.dll", new ApiUse(Glide, "2"), true),
        new ApiLibraryName("glide2x.ovl", new ApiUse(Glide, "2"), true),
        new ApiLibraryName("glide3x.dll", new ApiUse(Glide, "3"), true),
        new ApiLibraryName("3dfxgl.dll", new ApiUse(OpenGl, null), true),
        new ApiLibraryName("3dfxvgl.dll", new ApiUse(OpenGl, null), true),
        new ApiLibraryName("ati3dcif.dll", new ApiUse("3d-cif", null), true),
        new ApiLibraryName("sgl.dll", new ApiUse("sgl", null), true),
    }.ToDictionary(l => l.File, StringComparer.OrdinalIgnoreCase);

    /// <summary>Functions and interfaces by name, as imported or as text in the file.</summary>
    public static IReadOnlyDictionary<string, ApiUse> Names { get; } = new Dictionary<string, ApiUse>(StringComparer.Ordinal)
    {
        ["DirectDrawCreate"] = new(DirectDraw, "1"),
        ["DirectDrawCreateEx"] = new(DirectDraw, "7"),
        ["Direct3DRMCreate"] = new(Direct3D, "2"),
        ["Direct3DCreate8"] = new(Direct3D, "8"),
        ["Direct3DCreate9"] = new(Direct3D, "9"),
        ["IDirectDraw"] = new(DirectDraw, "1"),
        ["IDirectDraw2"] = new(DirectDraw, "2"),
        ["IDirectDraw4"] = new(DirectDraw, "4"),
        ["IDirectDraw7"] = new(DirectDraw, "7"),
        ["IDirect3D"] = new(Direct3D, "2"),
        ["IDirect3D2"] = new(Direct3D, "5"),
        ["IDirect3D3"] = new(Direct3D, "6"),
        ["IDirect3D7"] = new(Direct3D, "7"),
        ["IDirect3D8"] = new(Direct3D, "8"),
        ["IDirect3D9"] = new(Direct3D, "9"),
        ["wglCreateContext"] = new(OpenGl, "1.1"),
    };

    /// <summary>Interface identifiers as they lie in a file, sixteen bytes each.</summary>
    public static IReadOnlyList<(string Name, ApiUse Use, byte[] Bytes)> InterfaceIds { get; } = new[]
    {
        ("IID_IDirectDraw", new ApiUse(DirectDraw, "1"), "6C14DB80-A733-11CE-A521-0020AF0BE560"),
        ("IID_IDirectDraw2", new ApiUse(DirectDraw, "2"), "B3A6F3E0-2B43-11CF-A2DE-00AA00B93356"),
        ("IID_IDirectDraw4", new ApiUse(DirectDraw, "4"), "9C59509A-39BD-11D1-8C4A-00C04FD930C5"),
        ("IID_IDirectDraw7", new ApiUse(DirectDraw, "7"), "15E65EC0-3B9C-11D2-B92F-00609797EA5B"),
        ("IID_IDirect3D", new ApiUse(Direct3D, "2"), "3BBA0080-2421-11CF-A31A-00AA00B93356"),
        ("IID_IDirect3D2", new ApiUse(Direct3D, "5"), "6AAE1EC1-662A-11D0-889D-00AA00BBB76A"),
        ("IID_IDirect3D3", new ApiUse(Direct3D, "6"), "BB223240-E72B-11D0-A9B4-00AA00C0993E"),
        ("IID_IDirect3D7", new ApiUse(Direct3D, "7"), "F5049E77-4861-11D2-A407-00A0C90629A8"),
    }.Select(i => (i.Item1, i.Item2, Guid.Parse(i.Item3).ToByteArray())).ToList();
}
