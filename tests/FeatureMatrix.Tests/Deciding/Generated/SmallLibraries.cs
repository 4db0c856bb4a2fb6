using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using State = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Deciding.Generated;

/// <summary>A small collection with a library, full of gaps, made from a seed.</summary>
internal sealed class SmallLibrary
{
    private static readonly Evidence Documented = new(Grade.Documented, null, Origin.None);
    private readonly Random _random;
    private readonly Feature[] _features;
    private readonly Feature _api;
    private readonly Os[] _oses;

    /// <summary>All titles of a generated catalog, with every odd corner that rules have.</summary>
    public SmallLibrary(Catalog catalog, Terms terms)
    {
        (_random, _features, _oses) = (new Random(catalog.Titles.Count), [], []);
        _api = catalog.Features[0];
        Catalog = catalog;
        Library = new Library
        {
            Id = "small",
            Name = "Small",
            Entries = Catalog.Titles.Select((title, i) => new LibraryEntry
            {
                Title = title,
                Weight = i + 1,
                Preset = terms.Preset,
                MustHaveTolerance = i % 3 == 2 ? Strength.Cosmetic : null,
            }).ToList(),
            Policy = terms.Policy,
        };
        Resolver = new Resolver(Catalog);
        Prospects = new Prospects(Library, (title, card) => Resolver.Resolve(title, card, TermsOf(title)));
    }

    public SmallLibrary(int seed, int titles = 3)
    {
        _random = new Random(seed);
        _features = [Flag("fog"), Flag("palettes"), Flag("alpha-palettes"), Ladder("units")];
        _features[2].Link([_features[1].At(1)]);
        _api = new Feature { Id = "direct3d", Name = "Direct3D", Family = "api", Levels = ["1", "2"], IsApi = true, Evidence = Documented };
        _oses = Enumerable.Range(0, Chance(0.2) ? 2 : 1).Select(i => new Os { Id = $"os-{i}", Name = $"System {i}" }).ToArray();
        var chips = Enumerable.Range(0, Chance(0.4) ? 1 : 2).Select(i => new Chip { Id = $"chip-{i}", Name = $"Chip {i}" }).ToList();
        var cards = Enumerable.Range(0, 3).Select(i => CardOf(i, chips[i % chips.Count])).ToList();
        var branch = new DriverBranch { Id = "branch", Name = "Branch" };
        branch.Link(Enumerable.Range(0, Chance(0.3) ? 2 : 1).Select(i => new Driver
        {
            Id = $"branch@{i}",
            Branch = branch,
            Version = $"{i}",
            Order = i,
            Oses = _oses,
            Lists = cards,
            Evidence = Documented,
        }).ToList());
        var wrappers = Chance(0.25) ? [WrapperOf()] : Array.Empty<Wrapper>();
        var all = Enumerable.Range(0, titles).Select(TitleOf).ToList();
        Catalog = new Catalog
        {
            Features = [.. _features, _api],
            Oses = _oses,
            Chips = chips,
            Cards = cards,
            Branches = [branch],
            Wrappers = wrappers,
            Titles = all,
            Facts = Facts(chips, cards, branch).ToList(),
        };
        Library = new Library
        {
            Id = "small",
            Name = "Small",
            Entries = all.Select(title => new LibraryEntry
            {
                Title = title,
                Weight = Pick(0.5, 1, 1, 2, 3),
                MustHaveTolerance = Chance(0.35) ? Pick(Strength.Bonus, Strength.Cosmetic, Strength.Severe) : null,
            }).ToList(),
            Policy = Policy.Default with { SevereWorth = Pick(0.5, 0.4, 0.7), CosmeticWorth = Pick(0.8, 0.85, 0.6) },
        };
        Resolver = new Resolver(Catalog);
        Prospects = new Prospects(Library, (title, card) => Resolver.Resolve(title, card, TermsOf(title)));
    }

    public Catalog Catalog { get; }

    public Library Library { get; }

    public Resolver Resolver { get; }

    public Prospects Prospects { get; }

    public Card First => Catalog.Cards[0];

    public Card Second => Catalog.Cards[1];

    public Terms TermsOf(Title title) => Terms.Of(Library, Library.Entries.Single(entry => entry.Title == title));

