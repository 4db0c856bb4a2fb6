using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>Values of the format as the text of a cell, and back.</summary>
internal static partial class CellText
{
    /// <summary>What a cell shows; empty for nothing. Where a value has not the simple form of its column, it stands in braces or brackets.</summary>
    public static string Of(Tree? value, CellForm form) => (value, form) switch
    {
        (null, _) or (TreeText { IsNothing: true }, _) => "",
        (TreeText text, CellForm.Items or CellForm.List or CellForm.Pairs) => Loose(text.Text),
        (TreeText text, _) => text.Text,
        (TreeList list, CellForm.Lines) => string.Join('\n', list.Items.Select(item => item is TreeText text ? text.Text : Inline(item))),
        (TreeList list, CellForm.Items or CellForm.List) => string.Join(", ", list.Items.Select(Inline)),
        (TreeMap map, CellForm.Pairs) => string.Join(", ", map.Entries.Select(Pair)),
        (TreeList or TreeMap, _) => Inline(value),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The value of a filled cell. Null where it cannot be read in the form of its column.</summary>
    /// <param name="cell">The cell's text.</param>
    /// <param name="form">The form of its column.</param>
    /// <param name="before">What stands there now: a list of one text stays a list, where else a text alone does.</param>
    public static Tree? Read(string cell, CellForm form, Tree? before) => form switch
    {
        CellForm.Text => new TreeText(cell),
        CellForm.Braces => cell.StartsWith('{') ? Parse(cell) : new TreeText(cell),
        CellForm.Lines => new TreeList(null, cell.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0).Select(line => new TreeText(line))),
        CellForm.Items => Parse($"[{cell}]") switch
        {
            TreeList { Items: [TreeText only] } when before is not TreeList => only,
            var list => list,
        },
        CellForm.List => Parse($"[{cell}]"),
        CellForm.Pairs => Parse($"{{{cell}}}") as TreeMap,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Tree? Parse(string yaml)
    {
        var faults = new FaultList();
        return NodeParser.Parse(new SourceText("cell", yaml.ReplaceLineEndings(" ")), faults) is { } node && !faults.HasErrors ? Copied(node) : null;
    }

    private static Tree Copied(Node node) => node switch
    {
        Scalar scalar => new TreeText(scalar.Text.Trim(), scalar.IsNothing),
        Sequence list => new TreeList(null, list.Items.Select(Copied)),
        Mapping map => new TreeMap(null, map.Entries.Select(entry => new TreeEntry(entry.Key.Text, Copied(entry.Value)))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Inline(Tree value) => value switch
    {
        TreeText { IsNothing: true } => "",
        TreeText text => Loose(text.Text),
        TreeList list => $"[{string.Join(", ", list.Items.Select(Inline))}]",
        TreeMap map => $"{{{string.Join(", ", map.Entries.Select(Pair))}}}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Pair(TreeEntry entry) => $"{Loose(entry.Key)}: {Inline(entry.Value)}".TrimEnd();

    // Everything is text to the format, so that numbers need no quotes here; only signs that mean something in a list do.
    private static string Loose(string text) => Unquoted().IsMatch(text) && text is not ("null" or "~") ? text : YamlText.DoubleQuoted(text);

    [GeneratedRegex(@"\A[\p{L}\p{N}(+.](?:[\p{L}\p{N} ()+._/;=@°^-]*[\p{L}\p{N}()+._/;=@°^-])?\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1_000)]
    private static partial Regex Unquoted();
}
