using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding.Planning;

/// <summary>
/// The cards, PCs and installs of a collection, numbered as a <see cref="PlanProblem"/> for one library. A card may go into a slot
/// that its documents and the slot's do not rule out; a rig has the systems that are recorded as installed, or any where none is.
/// </summary>
public sealed class Inventory
{
    private Inventory(Library library, IReadOnlyList<Card> cards, IReadOnlyList<Rig> rigs, IReadOnlyList<DriverOption> installs)
    {
        (Library, Cards, Rigs, Installs) = (library, cards, rigs, installs);
        MustHaves = library.Entries.Where(entry => entry.IsMustHave).ToList();
    }

    /// <summary>The library.</summary>
    public Library Library { get; }

    /// <summary>The cards by number.</summary>
    public IReadOnlyList<Card> Cards { get; }

    /// <summary>The rigs by number; none where the collection records none, and then slots are not counted.</summary>
    public IReadOnlyList<Rig> Rigs { get; }

    /// <summary>The options by number.</summary>
    public IReadOnlyList<DriverOption> Installs { get; }

    /// <summary>The must-haves by number.</summary>
    public IReadOnlyList<LibraryEntry> MustHaves { get; }

    /// <summary>Numbers what a collection has.</summary>
    /// <param name="library">The library.</param>
    /// <param name="cards">The cards that may be used.</param>
    /// <param name="rigs">The rigs that may be used.</param>
    /// <param name="setupsOf">The setups of a card that may be installed.</param>
    /// <param name="verdictOf">What is known of a title on a setup.</param>
    public static Inventory Of(
        Library library, IReadOnlyList<Card> cards, IReadOnlyList<Rig> rigs, Func<Card, IEnumerable<Setup>> setupsOf, Func<Title, Setup, Verdict> verdictOf) =>
        new(library, cards, rigs, cards.SelectMany(setupsOf)
            .Select(setup => new DriverOption(setup, Holding.Of(library, entry => [verdictOf(entry.Title, setup)]))).ToList());

    /// <summary>The problem, with what boards cost.</summary>
    /// <param name="ownedOf">How many of a card are at hand.</param>
    /// <param name="priceOf">What one costs; null where no price is on record.</param>
    public PlanProblem ToProblem(Func<Card, int> ownedOf, Func<Card, decimal?> priceOf)
    {
        var numbers = Cards.Select((card, i) => (card, i)).ToDictionary(pair => pair.card, pair => pair.i);
        var oses = Installs.Select(install => install.Setup.Os).Distinct().ToList();
        var scale = WorthScale.Of(Library.Policy);
        var cards = Cards.Select(card => new PlanCard(
            ownedOf(card), priceOf(card), card.Companion is { } companion && numbers.TryGetValue(companion, out var number) ? number : null,
            card.Connector?.PowerPlug ?? "", Rigs.Count == 0 ? [[]] : Rigs.Select(rig => SlotsFor(card, rig)).ToList())).ToList();
        var options = Installs.Select(install => new PlanOption(
            numbers[install.Setup.Card], oses.IndexOf(install.Setup.Os), RigsWith(install.Setup.Os),
            Enumerable.Range(0, MustHaves.Count).Where(i => install.Holding.Covered.Contains(MustHaves[i])).ToList(),
            install.Holding.Stakes.Select(stake => (long)decimal.Round(stake.Weight * scale.Of(stake.Prospect.Worst) * PlanValue.Unit)).ToList())).ToList();
        return new PlanProblem(
            cards, Rigs.Count == 0 ? [new PlanRig(null, null)] : Rigs.Select(rig => new PlanRig(rig.Slots.Count == 0 ? null : rig.Slots.Count, rig.PowerPlugs)).ToList(),
            options, MustHaves.Count, Library.Policy.OneDriverPerOs);
    }

    /// <summary>What the documents say of a card in a slot of a rig.</summary>
    public static FitVerdict FitOf(Card card, Rig rig, RigSlot slot) =>
        FitCheck.Compare(FitInputs.Of(card), FitInputs.Of(rig, slot, rig.Oses, driverForced: false)).Verdict;

    private static List<PlanSlot> SlotsFor(Card card, Rig rig) => rig.Slots.Select((slot, i) => (Verdict: FitOf(card, rig, slot), Index: i))
        .Where(pair => pair.Verdict != FitVerdict.DoNotInsert)
        .Select(pair => new PlanSlot(pair.Index, pair.Verdict != FitVerdict.DocumentsAgree)).ToList();

    private List<int> RigsWith(Os os) => Rigs.Count == 0
        ? [0]
        : Enumerable.Range(0, Rigs.Count).Where(i => Rigs[i].Oses.Count == 0 || Rigs[i].Oses.Contains(os)).ToList();
}
