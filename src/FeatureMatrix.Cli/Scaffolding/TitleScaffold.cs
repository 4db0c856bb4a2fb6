using static FeatureMatrix.Cli.Scaffolding.Scaffold;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>Titles, engines and libraries to begin with.</summary>
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

    public static string Engine(ScaffoldAnswers a) => $$"""
        engines:
          {{a.Id}}:
            name: {{Quoted(a.Name)}}
            source: {{a.Source}}
        {{OfItsOwn(a)}}
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
