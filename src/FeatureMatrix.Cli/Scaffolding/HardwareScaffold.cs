using static FeatureMatrix.Cli.Scaffolding.Scaffold;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>Chips, cards, drivers and wrappers to begin with.</summary>
internal static class HardwareScaffold
{
    public static string Chip(ScaffoldAnswers a) => $$"""
        chips:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            # maker: Who made it
            # year: 1998
            # generation: second
        {{(a.Chip.Length > 0 ? $"    like: {a.Chip} # has what that chip has, except where 'supply' says something itself\n{Remarks(a.Inherited, "    ")}" : "    # like: another-chip\n")}}    source: {{a.Source}}
            supply:
              # What is not written is not known, never missing. yes, no, emulated (by the driver), broken (claimed, wrong picture) or unknown;
              # for a feature with levels the highest one, or none.
              # fog-table: yes
              # tex-pal8: no
              # mt-units: "2"

        """;

    public static string Card(ScaffoldAnswers a) => $$"""
        cards:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            chip: {{a.Chip}}
        {{Remarks(a.Inherited, "    ")}}    source: {{a.Source}}
            # maker: Who sold it
            # year: 1998
            # memory: {unified: 16 MiB}          # or {frame: 4 MiB, texture: 2 MiB} for two pools
            # clocks: {core: 90 MHz, memory: 100 MHz}
            # Voltage can do harm. Write only what the board's own documents say or what you saw at its edge; leave out what you did not look at.
            # connector: {bus: agp-2.0, volts: [3.3], notches: [3.3], speed: 2, power: none, outputs: [vga]}
            # hardware-ids: ['PCI\VEN_1234&DEV_5678']
            # prices: [{sold: 18..25 EUR, date: 2026-02-11}]
            # drivers-complete: [windows-98se]   # systems for which you have recorded every driver there is
            # bios: {version: "1.03", supply: {vga: yes, vesa: "2.0"} }   # what it offers in DOS
            # supply: {}                         # what this card has and others with its chip have not

        """;

    public static string Driver(ScaffoldAnswers a) => $$"""
        drivers:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            os: {{List(a.Oses)}}
            lists: {{List(a.Cards)}}   # the cards that its package lists; others can only be forced
            source: {{a.Source}}
            # What titles may ask for, at the highest level. What is not written is not known.
            # offers: {direct3d: "6", opengl: "1.1"}
            versions:   # oldest first
              - version: "1.0"   # replace by what the package says
                # released: 1999-03-01
            # supply:
              # fog-table: {is: no, from: "2.10", source: own-bench}   # what some versions take away or add

        """;

    public static string Wrapper(ScaffoldAnswers a) => $$"""
        wrappers:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            source: {{a.Source}}
            versions:   # oldest first; each is judged by itself
              - version: "1.0"   # replace by what its author says
                offers: {{Offers(a.Api)}}
                on: {{Quoted(a.On)}}
                # os: {windows-98se: yes, windows-95: unknown}
                # supplies: {tex-pal8: emulated}   # by itself
                # passes: [fog-table]              # handed through from card and driver
                # complete: yes                    # what is neither supplied nor passed is missing
                # needs: [tex-8888]
                # costs: A third of the frame rate on our bench.

        """;

    private static string Offers(string api)
    {
        var parts = api.Split([' '], 2);
        return $"{{{parts[0]}: {Quoted(parts.Length > 1 ? parts[1] : "yes")}}}";
    }
}
