namespace FeatureMatrix.Cli;

/// <summary>The command line names something that is not there. The message says what, and what there is.</summary>
internal sealed class UsageException(string message) : Exception(message);
