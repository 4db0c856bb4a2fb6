using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>Faults of a run log that is not in the collection yet, worded as those of one that is.</summary>
public static class RunLogFaults
{
    /// <summary>The fault with the place it has in a file.</summary>
    public static Fault Of(string file, RunLogFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return FaultTexts.OfRunLog(new Origin(file, fault.Line, 1), fault);
    }
}
