namespace FeatureMatrix.Importing.Executables;

/// <summary>One file of a title's folder.</summary>
/// <param name="Name">Its path inside the folder, with forward slashes.</param>
/// <param name="Bytes">Its content; longer than <see cref="PortableExecutable.LargestFile"/> it is not looked at.</param>
public sealed record TitleFile(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>How a name was found in a file.</summary>
public enum SightingKind
{
    /// <summary>In the import table.</summary>
    Import,

    /// <summary>In the table of libraries that are loaded at the first call.</summary>
    DelayedImport,

    /// <summary>As text, which may be there without being used.</summary>
    Text,

    /// <summary>As the sixteen bytes of an interface identifier.</summary>
    InterfaceId,
}

/// <summary>One place in a title's files that says something.</summary>
/// <param name="File">The file.</param>
/// <param name="Offset">Offset in bytes from its beginning.</param>
/// <param name="Kind">How it was found.</param>
/// <param name="Name">What stands there.</param>
public sealed record Sighting(string File, long Offset, SightingKind Kind, string Name);

/// <summary>A graphics path that the files make likely; grade inferred.</summary>
/// <param name="Use">The interface and the level that it needs at least.</param>
/// <param name="Sightings">What says so.</param>
public sealed record CandidateRenderer(ApiUse Use, IReadOnlyList<Sighting> Sightings);

/// <summary>An OpenGL or window-system extension that the files name.</summary>
public sealed record NamedExtension(string Name, IReadOnlyList<Sighting> Sightings);

/// <summary>
/// A graphics library that lies in the title's folder, where the program finds it before the system's own. It may be the
/// maker's library or a wrapper that somebody left there; what it imports itself tells more.
/// </summary>
/// <param name="File">Where it lies.</param>
/// <param name="Library">What its name stands for.</param>
/// <param name="DrawsThrough">The interfaces that it reaches itself; a wrapper shows the API it draws with.</param>
public sealed record ShippedLibrary(string File, ApiLibraryName Library, IReadOnlyList<CandidateRenderer> DrawsThrough);

/// <summary>A proprietary library that the title loads, and what says so.</summary>
public sealed record ProprietaryLoad(ApiLibraryName Library, IReadOnlyList<Sighting> Sightings);

/// <summary>A fault met in one file.</summary>
public sealed record TitleFileFault(string File, ExecutableFault Fault);

/// <summary>
/// What a title's files say about its renderers. Everything in it is a candidate: a program may carry names that it never
/// uses, and may reach an interface without naming it.
/// </summary>
/// <param name="Renderers">By API, then level.</param>
/// <param name="Extensions">By name.</param>
/// <param name="Proprietary">Proprietary libraries it loads, by name.</param>
/// <param name="Shipped">Graphics libraries that lie in the folder, by file.</param>
/// <param name="Faults">What could not be read, by file and offset.</param>
public sealed record TitleScan(
    IReadOnlyList<CandidateRenderer> Renderers,
    IReadOnlyList<NamedExtension> Extensions,
    IReadOnlyList<ProprietaryLoad> Proprietary,
    IReadOnlyList<ShippedLibrary> Shipped,
    IReadOnlyList<TitleFileFault> Faults);
