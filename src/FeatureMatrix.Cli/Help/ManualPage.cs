using System.CommandLine;
using System.CommandLine.Help;
using System.Text;
using FeatureMatrix.Cli.Commands;

namespace FeatureMatrix.Cli.Help;

/// <summary>The manual page, made from the command tree, in the macros of man(7).</summary>
internal static class ManualPage
{
    private static readonly Option[] Common = [Session.CollectionOption, Session.LibraryOption, Session.PolicyOption, TableOptions.FormatOption];

    public static string Write(RootCommand root)
    {
        var page = new StringBuilder();
        Lines(
            page, $".TH FEATMATRIX 1 \"\" \"{CommandTree.ProgramName} {ProgramVersion.Text}\" \"User commands\"",
            ".SH NAME", $"{CommandTree.ProgramName} \\- {Prose(LowerFirst(root.Description!).TrimEnd('.'))}",
            ".SH SYNOPSIS", $".B {CommandTree.ProgramName}", ".I command", ".RI [ arguments ]", ".RI [ options ]",
            ".SH DESCRIPTION", Prose(
                "Keeps what is known about old graphics cards, their drivers, wrappers and titles in a folder of text files, each statement with its "
                + "source, and decides from them which title runs on which card, by which route, and what is lost. What nobody looked at is not known; it is never taken for a no."),
            ".SH COMMANDS");
        foreach (var command in CommandTree.Leaves(root))
            Command(page, command);
        Lines(page, ".SH COMMON OPTIONS", "Most commands take these.");
        foreach (var option in Common.Concat(root.Options))
            Entry(page, Names(option), option.Description!);
        Lines(page, ".SH EXIT STATUS");
        Entry(page, "0", "Done.");
        Entry(page, "1", "The data has faults, or something could not be read or written.");
        Entry(page, "2", "The command line is wrong.");
        Lines(page, ".SH ENVIRONMENT");
        Entry(page, "NO_COLOR", "Where it is set, nothing is printed in colour.");
        Lines(page, ".SH FILES");
        Entry(page, "collection.yaml", "Makes a folder a collection. Every other file below it whose name ends in .yaml is read too; runs/ holds the bench log.");
        return page.ToString();
    }

    private static void Command(StringBuilder page, Command command)
    {
        var arguments = string.Concat(command.Arguments.Select(argument => " " + Usage(argument)));
        Lines(page, $".SS \"{Literal(CommandTree.PathOf(command))}{Literal(arguments)}\"", Prose(command.Description!));
        foreach (var argument in command.Arguments)
            Entry(page, $"\\fI{Literal(argument.Name)}\\fR", argument.Description!);
        foreach (var option in command.Options.Where(option => !Common.Contains(option)))
            Entry(page, Names(option), option.Description!);
        var common = Common.Where(command.Options.Contains).Select(option => Literal(option.Name)).ToList();
        if (common.Count > 0)
            Lines(page, ".PP", $"Also {string.Join(", ", common)}.");
        foreach (var example in CommandExamples.Of(CommandTree.PathOf(command)))
            Lines(page, ".PP", Prose(example.Purpose) + ":", ".PP", ".nf", ".RS 4", Guarded(Literal(example.CommandLine)), ".RE", ".fi");
    }

    private static string Usage(Argument argument)
    {
        var name = argument.Arity.MaximumNumberOfValues > 1 ? argument.Name + "..." : argument.Name;
        return argument.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;
    }

    private static string Names(Option option)
    {
        // What else help answers to, such as /?, is for people who know it already.
        var names = new[] { option.Name }.Concat(option.Aliases.Where(alias => option is not HelpOption || alias == "-h"))
            .Select(name => $"\\fB{Literal(name)}\\fR");
        return string.Join(", ", names) + (option.HelpName is { } value ? $" \\fI{Literal(value)}\\fR" : "");
    }

    private static void Entry(StringBuilder page, string label, string text) => Lines(page, ".TP", Guarded(label), Prose(text));

    private static void Lines(StringBuilder page, params ReadOnlySpan<string> lines)
    {
        foreach (var line in lines)
            page.Append(line).Append('\n');
    }

    /// <summary>What is typed as it stands: its hyphens and quotes stay plain when copied from the page.</summary>
    private static string Literal(string text) =>
        Plain(text).Replace("-", "\\-", StringComparison.Ordinal).Replace("'", "\\(aq", StringComparison.Ordinal).Replace("~", "\\(ti", StringComparison.Ordinal);

    /// <summary>Sentences; an option's name among them is typed as it stands.</summary>
    private static string Prose(string text) => Guarded(string.Join(' ', text.Split(' ').Select(word =>
        word.StartsWith("--", StringComparison.Ordinal) || word.Contains('~', StringComparison.Ordinal) ? Literal(word) : Plain(word))));

    private static string Plain(string text) =>
        text.Replace("\\", "\\(rs", StringComparison.Ordinal).Replace("\"", "\\(dq", StringComparison.Ordinal);

    /// <summary>A line that begins like a request is text all the same.</summary>
    private static string Guarded(string line) => line is ['.' or '\'', ..] ? "\\&" + line : line;

    private static string LowerFirst(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
