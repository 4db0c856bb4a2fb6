namespace FeatureMatrix.Importing.Executables;

/// <summary>Reads a title's programs and libraries for the graphics interfaces they reach. Nothing is executed.</summary>
public static class TitleScanner
{
    /// <summary>Whether a file is worth opening: programs, libraries, and DOS overlays, by the ending of the name.</summary>
    public static bool IsOfInterest(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Path.GetExtension(name).ToLowerInvariant() is ".exe" or ".dll" or ".ovl" or ".ren" or ".icd";
    }

    /// <summary>
    /// Scans the files, one at a time, in any order; the order does not change the answer. Of each name the first place
    /// in each file is kept for each kind of sighting.
    /// </summary>
    public static TitleScan Scan(IEnumerable<TitleFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var own = new List<FileReading>();
        var shipped = new List<ShippedLibrary>();
        var faults = new List<TitleFileFault>();
        foreach (var reading in files.Select(FileReading.Of))
        {
            faults.AddRange(reading.Faults.Select(f => new TitleFileFault(reading.File, f)));
            if (ApiSigns.Libraries.TryGetValue(reading.File[(reading.File.LastIndexOf('/') + 1)..], out var library))
                shipped.Add(new ShippedLibrary(reading.File, library, Renderers([reading], except: library.Use.Api)));
            else
                own.Add(reading);
        }

        return new TitleScan(
            Renderers(own, except: null),
            [.. own.SelectMany(r => r.Extensions)
                .GroupBy(s => s.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new NamedExtension(g.Key, InOrder(g)))],
            [.. own.SelectMany(r => r.Uses).Where(u => u.Library is { Proprietary: true })
                .GroupBy(u => u.Library!).OrderBy(g => g.Key.File, StringComparer.Ordinal)
                .Select(g => new ProprietaryLoad(g.Key, InOrder(g.Select(u => u.Sighting))))],
            [.. shipped.OrderBy(s => s.File, StringComparer.Ordinal)],
            [.. faults.OrderBy(f => f.File, StringComparer.Ordinal).ThenBy(f => f.Fault.Offset).ThenBy(f => f.Fault.Kind)]);
    }

    private static IReadOnlyList<CandidateRenderer> Renderers(IEnumerable<FileReading> readings, string? except) =>
    [
        .. readings.SelectMany(r => r.Uses).Where(u => u.Use.Api != except)
            .GroupBy(u => u.Use)
            .OrderBy(g => g.Key.Api, StringComparer.Ordinal).ThenBy(g => g.Key.Level, StringComparer.Ordinal)
            .Select(g => new CandidateRenderer(g.Key, InOrder(g.Select(u => u.Sighting)))),
    ];

    private static IReadOnlyList<Sighting> InOrder(IEnumerable<Sighting> sightings) =>
        [.. sightings.OrderBy(s => s.File, StringComparer.Ordinal).ThenBy(s => s.Offset).ThenBy(s => s.Kind).ThenBy(s => s.Name, StringComparer.Ordinal)];
}
