using FeatureMatrix.Cli;
using FeatureMatrix.Cli.Help;
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

        Assert.Equal("", Shell.Run("groff -ww -man -Tutf8 -z featmatrix.1 2>&1 && man --warnings -l featmatrix.1 2>&1 >/dev/null", _folder.Path));
    }

    [Fact]
    public void Shows_every_command_with_its_options_and_examples()
    {
        var page = File.ReadAllText(_folder["featmatrix.1"]).Replace("\\-", "-", StringComparison.Ordinal).Replace("\\(dq", "\"", StringComparison.Ordinal).Replace("\\(rs", "\\", StringComparison.Ordinal);

        foreach (var command in CommandTree.Leaves(CommandTree.Create(new Terminal(TextWriter.Null, TextWriter.Null, useColour: false))))
        {
            var path = CommandTree.PathOf(command);
            var section = page[page.IndexOf($"\n.SS \"{path}", StringComparison.Ordinal)..];
            section = section[..section.IndexOf("\n.S", 1, StringComparison.Ordinal)];
            Assert.All(command.Options, option => Assert.Contains(option.Name, section, StringComparison.Ordinal));
            Assert.All(command.Arguments, argument => Assert.Contains($"\n.TP\n\\fI{argument.Name}\\fR\n{argument.Description}\n", section, StringComparison.Ordinal));
            Assert.All(CommandExamples.Of(path), example => Assert.Contains($"\n{example.CommandLine}\n", section, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Begins_with_name_and_version() => Assert.StartsWith(
        $".TH FEATMATRIX 1 \"\" \"featmatrix {ProgramVersion.Text}\" \"User commands\"\n.SH NAME\nfeatmatrix \\- which titles run on which old graphics card, by which route, and what is lost\n",
        File.ReadAllText(_folder["featmatrix.1"]), StringComparison.Ordinal);
}
