using System.Text.Json;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Pages;

/// <summary>A cell as it is drawn: everything the drawing and the filters need, in words and ids.</summary>
/// <param name="TitleId">The title.</param>
/// <param name="TitleName">The title's name.</param>
/// <param name="CardId">The card.</param>
/// <param name="CardName">The card's name.</param>
/// <param name="SetupId">The setup's place on the cell's page; empty where the cell speaks for the whole card.</param>
/// <param name="Word">The word or number that comes first.</param>
/// <param name="Way">How it goes: native, wrapper, forced; empty where nothing runs.</param>
/// <param name="Label">The whole label.</param>
/// <param name="More">The whole label where it says more than word and way; empty where it does not.</param>
/// <param name="Tone">How it reads at a glance, kebab-case.</param>
/// <param name="Evidence">How good the evidence is, kebab-case.</param>
/// <param name="EvidenceText">The same in words.</param>
/// <param name="Marks">One strength for each loss that is certain, severest first: severe, not-graded or cosmetic.</param>
/// <param name="Features">Ids of the features that are lost or whose loss is not known.</param>
/// <param name="Systems">Ids of the operating systems of the routes it goes by.</param>
/// <param name="IsContradicted">True where an observation contradicts the records.</param>
/// <param name="HasMilder">True where another route is milder than the headline.</param>
/// <param name="Order">Sorts cells from good to bad: the tone's place.</param>
/// <param name="Speed">How the measured speed stands to the limits, an id as in <see cref="SpeedWording.Id"/>; empty where nothing was measured.</param>
/// <param name="SpeedText">The measured speed in a few words; empty where nothing was measured.</param>
public sealed record Tile(
    string TitleId, string TitleName, string CardId, string CardName, string SetupId, string Word, string Way, string Label, string More, string Tone,
    string Evidence, string EvidenceText, IReadOnlyList<string> Marks, IReadOnlyList<string> Features, IReadOnlyList<string> Systems,
    bool IsContradicted, bool HasMilder, int Order, string Speed, string SpeedText)
{
    private const string Letters = "abcdefghijklmnopqrstuvwxyz0123456789";

    /// <summary>The tile of a cell.</summary>
    public static Tile Of(Cell cell) => new(
        cell.Title.Id, cell.Title.Name, cell.Card.Id, cell.Card.Name, cell.Setup is { } setup ? IdOf(setup) : "",
        cell.Short, cell.Way, Names.Sentence(cell.Label), SaysMore(cell) ? Names.Sentence(cell.Label) : "", Kebab(cell.Tone), Kebab(cell.Evidence), CellWording.Of(cell.Evidence),
        CertainLosses(cell.Verdict.Headline.Range).Select(loss => MarkOf(loss.Strength)).ToList(),
        FeaturesOf(cell.Verdict.Headline).ToList(),
        cell.Verdict.Headline.By.Select(finding => finding.Route.Setup.Os.Id).Distinct(StringComparer.Ordinal).ToList(),
        cell.IsContradicted, cell.HasMilderAlternative, (int)cell.Tone,
        cell.Speed is { Speed: not Bench.Speed.NotMeasured } speed ? SpeedWording.Id(speed.Speed) : "",
        cell.Speed is { Speed: not Bench.Speed.NotMeasured } measured ? SpeedWording.Brief(measured) : "");

    /// <summary>
    /// A setup's id within its card: six letters and digits made from driver and operating system. Short, because a matrix has it in
    /// every cell; the same in every edition.
    /// </summary>
    public static string IdOf(Setup setup)
    {
        // FNV-1a, 64 bits: offset basis and prime as published by its authors (draft-eastlake-fnv).
        var hash = 14695981039346656037UL;
        foreach (var letter in $"{setup.Driver.Id} {setup.Os.Id}")
            hash = (hash ^ letter) * 1099511628211UL;
        return string.Create(6, hash, (id, left) =>
        {
            id[0] = Letters[(int)(left % 26)];
            for (var i = 1; i < id.Length; i++)
            {
                left /= 36;
                id[i] = Letters[(int)(left % 36)];
            }
        });
    }

    /// <summary>A driver's id with nothing in it but small letters, digits, dots and hyphens.</summary>
    public static string IdOf(Driver driver) => string.Concat(driver.Id.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c == '.' ? c : '-'));

    /// <summary>The id of an enumeration's value: <c>RunsNotKnown</c> is <c>runs-not-known</c>.</summary>
    internal static string Kebab<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    private static bool SaysMore(Cell cell) => cell.Label is not ("works, natively" or "works, wrapper only" or "does not run" or "software only");

    private static IEnumerable<Loss> CertainLosses(OutcomeRange range) =>
        range.CertainlyFails ? [] : range.Best.Losses.Where(range.Worst.Losses.Contains);

    internal static string MarkOf(Strength strength) => strength switch
    {
        Strength.Severe => "severe",
        Strength.Ungraded => "not-graded",
        Strength.Cosmetic => "cosmetic",
        Strength.Bonus or Strength.Must or Strength.Unknown => throw new ArgumentOutOfRangeException(nameof(strength)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IEnumerable<string> FeaturesOf(Headline headline) => CertainLosses(headline.Range)
        .SelectMany(loss => loss.Choices).Select(choice => choice.Feature.Id)
        .Concat(headline.Deciding.SelectMany(unknown => unknown.Features).Select(feature => feature.Id))
        .Distinct(StringComparer.Ordinal);
}
