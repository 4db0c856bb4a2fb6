using FeatureMatrix.Importing.Capabilities;

namespace FeatureMatrix.Importing.Records;

/// <summary>What a dump calls the card and its driver. Every interface may call them otherwise; the newest one is asked first.</summary>
public static class DumpFacts
{
    private static readonly string[] Newest = ["direct3d9", "direct3d8", "directdraw"];

    /// <summary>The first adapter's description; null where the dump has none.</summary>
    public static string? CardName(CapabilityDump dump) =>
        Adapters(dump).Select(section => section.Text("description")).FirstOrDefault(text => !string.IsNullOrWhiteSpace(text));

    /// <summary>The first adapter's driver version, four numbers with points; null where the dump has none.</summary>
    public static string? DriverVersion(CapabilityDump dump) => Adapters(dump)
        .SelectMany(section => section.Entries.OfType<VersionEntry>().Where(entry => entry.Key == "driver-version")).Select(entry => string.Join('.', entry.Parts)).FirstOrDefault();

    /// <summary>
    /// Video memory in bytes as the first DirectDraw device reports it (pool <c>local</c>); null where the dump has none. It is
    /// not what the board carries: drivers leave out what they keep for themselves, and some count bus memory.
    /// </summary>
    public static uint? ReportedMemory(CapabilityDump dump)
    {
        ArgumentNullException.ThrowIfNull(dump);
        return dump.SectionsOf("directdraw").SelectMany(section => section.Entries.OfType<MemoryEntry>())
            .FirstOrDefault(entry => entry.Pool == "local" && entry.Total > 0)?.Total;
    }

    private static IEnumerable<DumpSection> Adapters(CapabilityDump dump)
    {
        ArgumentNullException.ThrowIfNull(dump);
        return Newest.SelectMany(dump.SectionsOf);
    }
}
