using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Faults;

/// <summary>Whether a fault blocks.</summary>
public enum Severity
{
    /// <summary>Worth a look; the collection loads.</summary>
    Warning,

    /// <summary>The collection does not load.</summary>
    Error,
}

/// <summary>Something in the collection that cannot be right, or should be better.</summary>
/// <param name="Code">Stable code, listed in data/README.md.</param>
/// <param name="Severity">Whether it blocks.</param>
/// <param name="Origin">Where; line 0 for a file as a whole.</param>
/// <param name="Message">What is there, what may stand there, and the nearest legal word.</param>
public sealed record Fault(string Code, Severity Severity, Origin Origin, string Message)
{
    /// <summary>The code of the warning about statements that name no source.</summary>
    public const string WithoutSource = "FM201";

    /// <summary>For example <c>cards/x.yaml(12,5): error FM103: unknown feature 'fog-tabel'; did you mean 'fog-table'?</c></summary>
    public override string ToString()
    {
        var place = Origin.Line == 0 ? Origin.File : $"{Origin.File}({Origin.Line},{Origin.Column})";
        var severity = Severity == Severity.Error ? "error" : "warning";
        return $"{place}: {severity} {Code}: {Message}";
    }
}

/// <summary>What came of loading: a catalog, or the reasons why there is none.</summary>
/// <param name="Catalog">Null where at least one fault is an error.</param>
/// <param name="Faults">All faults at once, by file, line and column.</param>
public sealed record LoadResult(Catalog? Catalog, IReadOnlyList<Fault> Faults)
{
    /// <summary>True where a file could not be read: names that it may hold were not looked up then.</summary>
    public bool HasUnreadFile { get; init; }

    /// <summary>What a policy file makes of the default policy; null where none was given. Libraries have theirs changed already.</summary>
    public Policy? Policy { get; init; }

    /// <summary>Where this collection says something else than one that it builds on, by kind and id.</summary>
    public IReadOnlyList<HiddenKey> Hidden { get; init; } = [];
}

/// <summary>A key of an entity whose value in another collection does not count, because the collection on top has its own.</summary>
/// <param name="About">Kind and id of the entity, such as <c>card 'heron-16'</c>.</param>
/// <param name="Key">The key.</param>
/// <param name="Origin">Where it counts.</param>
/// <param name="Below">Where it does not.</param>
public sealed record HiddenKey(string About, string Key, Origin Origin, Origin Below);
