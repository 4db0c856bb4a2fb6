using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>
/// A card's BIOS takes the driver's place in DOS (rule R7), so each card with a <c>bios</c> brings a branch of its own:
/// <c>nl4-retail-bios</c>, whose versions list that card alone and stand on every DOS.
/// </summary>
internal sealed class BiosReader(Draft draft)
{
    private readonly List<(Driver Driver, Fields Fields, Provenance Provenance)> _versions = [];

    /// <summary>The branch of one card; nothing where it states no BIOS.</summary>
    public void Build(Shelf<Card>.Item item, Card card)
    {
        if (item.Fields.Take("bios") is not { } node)
            return;
        var branch = new DriverBranch { Id = $"{card.Id}-bios", Name = $"BIOS of {card.Name}", Maker = card.Maker };
        if (draft.Branches.Declares(branch.Id))
        {
            draft.Faults.Add(FaultTexts.BiosIdTaken(item.Fields.OriginOf("bios"), item.Fields.Label, branch.Id));
            return;
        }

        var versions = new List<Driver>();
        foreach (var one in node is Sequence list ? list.Items : [node])
        {
            if (Fields.Of(one, $"'bios' of {item.Fields.Label}", draft.Faults) is not { } fields)
                continue;
            var provenance = Provenance.Of(item, draft).Within(fields);
            var version = fields.RequiredText("version");
            if (versions.Exists(other => other.Version == version))
                draft.Faults.Add(FaultTexts.Twice(fields.Origin, "version", version, fields.Label));
            var driver = new Driver
            {
                Id = $"{branch.Id}@{version}",
                Kind = DriverKind.Bios,
                Branch = branch,
                Version = version,
                Order = versions.Count,
                Oses = [.. draft.Oses.All.Where(os => os.IsDos)],
                Lists = [card],
                Released = fields.Value("released", Quantities.Date),
                Notes = fields.Text("notes"),
                Evidence = provenance.At(fields.Origin),
            };
            versions.Add(driver);
            _versions.Add((driver, fields, provenance));
        }

        branch.Link(versions);
        draft.BiosBranches.Add(branch);
    }

    /// <summary>What the BIOS versions supply. They name their card, so that their "yes" does not wait for the chip's (rule R3).</summary>
    public IReadOnlyList<SupplyFact> Supply()
    {
        var facts = new List<SupplyFact>();
        foreach (var (driver, fields, provenance) in _versions)
        {
            var scope = new Scope { Card = driver.Lists[0], Drivers = DriverRange.Only(driver) };
            facts.AddRange(draft.Supply.Read(fields.Entries("supply"), scope, null, provenance));
            fields.Done();
        }

        return facts;
    }
}
