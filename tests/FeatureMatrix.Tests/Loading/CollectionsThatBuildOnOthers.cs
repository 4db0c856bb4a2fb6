using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>A shared collection of chips below, one of somebody's own cards on top.</summary>
public sealed class Collections_that_build_on_others : IDisposable
{
    private const string Shared =
        """
        collection: {name: Shared boards}
        people: {lantern: {name: Ida Quill}, ferryman: {name: Tam Brody, name-may-be-shown: yes}}
        sources:
          heron-manual: {text: Heron manual, by: ferryman}
        chips:
          heron: {name: Heron, source: heron-manual, supply: {tex-pal8: no, fog-table: yes}}
        cards:
          heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, source: heron-manual}
        facts:
          - {chip: heron, tex-8888: no, source: {text: notes, by: lantern}}
        """;

    private readonly string _root = Directory.CreateTempSubdirectory("shared-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Have_what_all_have_and_each_statement_keeps_its_own_source()
    {
        var catalog = Loaded(
            """
            chips: {heron: {source: {text: own bench, by: lantern, grade: measured}, supply: {tex-pal8: yes, tex-dxt1: no}}}
            cards: {heron-16: {memory: {unified: 8 MiB}}, heron-32: {name: Heron 32, chip: heron, source: the label}}
            facts: [{chip: heron, tex-8888: yes, source: own bench}]
            """).Catalog!;

        Assert.Equal("My shelf", catalog.Name);
        Assert.Equal(
            [("Heron 16", new VideoMemory.Unified(8 << 20), "heron-manual"), ("Heron 32", null, "")],
            catalog.Cards.Select(card => (card.Name, (VideoMemory.Unified?)card.Memory, card.Evidence.Source!.Id)));
        Assert.Equal(
            [
                "Heron: paletted textures yes (measured: own bench, by lantern)",
                "Heron: compressed textures no (measured: own bench, by lantern)",
                "Heron: table fog yes (documented: Heron manual, by Tam Brody)",
                "Heron: 32-bit textures yes (documented: own bench)",
                "Heron: 32-bit textures no (documented: notes, by lantern)",
            ],
            catalog.Facts.Select(FactWording.Fact));
    }

    [Fact]
    public void Say_where_they_hide_what_another_says()
    {
        var hidden = Loaded("chips: {heron: {supply: {tex-pal8: yes}, source: own bench}}").Hidden;
        Assert.Equal(
            [
                new HiddenKey("chip 'heron'", "tex-pal8", new Origin("collection.yaml", 2, 26), new Origin("../shared/collection.yaml", 6, 55)),
                new HiddenKey("chip 'heron'", "source", new Origin("collection.yaml", 2, 42), new Origin("../shared/collection.yaml", 6, 24)),
            ],
            hidden);
    }

    [Fact]
    public void Load_alike_from_a_folder_inside()
    {
        Write("mine/base/collection.yaml", Shared);
        Assert.Equal(["Heron 16"], Loaded("", "base").Catalog!.Cards.Select(card => card.Name));
    }

    [Fact]
    public void Reach_through_several_collections_the_nearest_of_which_counts()
    {
        Write("middle/collection.yaml", "collection: {name: Middle, builds-on: [../shared]}\ncards: {heron-16: {name: Heron 16 of the middle, memory: {unified: 4 MiB}}}");
        var catalog = Loaded("cards: {heron-16: {memory: {unified: 2 MiB}}}", "[../middle, ../shared]").Catalog!;
        var card = Assert.Single(catalog.Cards);
        Assert.Equal(("Heron 16 of the middle", new VideoMemory.Unified(2 << 20)), (card.Name, card.Memory));
    }

    [Theory]
    [InlineData("../sharde", "collection.yaml(1,41): error FM008: there is no collection in '../sharde': that folder needs a collection.yaml")]
    [InlineData("/shared", "collection.yaml(1,41): error FM007: '/shared' is no relative folder; write the way from this collection to the other with /, such as ../shared")]
    [InlineData("../mine", "collection.yaml(1,41): error FM009: '../mine' builds on what builds on it; one of the two has to stand alone")]
    public void Name_a_folder_that_cannot_be(string folder, string fault) => Assert.Equal([fault], Loaded("", folder).Faults.Select(one => one.ToString()));

    [Fact]
    public void Refuse_a_source_that_two_of_them_call_by_one_id()
    {
        var fault = Assert.Single(Loaded("sources: {heron-manual: {text: Another manual}}").Faults, one => one.Severity == Severity.Error);
        Assert.Equal(
            "../shared/collection.yaml(4,3): error FM104: source 'heron-manual' is defined a second time; the first is at collection.yaml(2,11)", fault.ToString());
    }

    [Fact]
    public void Are_changed_on_top_only()
    {
        Loaded("");
        var texts = CollectionFolder.Read(Path.Combine(_root, "mine"), Path.Combine(_root, "words"));
        var record = new RecordChange([new Step.Key("cards"), new Step.Key("heron-16")], "cards.yaml", [KeyChange.Keep("notes", "Bought at a flea market.")]);
        var change = CollectionEditor.Change(texts.Files, [record]);
        Assert.Equal(["cards.yaml"], change.Files.Select(file => file.Path));
        Assert.Equal(("Heron 16", "Bought at a flea market."), (Assert.Single(change.Result.Catalog!.Cards).Name, change.Result.Catalog.Cards[0].Notes));
    }

    private LoadResult Loaded(string own, string buildsOn = "../shared")
    {
        Write("shared/collection.yaml", Shared);
        Write("mine/collection.yaml", $"collection: {{name: My shelf, builds-on: {buildsOn}}}\n{own}");
        Write("words/words.yaml", Worlds.Vocabulary);
        var texts = CollectionFolder.Read(Path.Combine(_root, "mine"), Path.Combine(_root, "words"));
        return CollectionLoader.Load(texts.Files, texts.Faults);
    }

    private void Write(string path, string text)
    {
        var file = Path.Combine(_root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }
}
