using static FeatureMatrix.Cli.Scaffolding.Scaffold;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>Specimens, PCs and observations to begin with.</summary>
internal static class BenchScaffold
{
    public static string Specimen(ScaffoldAnswers a) => $$"""
        specimens:
          {{a.Id}}:   # one physical board; observations and runs name it
            card: {{a.Card}}
            # bios: "1.03"
            # condition: one capacitor replaced
            # owned: yes

        """;

    public static string Rig(ScaffoldAnswers a) => $$"""
        rigs:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            # processor: {family: family-6, clock: 450 MHz, cores: 1}
            # memory: 128 MiB
            # Voltage can do harm: write what the main board's documents say, and leave out what you did not read.
            # slots: [{bus: agp-2.0, volts: [3.3], speed: 2, key: 3.3}]
            # monitor: {name: A 17-inch tube, highest: 1024x768, refresh: 85 Hz, inputs: [vga]}
            # power: [drive-power]
            # os: [dos, windows-98se]

        """;

    public static string Observation(ScaffoldAnswers a) => $$"""
        observations:
          # It counts for the routes that agree in everything that stands here; what you do not write is not stated.
          - title: {{a.Title}}
        {{Stated("renderer", a.Renderer)}}    card: {{a.Card}}   # or the board itself: specimen: its-id
        {{Stated("driver", a.Driver.Length > 0 ? Quoted(a.Driver) : "")}}{{Stated("os", a.Oses.Count > 0 ? a.Oses[0] : "")}}{{(a.Wrapper.Length > 0 ? Stated("wrapper", a.Wrapper) : "    # wrapper: none   # or its id with its version, duskglass@1.4; not stated, it counts with and without\n")}}    runs: {{a.Runs}}
            source: {{a.Source}}
            # seen: {fog-table: yes, tex-pal8: no}   # yes, emulated, broken (claimed, wrong picture) or no; leave out what you did not look at
            # mode: 640x480
            # depth: 16
            # date: 2026-03-01
            # by: Who saw it
            # note: What else there was to see

        """;

    private static string Stated(string key, string value) => value.Length > 0 ? $"    {key}: {value}\n" : "";
}
