using FeatureMatrix.Model;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>
/// A line of an explanation on a page: a record is written out where it counts first and has a number from there on; where it counts
/// again its number stands for it.
/// </summary>
/// <param name="Kind">What the line is.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Number">The record's number where the line is a record written out; else 0.</param>
/// <param name="Because">What it rests on, records that were written out before left out.</param>
/// <param name="Records">Numbers of the records left out.</param>
public sealed record CellLine(LineKind Kind, string Text, int Number, IReadOnlyList<CellLine> Because, IReadOnlyList<int> Records);

/// <summary>A setup whose explanation stands on the page.</summary>
/// <param name="Id">Its place on the page.</param>
/// <param name="Name">Driver and system.</param>
public sealed record ExplainedSetup(string Id, string Name);

/// <summary>Setups that share an explanation but for their own names.</summary>
/// <param name="Setups">The setups.</param>
/// <param name="Tile">The cell of the first.</param>
/// <param name="Lines">The explanation of the first; it says "this driver" and "this system".</param>
public sealed record SetupCell(IReadOnlyList<ExplainedSetup> Setups, Tile Tile, IReadOnlyList<CellLine> Lines);

/// <summary>Why a title does what it does on a card, and on each of the card's setups.</summary>
/// <param name="Tile">The cell of the whole card.</param>
/// <param name="Heading">Title and card.</param>
/// <param name="Lines">The explanation of the whole card.</param>
/// <param name="Setups">The cells of the recorded setups that the policy allows, those with the same explanation together.</param>
public sealed record CellReport(Tile Tile, string Heading, IReadOnlyList<CellLine> Lines, IReadOnlyList<SetupCell> Setups)
{
    /// <summary>The report of a title on a card.</summary>
    public static CellReport Of(Decisions decisions, Title title, Card card)
    {
        var cell = decisions.CellOn(title, card);
        var numbering = new RecordNumbers();
        var lines = numbering.Lines(cell.Explain().Because, text => text);
        var setups = decisions.RecordedSetups(card)
            .Select(setup => (setup, cell: decisions.CellOn(title, setup)))
            .Select(pair => (pair.setup, pair.cell, explanation: pair.cell.Explain()))
            .GroupBy(item => string.Join('\n', item.explanation.Because.SelectMany(line => line.Flatten()).Select(line => $"{line.Depth}{line.Line.Kind}{Unnamed(line.Line.Text, item.setup)}")), StringComparer.Ordinal)
            .Select(group => new SetupCell(
                group.Select(item => new ExplainedSetup(Tile.IdOf(item.setup), Names.Sentence(Names.Of(item.setup)))).ToList(),
                group.First().cell.Tile, numbering.Lines(group.First().explanation.Because, text => Unnamed(text, group.First().setup))))
            .ToList();
        return new CellReport(cell.Tile, $"{title.Name} on {card.Name}", lines, setups);
    }

    /// <summary>A sentence about a setup in which the setup's own driver and system have no names.</summary>
    private static string Unnamed(string text, Setup setup)
    {
        var driver = setup.Driver.Kind == DriverKind.Bios ? "this BIOS" : "this driver";
        var first = Replaced(text, Names.Of(setup.Driver), driver, (_, after) => after.Length == 0 || !(char.IsLetterOrDigit(after[0]) || IsVersion(after)));
        return Replaced(first, setup.Os.Name, "this system", (before, after) =>
            (before.Length == 0 || before.EndsWith("on ", StringComparison.Ordinal)) && !(after.Length > 1 && after[0] == ' ' && char.IsUpper(after[1])));

        // "6.1" is not a part of "6.1.2", and "System 98" none of "System 98 Second Edition".
        static bool IsVersion(string after) => after.Length > 1 && after[0] is '.' or '-' && char.IsLetterOrDigit(after[1]);
    }

    private static string Replaced(string text, string name, string by, Func<string, string, bool> isMeant)
    {
        for (var at = text.IndexOf(name, StringComparison.Ordinal); at >= 0; at = text.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            if (isMeant(text[..at], text[(at + name.Length)..]))
                text = text[..at] + by + text[(at + name.Length)..];
        }

        return text;
    }

    /// <summary>Numbers records in the order in which a page writes them out.</summary>
    private sealed class RecordNumbers
    {
        private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

        public List<CellLine> Lines(IEnumerable<ExplanationLine> explanation, Func<string, string> reword) =>
            explanation.Select(line => LineOf(line, reword)).ToList();

        private CellLine LineOf(ExplanationLine line, Func<string, string> reword)
        {
            var because = new List<CellLine>();
            var records = new List<int>();
            foreach (var below in line.Because)
            {
                if (below.Kind == LineKind.Fact && below.Because.Count == 0 && _numbers.TryGetValue(below.Text, out var number))
                    records.Add(number);
                else
                    because.Add(LineOf(below, reword));
            }

            if (line.Kind != LineKind.Fact || line.Because.Count > 0)
                return new CellLine(line.Kind, reword(line.Text), 0, because, records);
            _numbers.TryAdd(line.Text, _numbers.Count + 1);
            return new CellLine(line.Kind, line.Text, _numbers[line.Text], [], []);
        }
    }
}
