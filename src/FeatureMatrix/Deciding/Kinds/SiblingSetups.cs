using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>How one card fares beside another on some titles.</summary>
internal enum Lead
{
    /// <summary>Some completion may make it worse.</summary>
    NotKnown,

    /// <summary>No completion makes it worse.</summary>
    Never,

    /// <summary>Every completion makes it better.</summary>
    Always,
}

/// <summary>
/// Two cards with one chip, setup beside setup: with the same driver on the same system both ask the same of the chip, so that a demand costs
/// the same on both in every completion where nothing is recorded of either card alone.
/// </summary>
internal sealed class SiblingSetups
{
    private readonly BulkProblem _problem;
    private readonly List<(int Second, Lead[]? Demands)> _pairs;

    /// <summary>Puts two cards side by side.</summary>
    /// <param name="problem">The compiled library.</param>
    /// <param name="pairs">For each kind of setup of the second card the one of the first with the same driver; null where it has none.</param>
    public SiblingSetups(BulkProblem problem, IReadOnlyList<(int Second, int? First)> pairs)
    {
        _problem = problem;
        _pairs = pairs.Select(pair => (pair.Second, pair.First is { } first ? LeadsOf(first, pair.Second) : null)).ToList();
    }

    /// <summary>How the first card fares beside the second on a kind of title: as its routes do, each beside the same route.</summary>
    /// <param name="kind">The kind of title.</param>
    /// <param name="runsForCertain">True where it certainly runs on the first card: only then a cheaper route is a better picture.</param>
    public Lead LeadIn(TitleKind kind, bool runsForCertain)
    {
        var lead = runsForCertain ? Lead.Always : Lead.Never;
        foreach (var (second, demands) in _pairs)
        {
            foreach (var route in kind.Routes.Where(route => !Fails(route, second)))
            {
                if (demands is null || Array.Exists(route, demand => demands[demand] == Lead.NotKnown))
                    return Lead.NotKnown;
                if (!Array.Exists(route, demand => demands[demand] == Lead.Always))
                    lead = Lead.Never;
            }
        }

        return lead;
    }

    /// <summary>For each demand whether it costs never more, or always less, on one kind of setup than on another.</summary>
    private Lead[] LeadsOf(int one, int other)
    {
        var leads = new Lead[_problem.Worst.Length];
        for (var demand = 0; demand < leads.Length; demand++)
        {
            var (worst, best) = (_problem.Worst[demand], _problem.Best[demand]);
            var isSame = worst[one] == worst[other] && best[one] == best[other]
                && ((_problem.Marks[demand][one] | _problem.Marks[demand][other]) & (ushort)BulkMarks.OfCard) == 0;
            var (most, least) = (OutcomeCode.RankOf(worst[one]), OutcomeCode.RankOf(best[other]));
            leads[demand] = most < least ? Lead.Always : isSame || most == least ? Lead.Never : Lead.NotKnown;
        }

        return leads;
    }

    private bool Fails(int[] route, int setup) => route.Sum(demand => _problem.Best[demand][setup]) >= OutcomeCode.DoesNotRun;
}
