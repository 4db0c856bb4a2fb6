using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>
/// Titles of a library that fare alike on every card. A must-have is a group of its own, and so is what somebody watched.
/// </summary>
/// <param name="Entry">One of them, which stands for all; the only one where <see cref="LibraryEntry.IsMustHave"/>.</param>
/// <param name="Kind">The kind of title.</param>
/// <param name="Weight">What they weigh together.</param>
internal sealed record TitleGroup(LibraryEntry Entry, int Kind, decimal Weight);
