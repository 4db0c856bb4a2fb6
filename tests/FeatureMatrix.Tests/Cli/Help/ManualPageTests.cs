using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli.Help;

public sealed class The_manual_page : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public The_manual_page() => File.WriteAllText(_folder["featmatrix.1"], CommandRun.Of("manual").Results);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Is_set_without_a_warning()
    {
        External.Command("groff", "groff-base");
        External.Command("man", "man-db");

        Assert.Equal("", Shell.Run("groff -ww -man -Tutf8 -z featmatrix.1 && man --warnings -l featmatrix.1 >/dev/null", _folder.Path));
    }

    [Fact]
    public void Shows_every_command_with_its_options_and_examples() => Golden.Matches(
        "cli/featmatrix.1", File.ReadAllText(_folder["featmatrix.1"]).Replace(ProgramVersion.Text, "VERSION", StringComparison.Ordinal));
}
