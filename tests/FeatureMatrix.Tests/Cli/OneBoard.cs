namespace FeatureMatrix.Tests.Cli;

/// <summary>The smallest collection that can be published: one board, one driver, one title.</summary>
internal static class OneBoard
{
    public const string World =
        """
        collection: {name: One board}
        sources: {leaflet: {text: A leaflet, grade: documented}}
        chips: {sand: {name: Sand, source: leaflet, supply: {fog-table: yes}}}
        cards: {dune: {name: Dune, chip: sand, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: leaflet}}
        drivers: {sand-9x: {name: Sand drivers, os: [windows-98se], lists: [dune], offers: {direct3d: "7"}, source: leaflet, versions: [{version: "1.0"}]}}
        titles: {low-mist: {name: Low Mist, os: [windows-98se], source: leaflet, renderers: {direct3d: {api: direct3d 6, needs: {severe: [fog-table]}}}}}
        """;
}
