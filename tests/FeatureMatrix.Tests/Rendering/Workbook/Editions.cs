using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Workbook;

/// <summary>Editions small enough to keep in mind, as workbooks.</summary>
internal static class Editions
{
    /// <summary>Two cards and three titles of different weight: one card has table fog, the other palettes, one need is not graded.</summary>
    public const string TwoCards =
        """
        collection: {name: Two cards}
        chips:
          sand: {name: Sand, source: bench, supply: {fog-table: yes, tex-pal8: no, stencil-bits: none}}
          silt: {name: Silt, source: bench, supply: {fog-table: no, stencil-bits: "8"}}
        cards:
          dune: {name: Dune, chip: sand, year: 1999, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: manual}
          delta: {name: Delta, chip: silt, year: 2000, memory: {unified: 32 MiB}, drivers-complete: [windows-98se], source: manual}
        drivers:
          sand-9x: {name: Sand drivers, os: [windows-98se], lists: [dune], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}
          silt-9x: {name: Silt drivers, os: [windows-98se], lists: [delta], offers: {direct3d: "7"}, source: readme, versions: [{version: "2.0"}]}
        titles:
          low-mist: {name: Low Mist, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 6, needs: {severe: {fog-table: "The far bank shows."}}}}}
          copper-gate: {name: Copper Gate, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 5, needs: {ungraded: [tex-pal8]}}}}
          long-shade: {name: Long Shade, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 7, needs: {cosmetic: [stencil-bits 8]}}}}
        libraries:
          evening: {name: Evening, titles: {low-mist: 3, copper-gate: 1, long-shade: 2}}
        """;

    /// <summary>Names that a careless writer would take for formulas, markup or file paths.</summary>
    public static IReadOnlyList<string> HostileNames { get; } =
    [
        "=1+1", "+1", "-1", "@SUM(A1)", "\tTabbed", "<b>bold</b> & \"quoted\"", "{0} %s", "'quoted'", "a/b\\c:d*e?f[g]",
        "Schwerpunktverlagerungsnachbearbeitungsgegenmassnahmenkatalog", "\u05e9\u05dc\u05d5\u05dd \u202eright to left", "2026-03-14", "007", "\U0001F985 bird", "TRUE",
    ];

    /// <summary>One card and one title of each such name.</summary>
    public static string Hostile { get; } =
        """
        collection: {name: "=HYPERLINK(1)"}
        chips: {sand: {name: Sand, source: bench, supply: {fog-table: no}}}
        drivers:
          sand-9x: {name: "-drivers", os: [windows-98se], lists: [CARDS], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}
        cards:

        """.Replace("CARDS", string.Join(", ", HostileNames.Select((_, i) => $"card-{i}")), StringComparison.Ordinal)
        + Each("  card-NUMBER: {name: NAME, chip: sand, drivers-complete: [windows-98se], source: manual}\n")
        + "titles:\n"
        + Each("  title-NUMBER: {name: NAME, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 6, needs: {severe: {fog-table: NAME}}}}}\n");

    private static string Each(string line) => string.Concat(HostileNames.Select((name, i) =>
        line.Replace("NUMBER", i.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("NAME", Quoted(name), StringComparison.Ordinal)));

    private static string Quoted(string name) =>
        $"\"{name.Replace("\\", @"\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\t", @"\t", StringComparison.Ordinal)}\"";

    /// <summary>The edition of a collection written as YAML, on its only library's terms where it has one.</summary>
    public static EditionReport Of(string yaml, DateOnly? date = null)
    {
        var catalog = Worlds.Load(yaml);
        return Of(catalog, catalog.Libraries.SingleOrDefault(), date);
    }

    public static EditionReport Of(Catalog catalog, Library? library, DateOnly? date = null) => EditionReport.Of(new Decisions(catalog, library), date);

    public static SavedWorkbook Saved(EditionReport edition) => new(WorkbookWriter.Write(edition));
}
