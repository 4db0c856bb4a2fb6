using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.FaultAssert;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_quantity
{
    private const string Size = "it wants a size such as '16 MiB' (KiB, MiB or GiB; 1 MiB = 1,048,576 bytes)";
    private const string Clock = "it wants a clock such as '100 MHz' (kHz, MHz or GHz)";
    private const string Money = "it wants money such as '18..25 EUR' or '30 EUR', the lower figure first, with a currency of three letters";

    [Theory]
    [InlineData("memory: {unified: 16}", 65, "FM110: '16' in 'unified' lacks one of the units known here; " + Size)]
    [InlineData("memory: {unified: 16 MB}", 65, "FM110: '16 MB' in 'unified' lacks one of the units known here; " + Size)]
    [InlineData("memory: {unified: many}", 65, "FM109: 'many' is no value of 'unified'; " + Size)]
    [InlineData("memory: {unified: -16 MiB}", 65, "FM109: '-16 MiB' is no value of 'unified'; " + Size)]
    [InlineData("memory: {unified: '1,5 MiB'}", 65, "FM109: '1,5 MiB' is no value of 'unified'; " + Size)]
    [InlineData("clocks: {core: 90}", 62, "FM110: '90' in 'core' lacks one of the units known here; " + Clock)]
    [InlineData("clocks: {core: 90 Mhz}", 62, "FM110: '90 Mhz' in 'core' lacks one of the units known here; " + Clock)]
    [InlineData("prices: [{sold: 18..25}]", 63, "FM110: '18..25' in 'sold' lacks one of the units known here; " + Money)]
    [InlineData("prices: [{sold: 25..18 EUR}]", 63, "FM109: '25..18 EUR' is no value of 'sold'; " + Money)]
    [InlineData("prices: [{sold: 18 euro}]", 63, "FM109: '18 euro' is no value of 'sold'; " + Money)]
    [InlineData("prices: [{sold: 18 EUR, date: 11.2.2026}]", 77, "FM109: '11.2.2026' is no value of 'date'; it wants a date such as 2026-02-11")]
    [InlineData("prices: [{sold: 18 EUR, date: 2026-02-30}]", 77, "FM109: '2026-02-30' is no value of 'date'; it wants a date such as 2026-02-11")]
    [InlineData("year: 98", 53, "FM109: '98' is no value of 'year'; it wants a whole number from 1970 to 2100")]
    [InlineData("connector: {bus: pci, volts: [33]}", 77, "FM109: '33' is no value of 'volts'; it wants a voltage such as 3.3 (above 0, at most 12)")]
    [InlineData("connector: {bus: pci, speed: 3}", 76, "FM107: '3' is no value of 'speed': it is 1, 2, 4, 8 or 16")]
    [InlineData("add-in: maybe", 55, "FM107: 'maybe' is no value of 'add-in': it is yes, no, true or false")]
    [InlineData("grade: mesured", 54, "FM107: 'mesured' is no value of 'grade': it is measured, documented, inferred or hearsay; did you mean 'measured'?")]
    [InlineData("hardware-ids: [VEN_1A2B]", 62, @"FM109: 'VEN_1A2B' is no value of 'hardware-ids'; it wants an ID such as 'PCI\VEN_1234&DEV_5678', optionally with &SUBSYS_ and &REV_, in single quotes")]
    [InlineData("os: {dos: emulated}", 57, "FM107: 'emulated' is no value of 'dos': it is yes, no or unknown")]
    public void Without_its_unit_or_form_is_a_fault(string keys, int column, string fault) => Gives(
        $"chips: {{c: {{name: C}}}}\ncards: {{k: {{name: K, chip: c, source: manual, {keys}}}}}",
        $"world.yaml(2,{column}): error {fault}");

    [Theory]
    [InlineData("512 KiB", 524_288)]
    [InlineData("16MiB", 16_777_216)]
    [InlineData("1.5 MiB", 1_572_864)]
    [InlineData("1 GiB", 1_073_741_824)]
    public void Becomes_bytes(string size, long bytes) => Assert.Equal(
        bytes,
        Worlds.Load($"chips: {{c: {{name: C}}}}\ncards: {{k: {{name: K, chip: c, memory: {{unified: {size}}}}}}}").Cards[0].Memory!.FramePool);

    [Theory]
    [InlineData("drivers: {d: {name: D, source: manual, os: [dos], lists: [k], versions: [{version: a@b}]}}", "1,84", "'a@b' is no value of 'version'; it wants a version as its publisher wrote it, without '@'")]
    [InlineData("drivers: {d: {name: D, source: manual, os: [dos], lists: [k], versions: [{version: '1', sha256: 12ab}]}}", "1,97", "'12ab' is no value of 'sha256'; it wants 64 hexadecimal digits")]
    [InlineData("features: {f: {name: F, family: f, source: manual, direct3d: [{generation: 6, field: Caps, value: 0x1}]}}", "1,76", "'6' is no value of 'generation'; it wants a whole number from 7 to 9")]
    [InlineData("features: {f: {name: F, family: f, source: manual, direct3d: [{generation: 7, field: Caps, value: 0x1FFFFFFFF}]}}", "1,99", "'0x1FFFFFFFF' is no value of 'value'; it wants a number of 32 bits such as 0x100")]
    [InlineData("rigs: {r: {name: R, processor: {cores: none}}}", "1,40", "'none' is no value of 'cores'; it wants a whole number from 1 to 64")]
    [InlineData("rigs: {r: {name: R, monitor: {name: M, refresh: fast, highest: 1024}}}", "1,49", "'fast' is no value of 'refresh'; it wants a rate such as '85 Hz'", "1,64", "'1024' is no value of 'highest'; it wants a mode such as 640x480")]
    [InlineData("libraries: {l: {name: L, titles: {}, policy: {worth: {severe: 2}}}}", "1,63", "'2' is no value of 'severe'; it wants a number from 0 to 1")]
    public void Of_any_kind_has_its_form(string world, params string[] faults) => Gives(
        world + "\nchips: {c: {name: C}}\ncards: {k: {name: K, chip: c, source: manual}}",
        [.. faults.Chunk(2).Select(fault => $"world.yaml({fault[0]}): error FM109: {fault[1]}")]);

    [Fact]
    public void Of_memory_is_one_pool_or_two() => Gives(
        """
        chips: {c: {name: C}}
        cards:
          a: {name: A, chip: c, source: manual, memory: {textures-from-system: yes}}
          b: {name: B, chip: c, source: manual, memory: {unified: 4 MiB, frame: 2 MiB}}
          d: {name: D, chip: c, source: manual, memory: {frame: 2 MiB}}
        """,
        "world.yaml(3,49): error FM111: 'memory' is one pool ('unified') or two ('frame' and 'texture'), and always one of these",
        "world.yaml(4,49): error FM111: 'memory' is one pool ('unified') or two ('frame' and 'texture'), and always one of these",
        "world.yaml(5,49): error FM102: 'memory' of card 'd' needs the key 'texture'");
}

