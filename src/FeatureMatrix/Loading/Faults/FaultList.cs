namespace FeatureMatrix.Loading.Faults;

/// <summary>Collects faults; the same fault at the same place counts once.</summary>
internal sealed class FaultList
{
    private readonly HashSet<Fault> _faults = [];

    /// <summary>
    /// True where a file could not be read to its end. What it defines is not known then, so that references which lead
    /// nowhere are not reported: they would bury the one fault that matters.
    /// </summary>
    public bool HasUnreadFile { get; set; }

    /// <summary>Keys whose value in a deeper layer does not count. No faults, but worth knowing.</summary>
    public List<HiddenKey> Hidden { get; } = [];

    public int Count => _faults.Count;

    public bool HasErrors => _faults.Any(fault => fault.Severity == Severity.Error);

    public void Add(Fault fault) => _faults.Add(fault);

    /// <summary>For a reference that leads nowhere; see <see cref="HasUnreadFile"/>.</summary>
    public void AddDangling(Fault fault)
    {
        if (!HasUnreadFile)
            Add(fault);
    }

    public IReadOnlyList<Fault> Sorted() =>
    [
        .. _faults
            .OrderBy(fault => fault.Origin.File, StringComparer.Ordinal)
            .ThenBy(fault => fault.Origin.Line)
            .ThenBy(fault => fault.Origin.Column)
            .ThenBy(fault => fault.Code, StringComparer.Ordinal)
            .ThenBy(fault => fault.Message, StringComparer.Ordinal),
    ];
}
