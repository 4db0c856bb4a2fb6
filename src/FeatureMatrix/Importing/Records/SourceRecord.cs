using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Records;

/// <summary>The source that imported statements name.</summary>
public static class SourceRecord
{
    /// <summary>An entry among the collection's sources; one that a person has worded already stays as it is.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="text">What to print.</param>
    /// <param name="grade">The grade it lends: <c>measured</c>, <c>documented</c>, <c>inferred</c> or <c>hearsay</c>.</param>
    public static RecordChange Of(string id, string text, string grade) => new(
        [new Step.Key("sources"), new Step.Key(id)], "sources.yaml",
        [KeyChange.Keep("text", text), KeyChange.Keep("grade", grade)]);
}
