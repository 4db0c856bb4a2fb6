using System.Diagnostics;
using System.Globalization;
using System.Text;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Deciding.Planning;

/// <summary>States a planning problem for the answer-set solver clingo (Debian package gringo) and reads its optimum.</summary>
internal static class SolvedPlan
{
    private const string Rules =
        """
        { in(O,R) : at(O,R) }.
        seat(C,R) :- in(O,R), of(O,C).
        seat(D,R) :- seat(C,R), companion(C,D).
        1 { sits(C,R,S) : slot(C,R,S,_) } 1 :- seat(C,R), counted(R).
        :- sits(C,R,S), sits(D,R,S), C < D.
        :- plugs(R,N), #count { C : seat(C,R), plug(C) } > N.
        :- copies(C,N), #count { R : seat(C,R) } > N.
        :- one_driver, in(O,R), in(P,R), O < P, of(O,C), of(P,C), system(O,S), system(P,S).
        bought(C) :- seat(C,_), not owned(C).
        :- without(C), seat(C,_).
        :- most(N), #count { C : bought(C) } > N.
        :- budget(B), #sum { P,C : bought(C), price(C,P) } > B.
        :- budget(_), bought(C), not price(C,_).
        got(M) :- in(O,_), covers(O,M).
        best(T,W) :- level(T,W), in(O,_), worth(O,T,V), V >= W.
        #minimize { 1@9,M : must(M), not got(M) }.
        #maximize { D@score,T,W : best(T,W), gain(T,W,D) }.
        #minimize { 1@7,C : bought(C) }.
        #minimize { 1@6,C,R : seat(C,R) }.
        #minimize { 1@5,R : seat(_,R) }.
        #minimize { 1@4,O,R : in(O,R) }.
        #minimize { 1@3,C,R : sits(C,R,S), slot(C,R,S,1) }.
        #minimize { 1@1,C : bought(C), not price(C,_) }.
        #minimize { P@0,C : bought(C), price(C,P) }.
        #const score = 8.
        #show in/2.
        """;

    /// <summary>What the solver's best set of installs comes to.</summary>
    public static PlanValue Best(PlanProblem problem, PlanGoal goal, PlanLimits limits)
    {
        var clingo = External.Command("clingo", "gringo");
        var start = new ProcessStartInfo(clingo, ["--quiet=1,1", "--warn=none", "-c", $"score={(goal == PlanGoal.Most ? 8 : 2)}", "-"])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        using var solver = Process.Start(start)!;
        solver.StandardInput.Write(Rules + "\n" + Facts(problem, limits));
        solver.StandardInput.Close();
        var output = solver.StandardOutput.ReadToEnd();
        Assert.Contains("OPTIMUM FOUND", output);
        var lines = output.Split('\n');
        var atoms = lines[Array.FindLastIndex(lines, line => line.StartsWith("Answer", StringComparison.Ordinal)) + 1];
        var chosen = atoms.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(atom => atom["in(".Length..^1].Split(','))
            .Select(pair => (int.Parse(pair[0], CultureInfo.InvariantCulture), int.Parse(pair[1], CultureInfo.InvariantCulture))).ToList();
        return EveryPlan.ValueOf(problem, chosen, limits)!.Value;
    }

    private static string Facts(PlanProblem problem, PlanLimits limits)
    {
        var text = new StringBuilder();
        if (problem.OneDriverPerSystem)
            Add($"one_driver.");
        if (limits.Budget is { } budget)
            Add($"budget({budget}).");
        if (limits.MostBought is { } most)
            Add($"most({most}).");
        foreach (var card in limits.Without)
            Add($"without({card}).");
        for (var must = 0; must < problem.MustHaves; must++)
            Add($"must({must}).");
        for (var rig = 0; rig < problem.Rigs.Count; rig++)
        {
            if (problem.Rigs[rig].Slots is not null)
                Add($"counted({rig}).");
            if (problem.Rigs[rig].Plugs is { } plugs)
                Add($"plugs({rig},{plugs.Count}).");
        }

        for (var i = 0; i < problem.Cards.Count; i++)
        {
            var card = problem.Cards[i];
            Add($"copies({i},{Math.Max(1, card.Owned)}).");
            if (card.Owned > 0)
                Add($"owned({i}).");
            if (card.Price is { } price)
                Add($"price({i},{price}).");
            if (card.Companion is { } companion)
                Add($"companion({i},{companion}).");
            if (card.Plug.Length > 0)
                Add($"plug({i}).");
            for (var rig = 0; rig < problem.Rigs.Count; rig++)
            {
                foreach (var slot in card.Slots[rig])
                    Add($"slot({i},{rig},{slot.Number},{(slot.IsDoubtful ? 1 : 0)}).");
            }
        }

        for (var i = 0; i < problem.Options.Count; i++)
        {
            var option = problem.Options[i];
            Add($"of({i},{option.Card}). system({i},{option.System}).");
            foreach (var rig in option.Rigs)
                Add($"at({i},{rig}).");
            foreach (var must in option.Covers)
                Add($"covers({i},{must}).");
            for (var title = 0; title < option.Worths.Count; title++)
                Add($"worth({i},{title},{option.Worths[title]}).");
        }

        // A title's best worth is the sum of the steps up to it.
        for (var title = 0; title < (problem.Options.Count == 0 ? 0 : problem.Options[0].Worths.Count); title++)
        {
            var last = 0L;
            foreach (var worth in problem.Options.Select(option => option.Worths[title]).Where(worth => worth > 0).Distinct().Order())
            {
                Add($"level({title},{worth}). gain({title},{worth},{worth - last}).");
                last = worth;
            }
        }

        return text.ToString();

        void Add(FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
    }
}
