using System.Text.Json;

namespace FeatureMatrix.Tests.Cli;

public sealed class A_collection_under_check : IDisposable
{
    private const string World =
        """
        collection: {name: Reed}
        sources: {sheet: {text: Data sheet}, errata: {text: Errata sheet}}
        chips:
          reed: {name: Reed, supply: {fog-table: [{is: yes, source: sheet}, {is: no, source: errata}], tex-pal8: {is: yes, source: sheet}}}
        cards:
          reed-8: {name: Reed 8, chip: reed, source: sheet, memory: {unified: 8 MiB}, prices: [{sold: 20 EUR, date: 2025-01-10}]}
          reed-16: {name: Reed 16, chip: reed, source: sheet}
        drivers:
          reed-9x: {name: Reed driver, os: windows-98se, lists: reed-8, offers: {direct3d: "6"}, source: sheet, versions: ["1.0"]}
        titles:
          marsh:
            name: Marsh
            os: windows-98se
            renderers: {direct3d: {api: direct3d 6, needs: {severe: [fog-table], ungraded: [tex-dxt1], must: [tex-pal8]}}}
        observations:
          - {title: marsh, card: reed-8, driver: reed-9x 1.0, os: windows-98se, wrapper: none, seen: {tex-pal8: no}, by: Ada}
        """;

    private static readonly JsonSerializerOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly TemporaryFolder _folder = new();

    public A_collection_under_check() => File.WriteAllText(_folder["collection.yaml"], World);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Shows_what_disagrees_and_what_is_missing_with_what_to_do() => Assert.Equal(
        """
        Kind,About,What there is,What to do
        conflict,table (pixel) fog,Reed: table (pixel) fog yes (documented: Data sheet); Reed: table (pixel) fog no (documented: Errata sheet),explain marsh reed-16
        observation against records,Marsh,"paletted textures (8-bit index) missing with Reed 8, Reed driver 1.0, Windows 98 Second Edition, no wrapper (measured: Ada) against Reed: paletted textures (8-bit index) yes (documented: Data sheet)",explain marsh reed-8
        no driver list,Reed 16,"No driver lists it, so only what an unrecorded driver may do is known.",new driver ID --card reed-16 --os SYSTEM
        no memory,Reed 16,Every memory question is open.,"Write 'memory' in collection.yaml(7,3)."
        no severity,Marsh,"Nobody graded what it looks like without DXT1 (S3TC) compression, 4 bits a texel.","Grade it in collection.yaml(14,85), or record what was seen under 'observations'."
        no source,"collection.yaml(11,3)","title 'marsh': 4 statements from here on name no source, so they count as inferred at best; 'source' written once for all covers them",Write 'source' once for all of it.
        old price,Reed 8,The latest is of 2025-01-10.,"Add one under 'prices' in collection.yaml(6,3)."
        """,
        Run("--format", "csv", "--date", "2026-03-01").Results.ReplaceLineEndings("\n").TrimEnd());

    [Fact]
    public void Judges_no_price_without_a_date() =>
        Assert.DoesNotContain("old price", Run("--format", "csv").Results, StringComparison.Ordinal);

    [Fact]
    public void Says_how_much_is_recorded_of_each_card() => Assert.Equal(
        "Card,Recorded,Features,Drivers\nReed 16,66,2 of 3,0\nReed 8,66,2 of 3,1",
        Run("--cards", "--format", "csv").Results.ReplaceLineEndings("\n").TrimEnd());

    [Fact]
    public void Writes_its_faults_as_sarif()
    {
        File.AppendAllText(_folder["collection.yaml"], "\nrigs: {tower: {nam: Tower}}\n");
        var file = _folder["faults.sarif"];

        var run = Run("--sarif", file);

        Assert.Equal(1, run.Exit);
        using var log = JsonDocument.Parse(File.ReadAllText(file));
        Assert.Equal("2.1.0", log.RootElement.GetProperty("version").GetString());
        var whole = log.RootElement.GetProperty("runs")[0];
        Assert.Equal(["FM101", "FM102", "FM201"], whole.GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray().Select(rule => rule.GetProperty("id").GetString()));
        Assert.Equal(
            """{"ruleId":"FM101","ruleIndex":0,"level":"error","message":{"text":"unknown key 'nam' in rig 'tower'; did you mean 'name'?"},"locations":[{"physicalLocation":{"artifactLocation":{"uri":"collection.yaml","uriBaseId":"COLLECTION"},"region":{"startLine":17,"startColumn":16}}}]}""",
            JsonSerializer.Serialize(whole.GetProperty("results").EnumerateArray().Single(result => result.GetProperty("ruleId").GetString() == "FM101"), Plain));
    }

    private CommandRun Run(params string[] args) => CommandRun.Of(["check", "--collection", _folder.Path, .. args]);
}
