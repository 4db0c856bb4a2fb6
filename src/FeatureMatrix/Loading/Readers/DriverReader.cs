using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Driver branches with their versions.</summary>
internal sealed partial class DriverReader(Draft draft)
{
    private readonly Dictionary<Driver, (Fields Fields, Provenance Provenance)> _read = [];

    private FaultList Faults => draft.Faults;

    /// <summary>One branch with its versions, without statements about supply.</summary>
    public DriverBranch Build(Shelf<DriverBranch>.Item item)
    {
        var fields = item.Fields;
        var branch = new DriverBranch { Id = item.Id, Name = fields.RequiredText("name"), Maker = fields.Text("maker") };
        var kind = fields.Choice("kind", Words.DriverKinds) ?? DriverKind.Package;
        var oses = draft.References.All(draft.Oses, fields.List("os"));
        var lists = draft.References.All(draft.Cards, fields.List("lists"));
        var versions = new List<Driver>();
        if (!fields.Has("versions"))
            Faults.Add(FaultTexts.MissingKey(item.Origin, "versions", fields.Label));
        foreach (var version in Versions(fields))
        {
            var text = version.RequiredWord("version");
            if (text is null)
                continue;
            var provenance = Provenance.Of(item, draft).Within(version);
            var driver = Version(version, text, branch, kind, versions.Count, (oses, lists), provenance);
            if (versions.Exists(other => other.Version == driver.Version))
                Faults.Add(FaultTexts.Twice(text.Origin, "version", driver.Version, fields.Label));
            versions.Add(driver);
            _read.Add(driver, (version, provenance));
        }

        branch.Link(versions);
        return branch;
    }

    /// <summary>The statements about one branch: what its versions offer and supply.</summary>
    public IReadOnlyList<SupplyFact> Supply(Shelf<DriverBranch>.Item item, DriverBranch branch)
    {
        var provenance = Provenance.Of(item, draft);
        var usual = item.Fields.Entries("offers");
        var facts = new List<SupplyFact>();
        foreach (var driver in branch.Versions)
        {
            var (fields, own) = _read[driver];
            var scope = new Scope { Drivers = DriverRange.Only(driver) };
            var offers = fields.Entries("offers");
            var stated = offers.Select(entry => entry.Key.Text).ToHashSet();
            facts.AddRange(draft.Supply.Read(offers, scope, null, own));
            var unstated = usual.Where(entry => !stated.Contains(entry.Key.Text));
            facts.AddRange(draft.Supply.Read(unstated, scope, null, provenance));
            facts.AddRange(draft.Supply.Read(fields.Entries("supply"), scope, null, own));
            fields.Done();
        }

        var whole = item.Fields.Entries("supply");
        if (branch.Versions.Count > 0)
        {
            var all = new Scope { Drivers = new DriverRange(branch, 0, branch.Versions.Count - 1) };
            facts.AddRange(draft.Supply.Read(whole, all, branch, provenance));
        }

        return facts;
    }

    /// <summary>A checksum of a package, in lower case.</summary>
    public static string Sha256(Fields fields)
    {
        if (fields.Word("sha256") is not { } word)
            return "";
        var text = word.Text.Trim().ToLowerInvariant();
        if (Sha256Form().IsMatch(text))
            return text;
        fields.Faults.Add(FaultTexts.WrongForm(word.Origin, "'sha256'", word.Text, Forms.Sha256));
        return "";
    }

    /// <summary>A list of maps, or of bare versions where nothing else is said of them.</summary>
    private IEnumerable<Fields> Versions(Fields fields)
    {
        foreach (var node in fields.Items("versions"))
        {
            var map = node is Scalar bare
                ? Mapping.Of(bare.Origin, [new MappingEntry(new Scalar(bare.Origin, "version", isPlain: true), bare)], (_, _) => { })
                : node;
            if (Fields.Of(map, $"version of {fields.Label}", Faults) is { } version)
                yield return version;
        }
    }

    private Driver Version(
        Fields fields, Scalar version, DriverBranch branch, DriverKind kind, int order,
        (IReadOnlyList<Os> Oses, IReadOnlyList<Card> Lists) usual, Provenance provenance)
    {
        var text = version.Text.Trim();
        var driver = new Driver
        {
            Id = $"{branch.Id}@{text}",
            Kind = kind,
            Branch = branch,
            Version = text,
            Order = order,
            Oses = fields.Has("os") ? draft.References.All(draft.Oses, fields.List("os")) : usual.Oses,
            Lists = fields.Has("lists") ? draft.References.All(draft.Cards, fields.List("lists")) : usual.Lists,
            Forced = [.. fields.Items("forced").Select(node => Forced(node, provenance)).OfType<ForcedInstall>()],
            IsSoftware = fields.YesNo("software") ?? false,
            Released = fields.Value("released", Quantities.Date),
            Sha256 = Sha256(fields),
            Notes = fields.Text("notes"),
            Evidence = provenance.At(fields.Origin),
        };
        var label = $"driver {driver.Id}";
        if (text.Length == 0 || text.Contains('@', StringComparison.Ordinal))
            Faults.Add(FaultTexts.WrongForm(version.Origin, "'version'", text, Forms.Version));
        if (driver.Oses.Count == 0)
            Faults.AddDangling(FaultTexts.MissingKey(fields.Origin, "os", label));
        if (driver.Lists.Count == 0)
            Faults.AddDangling(FaultTexts.ListsNoCard(fields.Origin, label));
        return driver;
    }

    private ForcedInstall? Forced(Node node, Provenance inherited)
    {
        if (Fields.Of(node, "'forced'", Faults) is not { } fields)
            return null;
        var card = fields.RequiredWord("card") is { } word ? draft.Cards.Find(word, Faults) : null;
        fields.RequiredWord("works");
        var works = fields.Choice("works", Words.YesNoUnknown);
        var evidence = inherited.Within(fields).At(fields.Origin);
        fields.Done();
        return card is not null && works is { } w ? new ForcedInstall(card, w, evidence) : null;
    }

    [GeneratedRegex("^[0-9a-f]{64}$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Sha256Form();
}
