using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Loading.Captures;

namespace FeatureMatrix.Tests.Support;

/// <summary>An edition small enough to keep in mind that still has every kind of page and most labels.</summary>
internal static class SmallEdition
{
    /// <summary>What a hostile writer puts before every name and note.</summary>
    public const string Hostile = "<b>&\"'";

    private static readonly byte[] GreyPixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==");

    // The sign stands before every text that a page shows.
    private const string World =
        """
        collection: {name: '§Two boards', note: '§Two boards and what they draw.'}
        sources:
          ledger: {text: '§The ledger', grade: measured}
        chips:
          sand: {name: '§Sand', maker: '§Dyer', source: bench, supply: {fog-table: yes, tex-pal8: no}}
          silt: {name: '§Silt', source: manual, supply: {fog-table: no, tex-8888: yes, mt-units: "2"}}
        cards:
          dune: {name: '§Dune', maker: '§Dyer', chip: sand, year: 1999, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: manual,
            connector: {bus: pci, volts: [5], power: none, outputs: [vga]}, cautions: ['§Mind the fan.'], notes: '§A *plain* board.'}
          delta: {name: '§Delta', chip: silt, year: 2000, memory: {unified: 32 MiB}, drivers-complete: [windows-98se, windows-xp], source: manual}
        drivers:
          sand-9x: {name: '§Sand drivers', os: [windows-98se], lists: [dune], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}, {version: "1.1"}], supply: {fog-table: {is: no, from: "1.1", source: ledger}}}
          silt-9x: {name: '§Silt drivers', os: [windows-98se], lists: [delta], offers: {direct3d: "9"}, source: readme, versions: [{version: "2.0"}]}
          silt-nt: {name: '§Silt drivers for XP', os: [windows-xp], lists: [delta], offers: {direct3d: "9"}, source: readme, versions: [{version: "3.0", notes: '§Written late.'}]}
        wrappers:
          lens:
            name: '§Lens'
            notes: '§Glide on top of Direct3D.'
            source: readme
            versions:
              - {version: "1.0", offers: {glide: "2"}, on: direct3d 7, supplies: {fog-table: emulated, tex-pal8: emulated}, complete: yes, needs: [mt-units 2], os: {windows-98se: yes}, costs: '§A third of the speed.'}
        engines:
          fen: {name: '§Fen', source: notes}
        titles:
          low-mist: {name: '§Low Mist', version: '1.0', year: 1998, engine: fen, genre: '§racing', os: [windows-98se], source: notes, renderers: {direct3d: {name: '§Picture by Direct3D', api: direct3d 6, needs: {severe: {fog-table: '§The far bank shows.'}}}, glide: {api: glide 2, needs: {severe: [fog-table]}}}}
          copper-gate: {name: '§Copper Gate', year: 1999, os: [windows-98se, windows-xp], source: notes, notes: '§Slow to start.', renderers: {direct3d: {api: direct3d 5, needs: {ungraded: [tex-pal8], must: [tex-dxt1]}}}}
          long-shade: {name: '§Long Shade', os: [windows-98se, windows-xp], source: notes, renderers: {direct3d: {api: direct3d 9, needs: {cosmetic: [fog-table]}}},
            hazards: [{kind: work-per-frame, follows: frame-rate, highest-fps: 60, effect: '§Runs away.', remedy: '§A limiter.', source: ledger}]}
          old-lock: {name: '§Old Lock', os: [windows-98se], source: notes, renderers: {software: {software: yes}, glide: {api: glide 3, needs: {must: [fog-table]}}}}
          tow-path: {name: '§Tow Path', year: 1998, engine: fen, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 5, needs: {severe: [fog-table], cosmetic: [tex-env-bump]}, defects: [{effect: '§Black sky.', driver: sand-9x 1.1, source: ledger}]}}}
        observations:
          - {title: low-mist, renderer: direct3d, card: dune, driver: sand-9x 1.0, os: windows-98se, wrapper: none, runs: yes, seen: {fog-table: yes}, date: 2026-01-24, source: ledger, note: '§Seen twice.'}
        captures:
          bank-with: {title: low-mist, renderer: direct3d, scene: '§The far bank', card: dune, driver: sand-9x 1.0, os: windows-98se, wrapper: none, mode: 640x480, depth: 16, rig: bench,
            kind: frame-grab, picture: bank/with.png, alt: '§The bank fades.', date: 2026-01-24, by: '§Nobody'}
          bank-without: {title: low-mist, renderer: direct3d, scene: '§The far bank', card: dune, driver: sand-9x 1.1, os: windows-98se, wrapper: none, kind: frame-grab,
            picture: bank/without.png, alt: '§The bank ends.', date: 2026-01-25, source: ledger, loses: fog-table, baseline: bank-with, note: '§Looked twice.'}
          bank-delta: {title: low-mist, renderer: direct3d, scene: '§The far bank', card: delta, driver: silt-9x 2.0, os: windows-98se, kind: camera,
            picture: bank/third.png, alt: '§The bank ends too.', date: 2026-01-25, source: ledger, loses: [fog-table], baseline: bank-with}
        rigs:
          bench: {name: '§The bench', processor: {family: family-6, clock: 450 MHz, cores: 1}, memory: 128 MiB, chipset: '§Old board', slots: [{bus: pci, volts: [5], key: 5}], os: [windows-98se], notes: '§By the window.'}
        libraries:
          evening: {name: '§Evening', notes: '§Two players.', titles: {low-mist: 3, copper-gate: 1, long-shade: 2, old-lock: 1, tow-path: 1}}
        """;

    /// <summary>The edition with plain names.</summary>
    public static EditionReport Plain(DateOnly? date = null) => Of(World.Replace("§", "", StringComparison.Ordinal), date);

    /// <summary>The same with markup, entities and quotes in every name and note.</summary>
    public static EditionReport WithHostileNames() => With(Hostile);

    /// <summary>The same with a text of one's own before every name and note.</summary>
    public static EditionReport With(string text, Func<string, string>? change = null) =>
        Of((change ?? (world => world))(World.Replace("§", text.Replace("'", "''", StringComparison.Ordinal), StringComparison.Ordinal)), null);

    /// <summary>Our templates, with a folder of the user's over them.</summary>
    public static TemplateSet Templates(string? users = null) => TemplateSet.Read(Repository.PathTo("templates"), users);

    /// <summary>The files of an edition's site.</summary>
    public static IReadOnlyList<OutputFile> Site(EditionReport edition) => SiteRenderer.Render(SiteReport.Of(edition), Templates(), NoPicture);

    /// <summary>In place of drawing, which has tests of its own: one grey pixel.</summary>
    public static DrawnPair NoPicture(IllustrationPair pair) => new(GreyPixel, GreyPixel);

    /// <summary>Writes a site to a folder.</summary>
    public static void Write(IEnumerable<OutputFile> files, string folder)
    {
        foreach (var file in files)
        {
            var path = Path.Combine(folder, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Bytes);
        }
    }

    private static EditionReport Of(string yaml, DateOnly? date)
    {
        var catalog = Worlds.Load(yaml, [.. new[] { "with", "without", "third" }.Select((name, i) => new SourcePicture($"bank/{name}.png", _ => PictureMaker.Png(64, 48, i + 1)))]);
        return EditionReport.Of(new Decisions(catalog, catalog.Libraries.Single()), date);
    }
}