public sealed class A_word_of_a_fixed_set
{
    [Fact]
    public void Is_listed_with_the_nearest() => Gives(
        """
        chips: {c: {name: C, source: manual, supply: {fog-table: brokn, tex-pal8: 1, mt-units: {is: yess, level: "2", reach: upto}}}}
        """,
        "world.yaml(1,58): error FM107: 'brokn' is no value of fog-table: it is yes, no, broken, emulated or unknown; did you mean 'broken'?",
        "world.yaml(1,75): error FM107: '1' is no value of tex-pal8: it is yes, no, broken, emulated or unknown",
        "world.yaml(1,93): error FM107: 'yess' is no value of 'is': it is yes, no, broken, emulated or unknown; did you mean 'yes'?",
        "world.yaml(1,118): error FM107: 'upto' is no value of 'reach': it is up-to, at-least or at; did you mean 'up-to'?");

    [Fact]
    public void Is_listed_for_titles_and_libraries() => Gives(
        """
        titles:
          t:
            name: T
            source: manual
            os: [dos]
            hazards: [{kind: too-fast, effect: E}]
            renderers: {a: {api: vga, needs: {musst: [fog-table], must: [{need: tex-8888, broken: bad}]}, memory: {depths: [17], depth-buffer: 8, presets: [{name: p, textures: 1 MiB, format: dxt}]}}}
        libraries: {l: {name: L, titles: {t: {must: yes, tolerance: bad}}, policy: {depth: 12, samples: 0}}}
        """,
        "world.yaml(6,22): error FM107: 'too-fast' is no value of 'kind': it is loop-calibration, work-per-frame, timer-underflow or unsynchronised-cores",
        "world.yaml(7,39): error FM101: unknown key 'musst' in 'needs' of renderer 'a' of title 't'; did you mean 'must'?",
        "world.yaml(7,91): error FM107: 'bad' is no value of 'broken': it is must, severe, cosmetic, ungraded, bonus or unknown",
        "world.yaml(7,117): error FM107: '17' is no value of 'depths': it is 8, 15, 16, 24 or 32",
        "world.yaml(7,136): error FM107: '8' is no value of 'depth-buffer': it is none, 16, 24, 32 or as-colour",
        "world.yaml(7,184): error FM107: 'dxt' is no value of 'format': it is 16-bit, 8-bit-palette, 32-bit, compressed-4 or compressed-8",
        "world.yaml(8,61): error FM107: 'bad' is no value of 'tolerance': it is none, cosmetic or severe",
        "world.yaml(8,84): error FM107: '12' is no value of 'depth': it is 8, 15, 16, 24 or 32",
        "world.yaml(8,97): error FM109: '0' is no value of 'samples'; it wants a whole number from 1 to 16");
}

