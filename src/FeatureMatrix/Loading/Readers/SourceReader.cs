using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>The list of sources, and what <c>source</c> names: an id of that list, or a text in place.</summary>
internal sealed class SourceReader(Draft draft)
{
    private readonly Dictionary<string, Grade> _grades = [];

    /// <summary>Makes the list of sources.</summary>
    public void Build(Shelf<Source> shelf) => shelf.Build(item =>
    {
        if (item.Fields.Choice("grade", Words.Grades) is { } grade)
            _grades[item.Id] = grade;
        return new Source(item.Id, item.Fields.RequiredText("text"), Link(item.Fields), By(item.Fields));
    });

    /// <summary>The source that a node names, and the grade that it lends. Null where it is wrong.</summary>
    public (Source Source, Grade Grade)? Read(Node node)
    {
        if (node is Mapping mapping)
            return InPlace(new Fields(mapping, "'source'", draft.Faults));
        if (node is not Scalar scalar)
        {
            draft.Faults.Add(FaultTexts.WrongShape(node.Origin, "'source'", "the id of a source or a text", node.Shape));
            return null;
        }

        var text = scalar.Text.Trim();
        if (draft.SourceShelf.Find(text) is { } listed)
            return (listed, _grades.GetValueOrDefault(text, Grade.Documented));
        if (!LooksLikeId(text))
            return (new Source("", text), Grade.Documented);
        draft.SourceShelf.Find(scalar, draft.Faults);
        return null;
    }

    /// <summary>A single word in small letters is taken for an id, so that a slip in one does not become a source.</summary>
    private static bool LooksLikeId(string text) =>
        text.Length > 0 && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.');

    private (Source, Grade)? InPlace(Fields fields)
    {
        var source = new Source("", fields.RequiredText("text"), Link(fields), By(fields));
        var grade = fields.Choice("grade", Words.Grades) ?? Grade.Documented;
        fields.Done();
        return (source, grade);
    }

    /// <summary>Whose word something is: a person of the list as that person wants to be called, or whatever is written.</summary>
    public string By(Fields fields) => fields.Text("by") is var by && draft.People.Find(by) is { } person ? person.CalledBy : by;

    private static string? Link(Fields fields)
    {
        if (fields.Word("link") is not { } word)
            return null;
        var text = word.Text.Trim();
        if (Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https")
            return text;
        fields.Faults.Add(FaultTexts.WrongForm(word.Origin, "'link'", text, Forms.Link));
        return null;
    }
}