    private static Feature Flag(string id) => new() { Id = id, Name = id, Family = "test", Evidence = Documented };

    private static Feature Ladder(string id) => new() { Id = id, Name = id, Family = "test", Levels = ["1", "2"], Evidence = Documented };

    private Card CardOf(int i, Chip chip) => new()
    {
        Id = $"card-{i}",
        Name = $"Card {i}",
        Chip = chip,
        Memory = new VideoMemory.Unified(16 << 20),
        DriversCompleteFor = _oses.ToHashSet(),
        Prices = [new Price(10 * (i + 1), 14 * (i + 1), "EUR", true, null, "")],
        Evidence = Documented,
    };

    private Wrapper WrapperOf()
    {
        var wrapper = new Wrapper { Id = "wrapper", Name = "Wrapper" };
        wrapper.Link([new WrapperVersion
        {
            Id = "wrapper@1",
            Wrapper = wrapper,
            Version = "1",
            Offers = [_api.At(2)],
            Target = _api.At(1),
            Runtime = _api.At(1),
            Supplies = [new SupplyFact(Scope.Everything, _features[0].At(1), Reach.At, State.Yes, Documented)],
            Passes = [_features[1]],
            IsComplete = Chance(0.5),
            Oses = [new OsSupport(_oses[0], Chance(0.7) ? State.Yes : State.Unknown, Documented)],
            Evidence = Documented,
        }]);
        return wrapper;
    }

    private IEnumerable<SupplyFact> Facts(List<Chip> chips, List<Card> cards, DriverBranch branch)
    {
        foreach (var chip in chips)
        {
            if (Chance(0.9))
                yield return new SupplyFact(new Scope { Chip = chip }, _api.At(Pick(1, 2, 2, 2)), Reach.UpTo, State.Yes, Documented);
            foreach (var feature in _features)
            {
                if (Chance(0.45))
                    yield return new SupplyFact(new Scope { Chip = chip }, feature.At(Pick(1, feature.Steps)), Reach.AtLeast, AnyState(), Documented);
                if (Chance(0.08))
                    yield return new SupplyFact(new Scope { Chip = chip }, feature.At(1), Reach.At, AnyState(), Documented);
            }
        }

        if (Chance(0.2))
            yield return new SupplyFact(new Scope { Card = cards[0] }, Pick(_features).At(1), Reach.At, AnyState(), Documented);
        if (Chance(0.3))
            yield return new SupplyFact(new Scope { Drivers = DriverRange.Only(branch.Versions[0]) }, Pick(_features).At(1), Reach.At, State.No, Documented);
    }

    private State AnyState() => Pick(State.Yes, State.Yes, State.No, State.No, State.Broken, State.Emulated);

    private Title TitleOf(int i)
    {
        var title = new Title { Id = $"title-{i}", Name = $"Title {i}", Evidence = Documented };
        title.Link(Enumerable.Range(0, Chance(0.3) ? 2 : 1).Select(j => new Renderer
        {
            Id = $"renderer-{j}",
            Title = title,
            Api = _api.At(Pick(1, 1, 2)),
            Runtime = _api.At(1),
            Oses = _oses,
            Needs = Enumerable.Range(0, _random.Next(1, 4)).Select(_ => NeedOf()).ToList(),
        }).ToList());
        return title;
    }

    private Need NeedOf()
    {
        var feature = Pick(_features);
        return new Need
        {
            Choices = Chance(0.15) ? [feature.At(feature.Steps), Pick(_features).At(1)] : [feature.At(Pick(1, feature.Steps))],
            Strength = Pick(Strength.Cosmetic, Strength.Cosmetic, Strength.Severe, Strength.Severe, Strength.Ungraded, Strength.Ungraded, Strength.Must, Strength.Unknown, Strength.Bonus),
            WhenBroken = Chance(0.2) ? Pick(Strength.Cosmetic, Strength.Ungraded, Strength.Severe) : null,
            HardwareOnly = Chance(0.1),
            Evidence = Documented,
        };
    }

    private bool Chance(double share) => _random.NextDouble() < share;

    private T Pick<T>(params T[] among) => among[_random.Next(among.Length)];
}