public sealed class A_level
{
    private const string Ladder = "its levels are 1.0, 1.1, 1.2, 1.3, 1.4, 2.0, 3.0";

    [Theory]
    [InlineData("ps-version: 1.5", 59, "'1.5' is no level of ps-version; " + Ladder)]
    [InlineData("ps-version: 1.5+", 59, "'1.5' is no level of ps-version; " + Ladder)]
    [InlineData("ps-version: yes", 59, "ps-version needs a level here; " + Ladder)]
    [InlineData("ps-version: {is: broken}", 59, "ps-version needs a level here; " + Ladder)]
    [InlineData("ps-version: {is: yes, level: 9}", 76, "'9' is no level of ps-version; " + Ladder)]
    [InlineData("fog-table: {is: yes, level: 9}", 75, "fog-table has no levels, so '9' says nothing here")]
    [InlineData("stencil-bits: 8 bits", 61, "'8 bits' is no level of stencil-bits; its levels are 1, 4, 8")]
    public void Outside_its_ladder_is_a_fault(string statement, int column, string fault) => Gives(
        $"chips: {{c: {{name: C, source: manual, supply: {{{statement}}}}}}}",
        $"world.yaml(1,{column}): error FM108: {fault}");

    [Fact]
    public void Is_obligatory_in_needs_and_apis() => Gives(
        "titles: {t: {name: T, source: manual, os: [dos], renderers: {a: {api: direct3d, needs: {must: [mt-units, fog-table 1]}}}}}",
        "world.yaml(1,71): error FM108: direct3d needs a level here; its levels are 2, 3, 5, 6, 7, 8, 8.1, 9",
        "world.yaml(1,96): error FM108: mt-units needs a level here; its levels are 1, 2, 3, 4, 5, 6, 7, 8",
        "world.yaml(1,106): error FM108: fog-table has no levels, so '1' says nothing here");

    [Fact]
    public void Cannot_be_a_word_with_a_meaning_of_its_own() => Gives(
        "features: {f: {name: F, family: fog, source: manual, levels: [none, '1+', '2', '2']}}",
        "world.yaml(1,63): error FM111: 'none' has a meaning of its own and cannot name a level",
        "world.yaml(1,69): error FM111: '1+' has a meaning of its own and cannot name a level",
        "world.yaml(1,80): error FM104: level '2' occurs a second time in feature 'f'");
}

public sealed class A_version_that_looks_like_a_number
{
    [Theory]
    [InlineData("1.20")]
    [InlineData("007")]
    [InlineData("1e5")]
    [InlineData("no")]
    [InlineData("0x10")]
    [InlineData("4.10.01.2183 beta")]
    public void Stays_as_written(string version)
    {
        var catalog = Worlds.Load(
            """
            chips: {c: {name: C}}
            cards: {k: {name: K, chip: c}}
            drivers: {d: {name: D, os: [dos], lists: [k], versions: [VERSION]}}
            titles: {t: {name: T, version: VERSION, os: [dos], renderers: {a: {api: vga}}}}
            observations: [{title: t, runs: yes, driver: d VERSION, by: Ada}]
            """.Replace("VERSION", version));

        Assert.Equal((version, version), (catalog.Drivers.Single().Version, catalog.Titles[0].Version));
        Assert.Same(catalog.Drivers.Single(), catalog.Observations[0].Driver);
    }
}
