using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Editions;

/// <summary>Something that a collection says, in words: what it speaks of, and what it says of it with grade and source.</summary>
/// <param name="About">For example <c>Heron 16, Heron 9x 2.10: table fog</c>.</param>
/// <param name="Says">For example <c>no (measured: own bench)</c>.</param>
public sealed record Statement(string About, string Says)
{
    /// <summary>The statement in one line.</summary>
    public override string ToString() => $"{About} {Says}";
}

/// <summary>One cell of the matrix by card as it was published.</summary>
/// <param name="Title">The title's id.</param>
/// <param name="Card">The card's id.</param>
/// <param name="Label">The verdict in words.</param>
/// <param name="RestsOn">The statements that the verdict drew on.</param>
public sealed record EditionCell(string Title, string Card, string Label, IReadOnlyList<Statement> RestsOn);

/// <summary>An edition as far as later ones are compared with it: its verdicts in words, and what each rests on.</summary>
public sealed record EditionState
{
    /// <summary>What it is called; also the name of its file. Empty for the collection as it is now.</summary>
    public required string Name { get; init; }

    /// <summary>The date it was given; null for the collection as it is now, where nobody gave one.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>What its keeper says of it, one paragraph; empty for nothing.</summary>
    public string Note { get; init; } = "";

    /// <summary>The version of the program that worked it out.</summary>
    public required string Program { get; init; }

    /// <summary>The policy it was made under, in words.</summary>
    public required string Policy { get; init; }

    /// <summary>Names of titles by id.</summary>
    public required IReadOnlyDictionary<string, string> Titles { get; init; }

    /// <summary>Names of cards by id.</summary>
    public required IReadOnlyDictionary<string, string> Cards { get; init; }

    /// <summary>The cells, by title and card.</summary>
    public required IReadOnlyList<EditionCell> Cells { get; init; }

    /// <summary>How to call it in a sentence.</summary>
    public string CalledBy => Name.Length == 0 ? "now" : Name;

    /// <summary>The state of a collection.</summary>
    /// <param name="decisions">The collection on its terms.</param>
    /// <param name="program">The program's version.</param>
    /// <param name="name">What to call it; empty for the collection as it is now.</param>
    /// <param name="date">The date to state.</param>
    /// <param name="note">What its keeper says of it.</param>
    public static EditionState Of(Decisions decisions, string program, string name = "", DateOnly? date = null, string note = "") => new()
    {
        Name = name,
        Date = date,
        Note = note,
        Program = program,
        Policy = PolicyWording.Text(decisions.Policy),
        Titles = decisions.Titles.ToDictionary(title => title.Id, title => title.Name),
        Cards = decisions.Catalog.Cards.ToDictionary(card => card.Id, card => card.Name),
        Cells =
        [
            .. decisions.Titles.OrderBy(title => title.Id, StringComparer.Ordinal).SelectMany(title => decisions.Catalog.Cards.Select(card =>
            {
                var verdict = decisions.On(title, card);
                return new EditionCell(title.Id, card.Id, LabelWording.Label(verdict), VerdictStatements.Of(verdict));
            })),
        ],
    };
}
