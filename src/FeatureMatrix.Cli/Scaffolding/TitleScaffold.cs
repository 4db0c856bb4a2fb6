using static FeatureMatrix.Cli.Scaffolding.Scaffold;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>Titles, rigs and libraries to begin with.</summary>
internal static class TitleScaffold
{
    private const string NeedsHelp = """
                # By how badly it shows when the feature is missing: must (refuses, crashes), severe, cosmetic, ungraded (runs, nobody
                # graded it), bonus (no loss), unknown. Closed: what is not written here is not needed.

        """;

    public static string Title(ScaffoldAnswers a) => $$"""
        titles:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            # version: "1.2"
            # year: 1999
            # genre: exploration
            os: {{List(a.Oses)}}
            source: {{a.Source}}
        {{(a.Engine.Length > 0 ? OfEngine(a) : OfItsOwn(a))}}
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

    public static string Library(ScaffoldAnswers a) => $$"""
        libraries:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            titles:   # how much each counts; or {weight: 3, must: yes, tolerance: cosmetic}
        {{(a.Titles.Count == 0 ? "      {}\n" : string.Concat(a.Titles.Select(title => $"      {title}: 1\n")))}}    policy:
              wrappers: any   # any, none, or a list
              forced: no      # whether drivers may be forced onto cards they do not list
              # os: [windows-98se]
              # mode: 800x600
              # depth: 16
              # fps-floor: 30

        """;

    private static string OfEngine(ScaffoldAnswers a) => $$"""
            engine: {{a.Engine}}
            # Its renderers come from the engine:
        {{Remarks(a.Inherited, "    ")}}    # To add to one, or to grade a loss as this title shows it:
            # renderers:
            #   direct3d:
            #     like-engine: direct3d
            #     needs: {severe: {fog-table: The far shore shows} }

        """;

    private static string OfItsOwn(ScaffoldAnswers a) => $$"""
            renderers:   # one for each graphics path; what is not written does not count
              {{a.Api.Split(' ')[0]}}:
                api: {{Quoted(a.Api)}}
        {{NeedsHelp}}        needs:
                  # must: [tex-perspective]
                  # severe: {fog-table: The far shore shows}
                  # cosmetic: {tex-pal8: Signs are blurred}
                # memory: {lowest: 640x480, depths: [16, 32]}
              # software: {software: yes}

        """;
}
