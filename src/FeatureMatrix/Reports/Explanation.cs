namespace FeatureMatrix.Reports;

/// <summary>What a line of an explanation is, so that every format can mark it in its own way.</summary>
public enum LineKind
{
    /// <summary>The label, or a plain statement.</summary>
    Statement,

    /// <summary>The answer in short: what to use, what it costs, what else would help.</summary>
    Answer,

    /// <summary>A heading for the lines below it.</summary>
    Heading,

    /// <summary>Something that works or is met.</summary>
    Met,

    /// <summary>A loss: a need known not to be met.</summary>
    Loss,

    /// <summary>A gap: something nobody knows.</summary>
    Gap,

    /// <summary>What stops a route.</summary>
    Stop,

    /// <summary>A fact with grade and source.</summary>
    Fact,

    /// <summary>A caution, or records that need another look.</summary>
    Caution,
}

/// <summary>One line of an explanation with the lines that support it.</summary>
/// <param name="Kind">What the line is.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Because">What it rests on.</param>
public sealed record ExplanationLine(LineKind Kind, string Text, IReadOnlyList<ExplanationLine> Because)
{
    /// <summary>A line that rests on nothing further.</summary>
    public ExplanationLine(LineKind kind, string text)
        : this(kind, text, [])
    {
    }

    /// <summary>The line with its short answer and cautions alone.</summary>
    public ExplanationLine InShort() => this with { Because = [.. Because.Where(line => line.Kind is LineKind.Answer or LineKind.Caution && line.Because.Count == 0)] };

    /// <summary>This line and all below it, with their depth, the first being 0.</summary>
    public IEnumerable<(int Depth, ExplanationLine Line)> Flatten(int depth = 0)
    {
        yield return (depth, this);
        foreach (var below in Because.SelectMany(line => line.Flatten(depth + 1)))
            yield return below;
    }

    /// <summary>The explanation as indented text, one line each.</summary>
    public string ToText() => string.Join('\n', Flatten().Select(item => new string(' ', item.Depth * 2) + item.Line.Text));
}
