using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>One version of a wrapper, line by line.</summary>
public sealed record WrapperVersionReport(string Id, string Name, IReadOnlyList<NamedText> Facts);

/// <summary>A title and card for which a wrapper matters, as its page shows it.</summary>
public sealed record WrapperUseRow(
    string TitleId, string TitleName, string CardId, string CardName, string System, string Use, string Version, string Without, string With);

/// <summary>Everything about one wrapper.</summary>
public sealed record WrapperPage(
    string Id, string Name, string Line, string Notes, IReadOnlyList<WrapperVersionReport> Versions, IReadOnlyList<WrapperUseRow> Uses, Table Table)
{
    /// <summary>The page of a wrapper.</summary>
    public static WrapperPage Of(WrapperReport all, Wrapper wrapper)
    {
        var rows = all.Rows.Where(row => row.Version.Wrapper == wrapper).ToList();
        var titles = rows.Select(row => row.Title).Distinct().Count();
        var needed = rows.Where(row => row.Use == WrapperUse.Needed).Select(row => row.Title).Distinct().Count();
        return new WrapperPage(
            wrapper.Id, wrapper.Name,
            rows.Count == 0
                ? "It is the best wrapper for no title of this edition."
                : $"The wrapper to use for {Names.Count(titles, "title")} on some card; {(needed == 0 ? "none" : needed.ToString(System.Globalization.CultureInfo.InvariantCulture))} of them {(needed == 1 ? "runs" : "run")} no other way there.",
            wrapper.Notes, wrapper.Versions.Select(VersionOf).ToList(),
            rows.Select(row => new WrapperUseRow(
                row.Title.Id, row.Title.Name, row.Card.Id, row.Card.Name, row.Systems, WrapperReport.UseText(row.Use), row.Version.Version,
                Names.Sentence(row.Native), Names.Sentence(row.Through))).ToList(),
            (all with { Heading = $"Titles for {wrapper.Name}", Rows = rows }).ToTable());
    }

    private static WrapperVersionReport VersionOf(WrapperVersion version)
    {
        var facts = new List<NamedText>();
        Add("Offers", Names.List(version.Offers.Select(Names.Api).ToList()));
        Add("Draws with", Names.Api(version.Target) + (version.Runtime != version.Target ? $"; needs the {Names.Api(version.Runtime)} runtime" : ""));
        Add("Runs on", Os(version, Support.Yes));
        Add("Does not run on", Os(version, Support.No));
        Add("Supplies by itself", Supplies(version, Support.Yes, Support.Emulated));
        Add("Supplies, but broken", Supplies(version, Support.Broken));
        Add("Does not supply", Supplies(version, Support.No));
        Add("Hands through", Names.List(version.Passes.Select(feature => Names.Sentence(feature.Name)).ToList()));
        Add("Everything else", version.IsComplete ? "is declared missing" : "is not known");
        Add("Needs", Names.List(version.Needs.Select(need => Names.Of(need.Capability))
            .Concat(version.VideoMemoryBytes > 0 ? [$"{Names.Mebibytes(version.VideoMemoryBytes)} of video memory"] : []).ToList()));
        Add("Costs", version.Costs);
        Add("Checksum", version.Sha256);
        Add("Source", FactWording.Evidence(version.Evidence));
        return new WrapperVersionReport(version.Version, Names.Of(version), facts);

        void Add(string name, string text)
        {
            if (text.Length > 0)
                facts.Add(new NamedText(name, Names.Sentence(text)));
        }
    }

    private static string Os(WrapperVersion version, Support support) =>
        Names.List(version.Oses.Where(os => os.Support == support).Select(os => os.Os.Name).ToList());

    private static string Supplies(WrapperVersion version, params Support[] states) =>
        Names.List(version.Supplies.Where(fact => states.Contains(fact.Support)).Select(fact => Names.Of(fact.Capability)).ToList());
}
