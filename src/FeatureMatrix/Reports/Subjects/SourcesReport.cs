using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>A source with the number of statements that rest on it, by grade.</summary>
public sealed record SourceRow(Source Source, IReadOnlyDictionary<Grade, int> Statements)
{
    /// <summary>All statements.</summary>
    public int Count => Statements.Values.Sum();
}

/// <summary>Who says what the collection says.</summary>
public sealed record SourcesReport(IReadOnlyList<SourceRow> Rows, int Unsourced)
{
    /// <summary>Counts the statements of a collection by source.</summary>
    public static SourcesReport Of(Catalog catalog)
    {
        var evidence = AllEvidence(catalog).ToList();
        var rows = evidence.Where(one => one.Source is not null).GroupBy(one => (one.Source!.Id, one.Source.Whole))
            .Select(group => new SourceRow(group.First().Source!, group.GroupBy(one => one.Grade).ToDictionary(grade => grade.Key, grade => grade.Count())))
            .OrderByDescending(row => row.Count).ThenBy(row => row.Source.Whole, StringComparer.Ordinal).ToList();
        return new SourcesReport(rows, evidence.Count(one => one.Source is null));
    }

    /// <summary>The report as a table.</summary>
    public Table ToTable() => new(
        "Sources", Unsourced == 0 ? "Every statement names a source." : $"{Names.Count(Unsourced, "statement")} without a source.",
        [new("Source"), new("Link"), .. Grades.Select(grade => new TableColumn(Names.Sentence(Names.Of(grade)), true)), new("All", true)],
        Rows.Select(row => (IReadOnlyList<TableCell>)
        [
            new TableCell(row.Source.Whole), new TableCell(row.Source.Link ?? ""),
            .. Grades.Select(grade => Number(row.Statements.GetValueOrDefault(grade))), Number(row.Count),
        ]).ToList());

    private static IReadOnlyList<Grade> Grades { get; } = [Grade.Measured, Grade.Documented, Grade.Inferred, Grade.Hearsay];

    private static TableCell Number(int count) => new(count.ToString(System.Globalization.CultureInfo.InvariantCulture), count);

    private static IEnumerable<Evidence> AllEvidence(Catalog catalog) => catalog.Facts.Select(fact => fact.Evidence)
        .Concat(catalog.Cards.Select(card => card.Evidence))
        .Concat(catalog.Drivers.Select(driver => driver.Evidence))
        .Concat(catalog.WrapperVersions.SelectMany(wrapper => wrapper.Supplies.Select(fact => fact.Evidence)
            .Concat(wrapper.Needs.Select(need => need.Evidence)).Concat(wrapper.Oses.Select(os => os.Evidence)).Append(wrapper.Evidence)))
        .Concat(catalog.Titles.Select(title => title.Evidence))
        .Concat(catalog.Titles.SelectMany(title => title.Renderers).SelectMany(renderer => renderer.Needs.Select(need => need.Evidence)
            .Concat(renderer.Defects.Select(defect => defect.Evidence))))
        .Concat(catalog.Observations.Select(seen => seen.Evidence));
}
