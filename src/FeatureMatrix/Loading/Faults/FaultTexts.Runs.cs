using System.Diagnostics;
using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Faults;

/// <summary>Faults of the bench log.</summary>
internal static partial class FaultTexts
{
    /// <summary>A run names frame times that are not there.</summary>
    public static Fault NoFrameTimes(Origin at, string path) =>
        Error("FM103", at, $"there is no file '{Cut(path)}'; frame times lie in a folder below the log, in a file that ends in .csv");

    /// <summary>A file of frame times without a frame.</summary>
    public static Fault EmptyFrameTimes(Origin at) => Error("FM102", at, "holds no frame times: one frame a line, in milliseconds");

    /// <summary>The wording of a fault that the reader of run logs found.</summary>
    public static Fault OfRunLog(Origin at, RunLogFault fault)
    {
        var (column, found, legal) = (fault.Column, Cut(fault.Found), string.Join(", ", fault.Legal));
        var meant = fault.Suggestion is { } near ? $"; did you mean '{near}'?" : "";
        return fault.Kind switch
        {
            RunLogFaultKind.NotARunLog => Error("FM006", at, $"is no run log: its first line names none of the columns {legal}"),
            RunLogFaultKind.StrayQuote => Error("FM006", at, $"a quote stands inside the cell {found}; a cell with quotes is quoted whole and doubles them"),
            RunLogFaultKind.OpenQuote => Error("FM006", at, $"the quote before {found} is never closed"),
            RunLogFaultKind.SurplusCell => Error("FM006", at, $"'{found}' stands beyond the last column; a decimal comma needs quotes here"),
            RunLogFaultKind.UnknownColumn => Error("FM101", at, $"unknown column '{found}'{(meant.Length > 0 ? meant : $"; there is {legal}")}"),
            RunLogFaultKind.MissingColumn => Error("FM102", at, $"the column '{column}' is missing"),
            RunLogFaultKind.MissingValue => Error(
                "FM102", at, legal.Length > 0 ? $"'{column}' is empty; one of {legal} has to be there" : $"'{column}' is empty and has to be there"),
            RunLogFaultKind.RepeatedColumn => Error("FM104", at, $"the column '{column}' occurs a second time"),
            RunLogFaultKind.UnknownWord => Error("FM107", at, $"'{found}' is no value of '{column}': it is {OneOf(fault.Legal)}{meant}"),
            RunLogFaultKind.NotANumber => Error("FM109", at, $"'{found}' is no value of '{column}'; it wants a number such as 59.9"),
            RunLogFaultKind.NotWhole => Error("FM109", at, $"'{found}' is no value of '{column}'; it wants a whole number"),
            RunLogFaultKind.OutOfRange => Error("FM109", at, $"'{found}' is no value of '{column}'; it wants a number in the range {legal}"),
            RunLogFaultKind.OtherDecimalMark => Error("FM109", at, $"'{found}' in '{column}' has another decimal mark than the rows above, which have '{legal}'"),
            RunLogFaultKind.NotADate => Error("FM109", at, $"'{found}' is no value of '{column}'; it wants a date such as 2026-02-11"),
            RunLogFaultKind.NotAPair => Error("FM109", at, $"'{found}' is no value of '{column}'; it wants percent=fps, several separated by |"),
            _ => throw new UnreachableException(),
        };
    }
}
