using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Writing;

/// <summary>Edits of files that were written by hand for reading: the demo's cards, drivers and titles, each in its own style.</summary>
public sealed class DemoEdits
{
    private static readonly IReadOnlyList<SourceText> Files =
        CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files;

    [Fact]
    public void A_key_for_every_card_adds_its_text_and_takes_nothing_away()
    {
        var catalog = CollectionLoader.Load(Files).Catalog!;
        List<RecordChange> records =
        [
            .. catalog.Cards.Select(card => new RecordChange(
                [new Step.Key("cards"), new Step.Key(card.Id)], "x.yaml", [new KeyChange("cautions", YamlValue.Words(["Zebra finch"]), KeyRule.Join)])),
            .. catalog.Drivers.Where(driver => driver.Kind != FeatureMatrix.Model.DriverKind.Bios).Select(driver => new RecordChange(
                [new Step.Key("drivers"), new Step.Key(driver.Branch.Id), new Step.Key("versions"), new Step.Item([("version", driver.Version)], [])],
                "x.yaml", [KeyChange.Keep("sha256", new string('a', 64))])),
        ];
        Assert.True(records.Count > 25);
        var change = CollectionEditor.Change(Files, records);
        Assert.Empty(change.Kept);
        Assert.DoesNotContain(change.Files, file => file.Before is null);
        foreach (var file in change.Files)
            Assert.True(IsSubsequence(file.Before!, file.After), file.Path);
        var after = change.Result.Catalog!;
        Assert.All(after.Cards, card => Assert.Contains("Zebra finch", card.Cautions));
        Assert.All(after.Drivers.Where(driver => driver.Kind != FeatureMatrix.Model.DriverKind.Bios), driver => Assert.Equal(64, driver.Sha256.Length));

        var written = change.Files.ToDictionary(file => file.Path, file => file.After);
        var again = CollectionEditor.Change([.. Files.Select(file => file with { Text = written.GetValueOrDefault(file.Path, file.Text) })], records);
        Assert.Empty(again.Files);
    }

    private static bool IsSubsequence(string part, string whole)
    {
        var at = 0;
        foreach (var c in whole)
        {
            if (at < part.Length && part[at] == c)
                at++;
        }

        return at == part.Length;
    }
}
