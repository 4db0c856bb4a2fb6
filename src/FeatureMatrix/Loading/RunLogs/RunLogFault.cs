using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>What is wrong with a place of a run log.</summary>
public enum RunLogFaultKind
{
    /// <summary>No column of a run log was recognised, however the first line is cut; nothing was read. Legal holds the columns.</summary>
    NotARunLog,

    /// <summary>No such column; its cells were not read. Legal holds the columns.</summary>
    UnknownColumn,

    /// <summary>A second column of the name; its cells were not read.</summary>
    RepeatedColumn,

    /// <summary>A required column is missing; the file was read for its other faults only.</summary>
    MissingColumn,

    /// <summary>The cell must not be empty in this row.</summary>
    MissingValue,

    /// <summary>
    /// A cell beyond the last column, or under an empty heading. In a file separated by commas this is mostly a decimal comma without quotes.
    /// </summary>
    SurplusCell,

    /// <summary>Not a number written with digits and at most one decimal mark; thousands are not separated.</summary>
    NotANumber,

    /// <summary>Not a whole number.</summary>
    NotWhole,

    /// <summary>A number outside the range that Legal states, such as <c>1..64</c> or <c>&gt; 0</c>.</summary>
    OutOfRange,

    /// <summary>A decimal mark other than the one used above, which Legal states: one of the two separates thousands.</summary>
    OtherDecimalMark,

    /// <summary>Not one of the words in Legal.</summary>
    UnknownWord,

    /// <summary>Not a date as <c>yyyy-mm-dd</c>.</summary>
    NotADate,

    /// <summary>Not <c>percent=fps</c>.</summary>
    NotAPair,

    /// <summary>A quote inside a cell that is not quoted, or text after the closing quote.</summary>
    StrayQuote,

    /// <summary>A quoted cell that the end of the file leaves open.</summary>
    OpenQuote,
}

/// <summary>One fault of a run log, as data; the sentence is made where reports are worded.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Line">The line on which the row begins, from 1.</param>
/// <param name="Column">The column's name; empty where the whole line is meant.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Legal">What may stand there; empty where that cannot be listed.</param>
/// <param name="Suggestion">The nearest legal word; null where none is near.</param>
public sealed record RunLogFault(
    RunLogFaultKind Kind, int Line, string Column, string Found, EquatableList<string> Legal, string? Suggestion);

/// <summary>What came of reading a run log.</summary>
/// <param name="Rows">The rows without a fault, discarded runs included, in the order of the file.</param>
/// <param name="Faults">All faults, by line and column.</param>
public sealed record RunLog(EquatableList<RunLogRow> Rows, EquatableList<RunLogFault> Faults);
