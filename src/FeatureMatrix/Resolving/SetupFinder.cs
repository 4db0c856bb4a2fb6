using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// The setups a card can be in: every driver that lists it, every driver of a sibling with the same chip that could be
/// forced (rule R9), and, for each operating system whose drivers are not declared complete, one driver that nobody recorded.
/// </summary>
public sealed class SetupFinder
{
    private readonly Catalog _catalog;
    private readonly Dictionary<Os, Driver> _unrecorded;

    /// <summary>Prepares the unrecorded drivers, one for each operating system.</summary>
    public SetupFinder(Catalog catalog)
    {
        _catalog = catalog;
        var nobody = new Evidence(Grade.Inferred, null, Origin.None);
        _unrecorded = catalog.Oses.ToDictionary(os => os, os =>
        {
            var branch = new DriverBranch { Id = "unrecorded", Name = "a driver that is not recorded" };
            var driver = new Driver
            {
                Id = $"unrecorded@{os.Id}",
                Kind = DriverKind.Unrecorded,
                Branch = branch,
                Version = "",
                Order = 0,
                Oses = [os],
                Evidence = nobody,
            };
            branch.Link([driver]);
            return driver;
        });
    }

    /// <summary>All setups of a card, in an order that does not depend on files.</summary>
    public IReadOnlyList<Setup> Of(Card card)
    {
        var setups = new List<Setup>();
        foreach (var driver in _catalog.Drivers)
        {
            var listed = driver.Lists.Contains(card);
            var sibling = driver.Kind == DriverKind.Package && driver.Lists.Any(other => other.Chip == card.Chip);
            if (listed || sibling)
                setups.AddRange(driver.Oses.Select(os => new Setup(card, driver, os, listed ? Install.Listed : Install.Forced)));
        }

        // In DOS the card's BIOS is the driver; where it is recorded there is no other.
        foreach (var os in _catalog.Oses.Where(os => !card.DriversCompleteFor.Contains(os) && !(os.IsDos && setups.Exists(UsesBios))))
            setups.Add(new Setup(card, _unrecorded[os], os, Install.Unrecorded));
        return setups
            .OrderBy(setup => setup.Install).ThenBy(setup => setup.Os.Id, StringComparer.Ordinal)
            .ThenBy(setup => setup.Driver.Branch.Id, StringComparer.Ordinal).ThenByDescending(setup => setup.Driver.Order).ToList();

        static bool UsesBios(Setup setup) => setup.Driver.Kind == DriverKind.Bios;
    }
}
