using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_statement_about_supply
{
    private static string[] Facts(string supply) =>
    [
        .. Worlds.Load($"chips: {{c: {{name: C, source: manual, supply: {{{supply}}}}}}}").Facts
            .Select(A_world_with_one_of_everything.Describe)
            .Select(text => text.Replace("chip c: ", "").Replace(" Documented", "")),
    ];

    [Theory]
    [InlineData("fog-table: yes", "fog-table At Yes")]
    [InlineData("fog-table: no", "fog-table At No")]
    [InlineData("fog-table: broken", "fog-table At Broken")]
    [InlineData("fog-table: emulated", "fog-table At Emulated")]
    [InlineData("ps-version: 1.3", "ps-version 1.3 UpTo Yes")]
    [InlineData("ps-version: 1.3+", "ps-version 1.3 AtLeast Yes")]
    [InlineData("ps-version: none", "ps-version 1.0 At No")]
    [InlineData("ps-version: no", "ps-version 1.0 At No")]
    [InlineData("stencil-bits: 8 bit", "stencil-bits 8 UpTo Yes")]
    [InlineData("opengl: '1.1'", "opengl 1.1 UpTo Yes")]
    [InlineData("vga: yes", "vga At Yes")]
    public void May_be_short(string supply, string fact) => Assert.Equal([fact], Facts(supply));

    [Theory]
    [InlineData("fog-table: {is: broken}", "fog-table At Broken")]
    [InlineData("ps-version: {level: 1.3}", "ps-version 1.3 UpTo Yes")]
    [InlineData("ps-version: {is: yes, level: 1.3, reach: at-least}", "ps-version 1.3 AtLeast Yes")]
    [InlineData("ps-version: {is: broken, level: 1.4}", "ps-version 1.4 At Broken")]
    [InlineData("ps-version: {is: no, level: 1.4}", "ps-version 1.4 At No")]
    [InlineData("ps-version: {is: no}", "ps-version 1.0 At No")]
    [InlineData("ps-version: {is: emulated, level: 1.1, reach: up-to}", "ps-version 1.1 UpTo Emulated")]
    [InlineData("fog-table: {is: yes, os: dos, api: glide}", "chip c on dos under glide: fog-table At Yes")]
    [InlineData("fog-table: {is: yes, grade: hearsay}", "fog-table At Yes Hearsay")]
    [InlineData("fog-table: {is: yes, source: bench}", "fog-table At Yes Measured")]
    public void May_be_long(string supply, string fact) => Assert.Equal([fact], Facts(supply));

    [Fact]
    public void May_be_a_list_of_short_and_long_forms() => Assert.Equal(
        ["fog-table At Yes", "chip c on dos: fog-table At Broken"],
        Facts("fog-table: [yes, {is: broken, os: dos}]"));

    [Theory]
    [InlineData("fog-table: unknown")]
    [InlineData("ps-version: unknown")]
    [InlineData("fog-table: {is: unknown, note: looked for in vain}")]
    [InlineData("fog-table: ")]
    public void States_nothing_where_it_is_unknown(string supply) => Assert.Empty(Facts(supply));

    [Fact]
    public void Keeps_its_note() => Assert.Equal(
        "after a reboot",
        Worlds.Load("chips: {c: {name: C, supply: {fog-table: {is: yes, note: after a reboot}}}}").Facts.Single().Note);

    [Fact]
    public void May_stand_with_a_branch_a_version_a_card_or_alone()
    {
        var catalog = Worlds.Load(
            """
            chips: {c: {name: C}}
            cards: {k: {name: K, chip: c, source: manual, supply: {fog-table: {is: no, driver: d, to: "2"}}}}
            drivers:
              d:
                name: D
                source: manual
                os: [windows-98se]
                lists: [k]
                offers: {direct3d: {level: "6", grade: inferred}, opengl: none}
                versions: ["1", {version: "2", offers: {opengl: "1.1"}}, {version: "3", supply: {tex-pal8: broken}}]
                supply: {fog-table: yes, tex-dxt1: {is: yes, from: "2", chip: c}, tex-8888: {is: no, to: "2", card: k, os: windows-98se}}
            facts:
              - {driver: d 2, source: bench, tex-env-bump: yes, note: seen}
              - {os: dos, api: vesa, source: manual, vbe-lfb: yes}
            """);

        Assert.Equal(
            [
                "card k d 0..1: fog-table At No Documented",
                "d 0..0: direct3d 6 UpTo Yes Inferred",
                "d 0..0: opengl 1.0 At No Documented",
                "d 1..1: opengl 1.1 UpTo Yes Documented",
                "d 1..1: direct3d 6 UpTo Yes Inferred",
                "d 2..2: direct3d 6 UpTo Yes Inferred",
                "d 2..2: opengl 1.0 At No Documented",
                "d 2..2: tex-pal8 At Broken Documented",
                "d 0..2: fog-table At Yes Documented",
                "chip c d 1..2: tex-dxt1 At Yes Documented",
                "card k d 0..1 on windows-98se: tex-8888 At No Documented",
                "d 1..1: tex-env-bump At Yes Measured",
                "on dos under vesa: vbe-lfb At Yes Documented",
            ],
            catalog.Facts.Select(A_world_with_one_of_everything.Describe));
    }
}

public sealed class A_need
{
    private static string Need(string needs)
    {
        var renderer = Worlds.Load(
            "titles: {t: {name: T, os: [dos], renderers: {r: {api: vga, needs: NEEDS, memory: {presets: [{name: high, textures: 1 MiB}]}}}}}"
                .Replace("NEEDS", needs)).Titles[0].Renderers[0];
        return string.Join("; ", renderer.Needs.Select(n =>
            $"{n.Strength} {n}{(n.HardwareOnly ? " in hardware" : "")}{(n.WhenBroken is { } b ? $" broken {b}" : "")} {n.Condition} {n.Effect}".TrimEnd()));
    }

    [Theory]
    [InlineData("{must: [mt-units 2, fog-table]}", "Must mt-units 2; Must fog-table")]
    [InlineData("{must: fog-table}", "Must fog-table")]
    [InlineData("{severe: {tex-pal8: Flat colours}}", "Severe tex-pal8  Flat colours")]
    [InlineData("{severe: {tex-pal8: }}", "Severe tex-pal8")]
    [InlineData("{severe: {mt-units 2: {broken: cosmetic, effect: No light maps}}}", "Severe mt-units 2 broken Cosmetic  No light maps")]
    [InlineData("{ungraded: [{any-of: [tex-dxt1, tex-pal8], hardware: yes}]}", "Ungraded tex-dxt1 or tex-pal8 in hardware")]
    [InlineData("{bonus: [{need: fog-table, when: {depth: 32}}]}", "Bonus fog-table AtDepth { Bits = 32 }")]
    [InlineData("{unknown: [{need: fog-table, when: {preset: high}}]}", "Unknown fog-table AtPreset { Preset = high }")]
    [InlineData("{cosmetic: [fog-table, {need: fog-table, when: {depth: 32}}]}", "Cosmetic fog-table; Cosmetic fog-table AtDepth { Bits = 32 }")]
    public void May_be_short_or_long(string needs, string read) => Assert.Equal(read, Need(needs));
}
