using System.Globalization;
using FeatureMatrix.Reports.Advice;

namespace FeatureMatrix.Reports.Editions;

/// <summary>The editions of a collection so far, and the collection as it is now.</summary>
public sealed class EditionHistory
{
    /// <summary>Puts editions in order.</summary>
    /// <param name="editions">The dated editions, in any order.</param>
    /// <param name="now">The collection as it is now; null where the latest edition is just that.</param>
    public EditionHistory(IEnumerable<EditionState> editions, EditionState? now = null)
    {
        Editions = [.. editions.OrderBy(edition => edition.Date).ThenBy(edition => edition.Name, StringComparer.Ordinal)];
        Differences = [.. Editions.Zip(Editions.Skip(1), EditionDifference.Between)];
        Since = now is not null && Editions.Count > 0 ? EditionDifference.Between(Editions[^1], now) : null;
    }

    /// <summary>The editions, the earliest first.</summary>
    public IReadOnlyList<EditionState> Editions { get; }

    /// <summary>What changed from each edition to the next.</summary>
    public IReadOnlyList<EditionDifference> Differences { get; }

    /// <summary>What changed since the latest edition; null where nothing can have, or there is none.</summary>
    public EditionDifference? Since { get; }

    /// <summary>The editions with their dates, the latest first.</summary>
    public Table ToTable() => new Table(
        "Editions", "",
        [new("Date"), new("Edition"), new("What changed"), new("Note")],
        [
            .. Editions.Reverse().Select(edition => (IReadOnlyList<TableCell>)
                [new(edition.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""), new(edition.Name), new(Changes(edition)), new(edition.Note)]),
        ])
    {
        WhenEmpty = "None yet: publish with --edition NAME --date DAY makes one.",
    };

    /// <summary>An edition in a sentence or two.</summary>
    public string Summary(EditionState edition) => edition.Note.Length == 0 ? Changes(edition) : $"{edition.Note} {Changes(edition)}";

    /// <summary>Everything on one page: the list, then the differences, the latest first.</summary>
    public DecisionReport ToReport()
    {
        var latest = Since is null ? Differences : [.. Differences, Since];
        var headline = Editions.Count == 0 ? "No edition has been given a name and a date yet."
            : Since is null ? $"{Editions[^1].Name}: {Changes(Editions[^1])}"
            : $"Since {Editions[^1].Name}: {Since.Headline}";
        return new DecisionReport(
            "Editions", headline, "", [], [ToTable(), .. latest.Reverse().SelectMany(one => one.ToReport().Tables).Where(table => table.Rows.Count > 0)]);
    }

    private string Changes(EditionState edition) =>
        Differences.FirstOrDefault(one => one.Now == edition)?.Headline ?? "The first edition.";
}
