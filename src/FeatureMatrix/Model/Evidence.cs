namespace FeatureMatrix.Model;

/// <summary>How good the evidence for a statement is, worst first (rule R1).</summary>
public enum Grade
{
    /// <summary>Somebody said so. Alone it decides nothing for certain; against a better grade it makes a conflict.</summary>
    Hearsay,

    /// <summary>Concluded from something else, for example from a sibling board or a program's import table.</summary>
    Inferred,

    /// <summary>Written in a document that can be named.</summary>
    Documented,

    /// <summary>Read from the hardware or seen on the screen.</summary>
    Measured,
}

/// <summary>Where a statement was written down in the collection; line and column count from 1.</summary>
public sealed record Origin(string File, int Line, int Column)
{
    /// <summary>For statements that no file holds, such as those made in a test or by a what-if.</summary>
    public static Origin None { get; } = new("", 0, 0);
}

/// <summary>The document, dump, person or bench session a statement comes from.</summary>
/// <param name="Id">Key in the collection's list of sources, or empty where the source is written in place.</param>
/// <param name="Text">What to print: title, section, date, or who saw it.</param>
/// <param name="Link">An http or https address, or null.</param>
/// <param name="By">Whose word it is, as that person wants to be called; empty where the text says enough.</param>
public sealed record Source(string Id, string Text, string? Link = null, string By = "")
{
    /// <summary>What to print, with whose word it is.</summary>
    public string Whole => By.Length == 0 ? Text : $"{Text}, by {By}";
}

/// <summary>What every statement carries: how good it is and who says so.</summary>
/// <param name="Grade">How good the evidence is.</param>
/// <param name="Source">Null where nobody wrote one down; the loader warns about that.</param>
/// <param name="Origin">The place in the collection.</param>
public sealed record Evidence(Grade Grade, Source? Source, Origin Origin)
{
    /// <summary>The same evidence with a grade no better than the one given (rule R9: forced drivers).</summary>
    public Evidence AtMost(Grade limit) => Grade <= limit ? this : this with { Grade = limit };
}
