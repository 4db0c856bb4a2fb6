using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>What the vocabulary says of operating systems and buses, and how sure it is.</summary>
public sealed class OperatingSystems
{
    [Fact]
    public void Direct3d_runtimes_are_the_documented_ones()
    {
        // Windows 95: two stored release histories. The others: "Not So Direct Setup" (walbourn.github.io), by which only
        // Windows 95 had been dropped when 9.0c came out; Windows Me from the release histories.
        Assert.Equal(
            [
                "dos none Inferred", "windows-2000 9 Documented", "windows-95 8 Documented", "windows-98 9 Documented",
                "windows-98se 9 Documented", "windows-me 9 Documented", "windows-xp 9 Documented",
            ],
            VocabularyFixture.Catalog.Oses.OrderBy(o => o.Id, StringComparer.Ordinal)
                .SelectMany(o => o.Runtimes.Where(r => r.Api.Id == "direct3d").Select(r =>
                    $"{o.Id} {(r.Highest == 0 ? "none" : r.Api.Levels[r.Highest - 1])} {r.Evidence.Grade}")));
    }

    [Fact]
    public void Limits_known_only_from_copies_are_hearsay()
    {
        // FACTS section K: articles 246818, 253912 and 304943 and the processors of XP.
        Assert.Equal(
            [
                "windows-95 Disk 32", "windows-98 Memory 512", "windows-98se Memory 512", "windows-me Memory 1024", "windows-xp Processors 2",
            ],
            VocabularyFixture.Catalog.Oses.SelectMany(o => o.Limits.Where(l => l.Evidence.Grade == Grade.Hearsay)
                .Select(l => $"{o.Id} {l.Kind} {l.Amount}")).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_system_states_memory_processors_and_disk() =>
        Assert.All(VocabularyFixture.Catalog.Oses, o => Assert.Equal(
            [OsLimitKind.Memory, OsLimitKind.Processors, OsLimitKind.Disk], o.Limits.Select(l => l.Kind).Order()));

    [Fact]
    public void Only_Dos_is_Dos() => Assert.Equal(["dos"], VocabularyFixture.Catalog.Oses.Where(o => o.IsDos).Select(o => o.Id));

    [Theory] // clock x width x transfers a clock, 100/3 MHz and 200/3 MHz of 4 bytes; ISA 25/3 MHz of 2 bytes
    [InlineData("isa", 25.0 / 3 * 2)]
    [InlineData("vlb", 100.0 / 3 * 4)]
    [InlineData("pci", 100.0 / 3 * 4)]
    [InlineData("pci-66", 200.0 / 3 * 4)]
    [InlineData("agp-1.0", 200.0 / 3 * 4 * 2)]
    [InlineData("agp-2.0", 200.0 / 3 * 4 * 4)]
    [InlineData("agp-3.0", 200.0 / 3 * 4 * 8)]
    public void Peak_rate_is_clock_times_width(string bus, double megabytesPerSecond) =>
        Assert.Equal(megabytesPerSecond, VocabularyFixture.Catalog.Buses.Single(b => b.Id == bus).PeakMegabytesPerSecond!.Value, 0.1);
}
