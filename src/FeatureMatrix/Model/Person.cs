namespace FeatureMatrix.Model;

/// <summary>Somebody whose word a collection takes.</summary>
/// <param name="Id">The pseudonym.</param>
/// <param name="Name">The name; empty where nobody wrote one down.</param>
/// <param name="NameMayBeShown">True only where the person agreed to see the name in print.</param>
public sealed record Person(string Id, string Name, bool NameMayBeShown)
{
    /// <summary>What to print: the name only with the person's leave.</summary>
    public string CalledBy => NameMayBeShown && Name.Length > 0 ? Name : Id;
}
