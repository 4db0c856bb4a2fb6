using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>The options that say whose report a file is.</summary>
internal sealed class TargetOptions
{
    private readonly Option<string> _card = new("--card") { Description = "Id of the card. A new id makes a new card.", Required = true, HelpName = "id", CompletionSources = { Known.Cards } };

    private readonly Option<string> _driver = new("--driver")
    {
        Description = "The driver, as BRANCH@VERSION; a new branch or version is made. 'new' makes a branch for the card, with the version that the report gives.",
        Required = true,
        HelpName = "id@version",
        CompletionSources = { Known.Drivers },
    };

    private readonly Option<string?> _os = new("--os") { Description = "The operating system that the report was made on. Needed for a new driver.", HelpName = "id", CompletionSources = { Known.Systems } };

    private readonly Option<string?> _source = new("--source") { Description = "Id of the source that the statements name. Default: made of card and driver.", HelpName = "id" };

    public IEnumerable<Option> All => [_card, _driver, _os, _source];

    /// <summary>Card and driver that the command line means.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="catalog">The collection.</param>
    /// <param name="kind">What the file is, as part of the source's id.</param>
    /// <param name="name">What the report calls the card; null where it says nothing.</param>
    /// <param name="version">The version that the report gives the driver; null where it gives none.</param>
    /// <param name="isSoftware">Whether the processor draws.</param>
    public ReportTarget Of(ParseResult parsed, Catalog catalog, string kind, string? name, string? version, bool isSoftware)
    {
        var card = parsed.GetValue(_card)!;
        var os = parsed.GetValue(_os) is { } word ? Find.One(word, "operating system", catalog.Oses, one => one.Id, one => one.Name) : null;
        var (branch, number) = Driver(parsed.GetValue(_driver)!, card, version);
        var target = new ReportTarget
        {
            Catalog = catalog,
            Card = card,
            CardName = PlainWords.Of(name ?? card),
            Branch = branch,
            Version = number,
            Os = os,
            IsSoftware = isSoftware,
            Source = parsed.GetValue(_source) ?? $"{kind}-{card}-{branch}-{PlainWords.AsId(number)}",
        };
        if (target.KnownDriver is null && os is null)
        {
            throw new UsageException(
                $"The collection has no driver {branch}@{number}. To make one, name its operating system with --os: {string.Join(", ", catalog.Oses.Select(one => one.Id))}");
        }

        return target;
    }

    private static (string Branch, string Version) Driver(string word, string card, string? version)
    {
        if (word == "new")
            return ($"{card}-driver", version is null ? "unknown" : PlainWords.Of(version).Replace('@', '-'));
        var at = word.IndexOf('@', StringComparison.Ordinal);
        return at > 0 && at < word.Length - 1
            ? (word[..at], word[(at + 1)..])
            : throw new UsageException($"--driver {word}: write it as branch@version, for example ox-9x@2.10, or as 'new'.");
    }
}
