using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>One driver version, line by line, with what the collection states about it.</summary>
public sealed record DriverVersionReport(string Id, string Name, IReadOnlyList<NamedText> Facts, string Notes, IReadOnlyList<string> Statements);

/// <summary>A branch of drivers with its versions, newest first.</summary>
public sealed record DriverReport(string Id, string Name, string Line, IReadOnlyList<DriverVersionReport> Versions)
{
    /// <summary>The report of a branch.</summary>
    public static DriverReport Of(Catalog catalog, DriverBranch branch)
    {
        var versions = branch.Versions.Reverse().Select(driver => VersionOf(catalog, driver)).ToList();
        var systems = catalog.Oses.Where(os => branch.Versions.Any(driver => driver.Oses.Contains(os))).Select(os => os.Name).ToList();
        return new DriverReport(branch.Id, branch.Name, $"{Names.Count(versions.Count, "version")} for {Names.List(systems)}", versions);
    }

    /// <summary>Every driver version of a collection, branch by branch, as a table.</summary>
    public static Table TableOf(Catalog catalog) => new(
        "Drivers", "Every version on record, newest first in each branch. Before installing one, keep an image of the system that you can boot from.",
        [new("Branch"), new("Version"), new("Systems"), new("Released"), new("Lists"), new("What is recorded about it"), new("Notes"), new("SHA-256")],
        catalog.Branches.SelectMany(branch => branch.Versions.Reverse().Select(driver => (IReadOnlyList<TableCell>)
        [
            new TableCell(branch.Name), new TableCell(driver.Version), new TableCell(Names.List(driver.Oses.Select(os => os.Name).ToList())),
            new TableCell(driver.Released is { } date ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : ""),
            new TableCell(Names.List(driver.Lists.Select(card => card.Name).ToList())),
            new TableCell(string.Join('\n', VersionOf(catalog, driver).Statements)), new TableCell(driver.Notes), new TableCell(driver.Sha256),
        ])).ToList());

    private static DriverVersionReport VersionOf(Catalog catalog, Driver driver)
    {
        var facts = new List<NamedText>();
        Add("Systems", Names.List(driver.Oses.Select(os => os.Name).ToList()));
        Add("Lists", Names.List(driver.Lists.Select(card => card.Name).ToList()));
        Add("Released", driver.Released is { } date ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "");
        foreach (var forced in driver.Forced)
            Add($"Forced onto {forced.Card.Name}", $"{ForcedText(forced.Works)} ({FactWording.Evidence(forced.Evidence)})");
        Add("Checksum", driver.Sha256);
        Add("Source", FactWording.Evidence(driver.Evidence));
        return new DriverVersionReport(
            Tile.IdOf(driver), Names.Of(driver), facts, driver.Notes,
            catalog.Facts.Where(fact => fact.Scope.Drivers?.Contains(driver) == true).Select(FactWording.Fact).Distinct(StringComparer.Ordinal).ToList());

        void Add(string name, string text)
        {
            if (text.Length > 0)
                facts.Add(new NamedText(name, Names.Sentence(text)));
        }
    }

    private static string ForcedText(Support works) => works switch
    {
        Support.Yes or Support.Emulated => "works",
        Support.No => "does not work",
        Support.Broken => "works badly",
        Support.Unknown => "tried without a clear result",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
