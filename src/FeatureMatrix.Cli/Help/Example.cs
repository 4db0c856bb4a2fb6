namespace FeatureMatrix.Cli.Help;

/// <summary>Something to type.</summary>
/// <param name="Purpose">What it is for; a phrase that a colon can follow.</param>
/// <param name="Words">What follows the program's name, quoted as in a shell. Works on the demo.</param>
internal sealed record Example(string Purpose, string Words)
{
    public string CommandLine => $"{CommandTree.ProgramName} {Words}";
}
