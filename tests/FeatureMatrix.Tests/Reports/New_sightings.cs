using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Reports;

/// <summary>What an import says of observations that it brings: what changes, what is confirmed, what decides nothing.</summary>
public sealed class New_sightings
{
    private const string World =
        """
        chips: {heron: {name: Heron, source: manual, supply: {fog-table: yes}}}
        cards:
          heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, source: manual, drivers-complete: [dos, windows-95, windows-98se, windows-2000, windows-xp]}
        drivers: {heron-9x: {name: Heron 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}}
        wrappers: {veil: {name: Veil, versions: [{version: "1.0", offers: {glide: "2"}, on: direct3d 7, source: readme}]}}
        titles:
          bay: {name: Bay, os: [windows-98se, windows-xp], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [fog-table], cosmetic: [tex-pal8]}}}}
        libraries: {shelf: {name: The shelf, titles: [bay], policy: {mode: 800x600}}}
        """;

    private const string Route = "title: bay, card: heron-16, driver: heron-9x 1.0, os: windows-98se, wrapper: none";

    [Theory]
    [InlineData($"{Route}, runs: yes, seen: {{tex-pal8: no}}, source: bench",
        "  Bay on Heron 16: loses paletted textures (cosmetic), natively; before: runs, paletted textures not known, natively.\n")]
    [InlineData($"{Route}, mode: 800x600, runs: yes, seen: {{tex-pal8: no}}, source: bench",
        "  Bay on Heron 16, for the shelf: loses paletted textures (cosmetic), natively; before: runs, paletted textures not known, natively.\n")]
    [InlineData($"{Route}, runs: yes, source: bench", "  No verdict changes; what was seen confirms it.\n")]
    [InlineData($"{Route}, mode: 1024x768, runs: no, source: bench",
        "  Recorded, decides nothing: Bay does not run with Heron 16, Heron 9x 1.0, Windows 98 SE, no wrapper (measured: The bench): it was seen at 1024x768, and no library judges the title at that mode.\n  No verdict changes.\n")]
    [InlineData($"{Route}, depth: 32, runs: no, source: bench",
        "  Recorded, decides nothing: Bay does not run with Heron 16, Heron 9x 1.0, Windows 98 SE, no wrapper (measured: The bench): it was seen at 32 bit, and no library judges the title at that colour depth.\n  No verdict changes.\n")]
    [InlineData("title: bay, card: heron-16, os: windows-xp, runs: no, source: bench",
        "  Recorded, decides nothing: Bay does not run with Heron 16, Windows XP (measured: The bench): no setup of Heron 16 on record has Windows XP.\n  No verdict changes.\n")]
    [InlineData("title: bay, card: heron-16, os: windows-98se, wrapper: none, runs: yes, seen: {mt-units 2: yes}, source: rumour",
        "  Recorded, decides nothing: Bay runs; texture units 2 seen with Heron 16, Windows 98 SE, no wrapper (hearsay: A rumour): hearsay alone decides nothing.\n  No verdict changes.\n")]
    [InlineData("title: bay, card: heron-16, os: windows-98se, wrapper: none, seen: {mt-units 2: yes}, source: bench",
        "  Recorded, decides nothing: Bay texture units 2 seen with Heron 16, Windows 98 SE, no wrapper (measured: The bench): Bay asks for nothing that was looked at.\n  No verdict changes.\n")]
    public void Are_told_what_becomes_of_them(string observation, string told)
    {
        var before = Worlds.Load(World);
        var after = Worlds.Load($"{World}\nobservations:\n  - {{{observation}}}\n");

        Assert.Equal("What it decides:\n" + told, SightingsReport.Of(before, after));
        Assert.Equal("", SightingsReport.Of(after, after));
    }

    [Fact]
    public void Stand_among_what_is_worth_a_look_where_they_decide_nothing()
    {
        var catalog = Worlds.Load($"{World}\nobservations:\n  - {{{Route}, mode: 1024x768, runs: no, source: bench}}\n");

        var item = Assert.Single(CareReport.Of(new Decisions(catalog, null), [], [], null).Items, one => one.Kind == "recorded, decides nothing");

        Assert.Equal(
            ("Bay", "Does not run with Heron 16, Heron 9x 1.0, Windows 98 SE, no wrapper (measured: The bench): it was seen at 1024x768, and no library judges the title at that mode.", "explain bay heron-16"),
            (item.About, item.Text, item.Remedy));
    }
}
