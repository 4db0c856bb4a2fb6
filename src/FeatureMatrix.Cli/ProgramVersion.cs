namespace FeatureMatrix.Cli;

/// <summary>The program's version, as the build states it.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);
}
