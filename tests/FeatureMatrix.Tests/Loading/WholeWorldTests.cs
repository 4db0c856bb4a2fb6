using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>One small collection with an entity of every kind: what the catalog says, and how it is linked.</summary>
public sealed class A_world_with_one_of_everything
{
    internal const string World =
        """
        collection: {name: The Brackwater bench, note: Three boards, currency: EUR}
        chips:
          nl-3: {name: NL-3, maker: Ostrelmark, year: 1997, generation: first, source: manual, supply: {fog-table: no, tex-pal8: yes, mt-units: "1"}}
          nl-4: {name: NL-4, like: nl-3, source: manual, supply: {fog-table: yes, ps-version: none}}
        cards:
          nl4-retail:
            name: Ostrelmark 4
            maker: Ostrelmark
            year: 1998
            chip: nl-4
            source: manual
            memory: {unified: 16 MiB, textures-from-system: yes}
            clocks: {core: 90 MHz, memory: 0.1 GHz}
            connector: {bus: agp-2.0, volts: [3.3], notches: [3.3, 1.5], speed: 2, power: none, outputs: [vga]}
            hardware-ids: ['PCI\VEN_1A2B&DEV_0004']
            os: {windows-95: no, windows-xp: {is: yes, grade: hearsay, source: rumour}}
            drivers-complete: [windows-98se]
            bios: {version: "1.03", supply: {vesa: "2.0", vga: yes, vbe-lfb: yes}}
            prices: [{sold: 18..25 EUR, date: 2026-02-11, condition: tested}, {asked: 30 EUR}]
            cautions: [Runs hot.]
            supply: {stencil-bits: 8 bit}
          spur: {name: Spur, chip: nl-3, add-in: yes, companion: nl4-retail, memory: {frame: 2 MiB, texture: 2 MiB}, source: manual}
        specimens:
          nl4-a: {card: nl4-retail, bios: "1.03", condition: one capacitor replaced, owned: yes}
        drivers:
          nl-9x:
            name: Ostrelmark for 9x
            os: [windows-98se]
            lists: [nl4-retail]
            offers: {direct3d: "6", opengl: "1.1"}
            source: readme
            versions:
              - {version: 1.20, released: 1999-03-01, forced: [{card: spur, works: yes, source: bench}]}
              - {version: "2.10", os: [windows-98se, windows-95], offers: {opengl: "1.2"}, supply: {tex-pal8: emulated}}
            supply: {fog-table: {is: no, from: "2.10", source: bench}}
        wrappers:
          duskglass:
            name: Duskglass
            source: readme
            versions:
              - {version: "1.4", offers: {glide: "2"}, on: direct3d 6, runtime: direct3d 7, supplies: {tex-pal8: emulated}, passes: [fog-table], complete: yes, needs: [mt-units 2, tex-8888], os: {windows-98se: yes}, memory: 8 MiB, costs: A third of the speed}
        engines:
          tern:
            name: Tern
            source: notes
            renderers:
              direct3d: {api: direct3d 5, needs: {must: [mt-units 1], cosmetic: [fog-table], bonus: [tex-dxt1]}, memory: {lowest: 512x384, depths: [32, 16]}}
        titles:
          salt-marsh:
            name: Salt Marsh
            version: "1.2"
            year: 1999
            engine: tern
            genre: exploration
            os: [windows-98se]
            source: manual
            renderers:
              direct3d:
                like-engine: direct3d
                api: direct3d 6
                runtime: direct3d 7
                needs: {severe: {fog-table: The far shore shows}, none: [tex-dxt1]}
                defects: [{driver: nl-9x, from: "2.10", card: nl4-retail, effect: Hangs at the ferry}]
                memory: {presets: [{name: low, textures: 3 MiB, format: 8-bit-palette}, {name: high, textures: 9 MiB, measured: yes}]}
              software: {software: yes, os: [dos, windows-98se]}
            hazards: [{kind: work-per-frame, follows: frame-rate, highest-fps: 60, effect: Tides race, remedy: A limiter, seen: [{processor: pentium-ii-class, mhz: 1000, works: yes, source: bench}]}]
        rigs:
          bench-98: {name: The bench PC, processor: {family: pentium-ii-class, clock: 450 MHz, cores: 1}, memory: 128 MiB, chipset: Invented, slots: [{bus: agp-2.0, volts: [3.3], speed: 2, key: 3.3}], monitor: {name: Screen, highest: 1024x768, refresh: 85 Hz, inputs: [vga]}, power: [drive-power], os: [windows-98se]}
        libraries:
          winter: {name: Winter evenings, titles: {salt-marsh: {weight: 3, must: yes, tolerance: severe, preset: high}}, policy: {os: [windows-98se], wrappers: none, mode: 800x600, depth: 16, fps-floor: 30}}
        observations:
          - {title: salt-marsh, renderer: direct3d, specimen: nl4-a, driver: nl-9x 2.10, os: windows-98se, wrapper: none, mode: 800x600, depth: 16, rig: bench-98, runs: yes, seen: {fog-table: broken}, date: 2026-03-01, by: Ada at the bench}
        facts:
          - {chip: nl-4, os: windows-xp, fog-table: broken, source: rumour}
        """;

