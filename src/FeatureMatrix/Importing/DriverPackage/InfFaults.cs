namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Collects the faults of one file, up to the limit.</summary>
internal sealed class InfFaults
{
    private readonly List<InfFault> _faults = [];

    public void Add(InfFaultKind kind, int line, int column, string subject = "")
    {
        if (_faults.Count < InfLimits.Faults)
            _faults.Add(new InfFault(kind, line, column, Shortened(subject)));
        else if (_faults.Count == InfLimits.Faults)
            _faults.Add(new InfFault(InfFaultKind.MoreFaults, line, column));
    }

    /// <summary>The faults in the order of the file.</summary>
    public IReadOnlyList<InfFault> InOrder() =>
        [.. _faults.OrderBy(f => f.Kind == InfFaultKind.MoreFaults).ThenBy(f => f.Line).ThenBy(f => f.Column).ThenBy(f => f.Kind)];

    private static string Shortened(string subject) => subject.Length <= 120 ? subject : subject[..120];
}
