using System.Collections.Concurrent;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Advice;

/// <summary>
/// What decisions about a library draw on: verdicts, and prospects worked out from them. Where no library was chosen, every title of
/// the collection counts once and none is a must-have. May be asked from several threads at once.
/// </summary>
public sealed class Weighing
{
    private readonly ConcurrentDictionary<Card, IReadOnlyList<DriverOption>> _installs = [];
    private readonly ConcurrentDictionary<(Card First, Card Second), CardComparison> _compared = [];

    /// <summary>Prepares to decide.</summary>
    public Weighing(Decisions decisions)
    {
        Decisions = decisions;
        Library = decisions.Library ?? AllTitles(decisions.Catalog, Policy.Default);
        Picture = new Prospects(Library, decisions.On);
        AtFloor = Library.Policy.FpsFloor is null
            ? null
            : new Prospects(Library, decisions.On) { Floor = decisions.Speeds.AgainstFloor };
    }

    /// <summary>Every title of a collection, each counting once and none a must-have.</summary>
    public static Library AllTitles(Catalog catalog, Policy policy) => new()
    {
        Id = "all",
        Name = Names.EveryTitle,
        Entries = catalog.Titles.Select(title => new LibraryEntry { Title = title }).ToList(),
        Policy = policy,
    };

    /// <summary>The verdicts.</summary>
    public Decisions Decisions { get; }

    /// <summary>The library.</summary>
    public Library Library { get; }

    /// <summary>What may come of titles, as far as the picture goes.</summary>
    public Prospects Picture { get; }

    /// <summary>The same where a route under the speed floor counts as not running; null where the library has no floor.</summary>
    public Prospects? AtFloor { get; }

    /// <summary>The policy in words.</summary>
    public string PolicyText => $"Library: {Library.Name}. Policy: {PolicyWording.Text(Library.Policy)}.";

    /// <summary>The cards of which the collection's owner has a specimen.</summary>
    public IReadOnlyList<Card> Owned => Decisions.Catalog.Specimens.Where(specimen => specimen.Owned).Select(specimen => specimen.Card).Distinct().ToList();

    /// <summary>What each single install of a card that the policy allows holds, best first (rule R17).</summary>
    public IReadOnlyList<DriverOption> InstallsOf(Card card) => _installs.GetOrAdd(card, one => Decisions.RecordedSetups(one)
        .Select(setup => new DriverOption(setup, Holding.Of(Library, entry => [Decisions.On(entry.Title, setup)])))
        .OrderByDescending(option => option.Holding.Covered.Count).ThenByDescending(option => option.Holding.Score.Low)
        .ThenByDescending(option => option.Holding.Score.High).ThenByDescending(option => option.Setup.Driver.Order).ToList());

    /// <summary>Two cards as far as the picture goes.</summary>
    public CardComparison Compare(Card first, Card second) => _compared.GetOrAdd((first, second), pair => CardComparison.Of(Picture, pair.First, pair.Second));

    /// <summary>What a card sells for, or is asked for where no sale is on record; null where nothing is.</summary>
    public PriceRange? PriceOf(Card card) => PriceRange.Of(card, Decisions.Catalog.Currency);
}