    private readonly Catalog _catalog = Worlds.Load(World);

    [Fact]
    public void Loads_without_a_fault() => Assert.Empty(Worlds.Try(World).Faults);

    [Fact]
    public void Card_is_linked_and_measured_in_model_units()
    {
        var card = _catalog.Cards.Single(c => c.Id == "nl4-retail");

        Assert.Same(_catalog.Chips.Single(c => c.Id == "nl-4"), card.Chip);
        Assert.Equal(new VideoMemory.Unified(16 << 20) { TexturesFromSystemMemory = true }, card.Memory);
        Assert.Equal((90.0, 100.0), (card.CoreMegahertz!.Value, card.MemoryMegahertz!.Value));
        Assert.Equal((2, "", "vga"), (card.Connector!.Speed!.Value, card.Connector.PowerPlug!, card.Connector.Outputs.Single()));
        Assert.Equal([3.3, 1.5], card.Connector.Notches);
        Assert.Equal([@"PCI\VEN_1A2B&DEV_0004"], card.HardwareIds);
        Assert.Equal(["windows-95 No Documented", "windows-xp Yes Hearsay"], card.OsSupport.Select(o => $"{o.Os} {o.Support} {o.Evidence.Grade}"));
        Assert.Equal(["windows-98se"], card.DriversCompleteFor.Select(os => os.Id));
        Assert.Equal(
            [new Price(18, 25, "EUR", true, new DateOnly(2026, 2, 11), "tested"), new Price(30, 30, "EUR", false, null, "")], card.Prices);
        Assert.Equal(["Runs hot."], card.Cautions);
        Assert.Same(card, _catalog.Cards.Single(c => c.Id == "spur").Companion);
    }

    [Fact]
    public void Driver_versions_keep_order_text_and_defaults()
    {
        var branch = _catalog.Branches.Single(b => b.Id == "nl-9x");

        Assert.Equal(["1.20", "2.10"], branch.Versions.Select(d => d.Version));
        Assert.Equal(["windows-98se", "windows-98se windows-95"], branch.Versions.Select(d => string.Join(' ', d.Oses)));
        Assert.All(branch.Versions, d => Assert.Equal(["nl4-retail"], d.Lists.Select(c => c.Id)));
        Assert.Equal("spur Yes Measured", branch.Versions[0].Forced.Select(f => $"{f.Card} {f.Works} {f.Evidence.Grade}").Single());
    }

    [Fact]
    public void Bios_becomes_a_driver_on_every_dos()
    {
        var bios = _catalog.Drivers.Single(d => d.Id == "nl4-retail-bios@1.03");

        Assert.Equal((DriverKind.Bios, "dos", "nl4-retail"), (bios.Kind, bios.Oses.Single().Id, bios.Lists.Single().Id));
    }

    [Fact]
    public void Facts_carry_scope_level_reach_and_grade() => Assert.Equal(
        [
            "chip nl-3: fog-table At No Documented",
            "chip nl-3: tex-pal8 At Yes Documented",
            "chip nl-3: mt-units 1 UpTo Yes Documented",
            "chip nl-4: fog-table At Yes Documented",
            "chip nl-4: ps-version 1.0 At No Documented",
            "chip nl-4: tex-pal8 At Yes Documented",
            "chip nl-4: mt-units 1 UpTo Yes Documented",
            "card nl4-retail: stencil-bits 8 UpTo Yes Documented",
            "nl-9x 0..0: direct3d 6 UpTo Yes Documented",
            "nl-9x 0..0: opengl 1.1 UpTo Yes Documented",
            "nl-9x 1..1: opengl 1.2 UpTo Yes Documented",
            "nl-9x 1..1: direct3d 6 UpTo Yes Documented",
            "nl-9x 1..1: tex-pal8 At Emulated Documented",
            "nl-9x 1..1: fog-table At No Measured",
            "card nl4-retail nl4-retail-bios 0..0: vesa 2.0 UpTo Yes Documented",
            "card nl4-retail nl4-retail-bios 0..0: vga At Yes Documented",
            "card nl4-retail nl4-retail-bios 0..0: vbe-lfb At Yes Documented",
            "chip nl-4 on windows-xp: fog-table At Broken Hearsay",
        ],
        _catalog.Facts.Select(Describe));

