using System.CommandLine;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;

namespace FeatureMatrix.Cli.Commands;

/// <summary>The option that every command with a table shares.</summary>
internal static class TableOptions
{
    public static Option<TableFormat> FormatOption { get; } = Format();

    public static void Print(Terminal terminal, ParseResult parsed, Table table) =>
        terminal.Print(TableWriter.Write(table, parsed.GetValue(FormatOption)));

    public static void Print(Terminal terminal, ParseResult parsed, DecisionReport report) =>
        terminal.Print(ReportWriter.Write(report, parsed.GetValue(FormatOption)));

    private static Option<TableFormat> Format()
    {
        var option = new Option<TableFormat>("--format", "-f") { Description = "How to print the table: text, csv, json, markdown or forum.", HelpName = "format" };
        option.CompletionSources.Clear();
        option.CompletionSources.Add([.. Enum.GetNames<TableFormat>().Select(name => name.ToLowerInvariant())]);
        return option;
    }
}
