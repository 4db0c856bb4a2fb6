using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// Tells before anything is weighed which setups must cost the same: cards with one chip and the same memory of which nothing else is
/// recorded, with the same driver on the same system.
/// </summary>
internal sealed class AlikeSetups
{
    private readonly HashSet<Card> _named;

    /// <summary>Notes which cards some fact, defect or driver names.</summary>
    public AlikeSetups(Catalog catalog) => _named = catalog.Facts.Select(fact => fact.Scope.Card)
        .Concat(catalog.Titles.SelectMany(title => title.Renderers).SelectMany(renderer => renderer.Defects).Select(defect => defect.Scope.Card))
        .Concat(catalog.Drivers.SelectMany(driver => driver.Forced).Select(forced => (Card?)forced.Card))
        .Concat(catalog.Cards.Where(card => card.OsSupport.Count > 0)).OfType<Card>().ToHashSet();

    /// <summary>Equal for setups on which all demands cost the same.</summary>
    public object KeyOf(Setup setup) => (
        setup.Card.Chip, _named.Contains(setup.Card) ? setup.Card : null, setup.Memory, setup.Driver, setup.Os, setup.Install);
}