    [Fact]
    public void Wrapper_version_is_read()
    {
        var version = _catalog.WrapperVersions.Single();

        Assert.Equal("duskglass@1.4 glide 2 on direct3d 6 with direct3d 7", $"{version} {version.Offers.Single()} on {version.Target} with {version.Runtime}");
        Assert.Equal("tex-pal8 Emulated", version.Supplies.Select(f => $"{f.Capability} {f.Support}").Single());
        Assert.Equal(["fog-table"], version.Passes.Select(f => f.Id));
        Assert.Equal(["mt-units 2", "tex-8888"], version.Needs.Select(n => n.Capability.ToString()));
        Assert.Equal((true, 8L << 20, "A third of the speed"), (version.IsComplete, version.VideoMemoryBytes, version.Costs));
    }

    [Fact]
    public void Title_builds_on_its_engine()
    {
        var title = _catalog.Titles.Single();
        var renderer = title.Renderers[0];

        Assert.Equal(("Tern", "direct3d 6", "direct3d 7"), (title.Engine, renderer.Api.ToString()!, renderer.Runtime.ToString()!));
        Assert.Equal(
            ["Severe fog-table The far shore shows Documented", "Must mt-units 1  Inferred"],
            renderer.Needs.Select(n => $"{n.Strength} {n} {n.Effect} {n.Evidence.Grade}"));
        Assert.Equal("card nl4-retail nl-9x 1..1: Hangs at the ferry", renderer.Defects.Select(d => $"{Describe(d.Scope)}: {d.Effect}").Single());
        Assert.Equal((new Mode(512, 384), 1), (renderer.Memory.LowestMode, renderer.Memory.BackBuffers));
        Assert.Equal([16, 32], renderer.Memory.Depths);
        Assert.Equal(
            [new TexturePreset("low", 3 << 20, TextureFormat.Paletted8, false), new TexturePreset("high", 9 << 20, TextureFormat.Bits16, true)],
            renderer.Memory.Presets);
        Assert.True(title.Renderers[1].IsSoftware);
        Assert.Equal(["dos", "windows-98se"], title.Renderers[1].Oses.Select(os => os.Id));
        var hazard = title.Hazards.Single();
        Assert.Equal((TimingHazardKind.WorkPerFrame, true, 60.0), (hazard.Kind, hazard.FollowsFrameRate, hazard.HighestFps!.Value));
        Assert.Equal(("pentium-ii-class", 1000.0, true), (hazard.Sightings[0].ProcessorFamily, hazard.Sightings[0].Megahertz, hazard.Sightings[0].Works));
    }

    [Fact]
    public void Rig_library_and_observation_are_linked()
    {
        var (rig, library, observation) = (_catalog.Rigs.Single(), _catalog.Libraries.Single(), _catalog.Observations.Single());

        Assert.Equal((450.0, 1, 128), (rig.Megahertz!.Value, rig.Cores!.Value, rig.MemoryMebibytes!.Value));
        Assert.Equal(("agp-2.0", 2, 3.3), (rig.Slots[0].Bus.Id, rig.Slots[0].Speed!.Value, rig.Slots[0].Key!.Value));
        Assert.Equal((new Mode(1024, 768), 85.0), (rig.Monitor!.Highest!.Value, rig.Monitor.RefreshHertz!.Value));
        var entry = library.Entries.Single();
        Assert.Equal((3.0, Strength.Severe, "high"), (entry.Weight, entry.MustHaveTolerance!.Value, entry.Preset));
        Assert.Equal((true, new Mode(800, 600), 16, 30.0), (library.Policy.Wrappers is [], library.Policy.Mode!.Value, library.Policy.Depth!.Value, library.Policy.FpsFloor!.Value));
        Assert.Same(_catalog.Titles.Single().Renderers[0], observation.Renderer);
        Assert.Equal(("nl4-retail", "nl-9x@2.10", "windows-98se"), (observation.Card!.Id, observation.Driver!.Id, observation.Os!.Id));
        Assert.IsType<ObservedWrapper.None>(observation.Wrapper);
        Assert.Equal("fog-table Broken", observation.Seen.Select(s => $"{s.Capability} {s.Seen}").Single());
        Assert.Equal((Grade.Measured, "Ada at the bench"), (observation.Evidence.Grade, observation.Evidence.Source!.Text));
    }

    internal static string Describe(SupplyFact fact) =>
        $"{Describe(fact.Scope)}: {fact.Capability} {fact.Reach} {fact.Support} {fact.Evidence.Grade}";

    private static string Describe(Scope scope)
    {
        var parts = new List<string>();
        if (scope.Chip is { } chip)
            parts.Add($"chip {chip}");
        if (scope.Card is { } card)
            parts.Add($"card {card}");
        if (scope.Drivers is { } range)
            parts.Add($"{range.Branch} {range.First}..{range.Last}");
        if (scope.Os is { } os)
            parts.Add($"on {os}");
        if (scope.Api is { } api)
            parts.Add($"under {api}");
        return string.Join(' ', parts);
    }
}
