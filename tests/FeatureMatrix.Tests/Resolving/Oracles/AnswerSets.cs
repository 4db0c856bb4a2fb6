using System.Diagnostics;
using System.Globalization;
using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>
/// The second oracle: states catalogs as facts for the answer-set solver clingo, which evaluates <c>rules.lp</c>; each distinct
/// answer set is one outcome of one cell. Many catalogs go into one run.
/// </summary>
internal sealed class AnswerSets
{
    private readonly StringBuilder _facts = new();
    private readonly Dictionary<string, HashSet<string>> _outcomes = new(StringComparer.Ordinal);
    private readonly List<(string Cell, string Name, IReadOnlySet<string> Expected)> _cells = [];
    private int _catalog;

    /// <summary>Leaves of a plan what <c>rules.lp</c> covers: no memory, observations, forcing, conditions, policy.</summary>
    public static CatalogPlan Covered(CatalogPlan plan) => plan with
    {
        Cards = [.. plan.Cards.Select(card => card with { Memory = 3, Complete = 7, OsSupport = [] })],
        Wrappers = [.. plan.Wrappers.Select(wrapper => new WrapperPlan([.. wrapper.Versions.Select(version => version with { Mebibytes = 0 })]))],
        Titles = [.. plan.Titles.Select(title => title with { Renderers = [.. title.Renderers.Select(Covered)] })],
        Observations = [],
        Terms = new TermsPlan(true, -1, true, -1, false, 1, -1),
    };

    /// <summary>Adds the cells of a catalog: each title on each listed setup, with what the resolver says.</summary>
    public void Add(GeneratedCatalog generated) => Add(generated, generated);

    /// <summary>As <see cref="Add(GeneratedCatalog)"/>, but the resolver is asked about a distorted copy of the catalog.</summary>
    public void Add(GeneratedCatalog generated, GeneratedCatalog asked)
    {
        var export = new AnswerSetExport(_facts, _catalog++, generated.Catalog);
        var resolver = new Resolver(generated.Catalog);
        var faulty = new Resolver(asked.Catalog);
        foreach (var title in generated.Catalog.Titles)
        {
            foreach (var setup in generated.Catalog.Cards.SelectMany(resolver.SetupsOf).Where(setup => setup.Install == Install.Listed))
            {
                var other = asked.Catalog.Cards.SelectMany(faulty.SetupsOf).Single(one => one.ToString() == setup.ToString() && one.Install == Install.Listed);
                var verdict = faulty.Resolve(asked.Catalog.Titles.Single(one => one.Id == title.Id), other, asked.Terms);
                if (!verdict.Overall.IsExact || verdict.Overall.Outcomes.Count == 0)
                    continue;
                var cell = export.Cell(title, setup, resolver.Resolve(title, setup, generated.Terms).Routes.Select(finding => finding.Route));
                _cells.Add((cell, $"{title} on {setup}", verdict.Overall.Outcomes.Select(outcome => export.Text(outcome)).ToHashSet(StringComparer.Ordinal)));
                _outcomes.Add(cell, new HashSet<string>(StringComparer.Ordinal));
            }
        }
    }

    /// <summary>Runs clingo over all that was added; the cells it sees differently, in words.</summary>
    public IReadOnlyList<string> Differences()
    {
        var facts = Path.GetTempFileName();
        try
        {
            File.WriteAllText(facts, _facts.ToString());
            Read(Clingo(Repository.PathTo("tests", "FeatureMatrix.Tests", "Resolving", "Oracles", "rules.lp"), facts));
        }
        finally
        {
            File.Delete(facts);
        }

        return [.. _cells.Where(cell => !cell.Expected.SetEquals(_outcomes[cell.Cell]))
            .Select(cell => $"{cell.Name}: clingo {Set(_outcomes[cell.Cell])}, resolver {Set(cell.Expected)}")];
    }

    public int Cells => _cells.Count;

    private static RendererPlan Covered(RendererPlan plan) => plan with
    {
        Needs = [.. plan.Needs.Select(need => need with { Condition = -1 })],
        Memory = new MemoryPlan(0, false, 1, -1, 0, TextureFormat.Bits16),
    };

    private static string Set(IEnumerable<string> outcomes) => "{ " + string.Join(" | ", outcomes.Order(StringComparer.Ordinal)) + " }";

    private static IEnumerable<string> Clingo(string rules, string facts)
    {
        var start = new ProcessStartInfo(External.Command("clingo", "gringo"), ["0", "--project=show", "--warn=none", rules, facts]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode is 10 or 20 or 30, errors.Result);
        return output.Split('\n');
    }

    private void Read(IEnumerable<string> lines)
    {
        foreach (var atoms in lines.Where(line => line.Contains("now(", StringComparison.Ordinal)).Select(line => line.Split(' ')))
        {
            var cell = atoms.Single(atom => atom.StartsWith("now(", StringComparison.Ordinal))["now".Length..];
            var losses = atoms.Where(atom => atom.StartsWith("lost(", StringComparison.Ordinal)).Select(atom => atom["lost".Length..]).Order(StringComparer.Ordinal);
            _outcomes[cell].Add(atoms.Contains("runs") ? AnswerSetExport.Runs(losses) : AnswerSetExport.DoesNotRun);
        }
    }
}

/// <summary>Writes one catalog as facts. Names are numbers; needs are numbered by what a loss is equal by.</summary>
internal sealed class AnswerSetExport
{
    public const string DoesNotRun = "does not run";

    private readonly StringBuilder _text;
    private readonly int _k;
    private readonly Catalog _catalog;
    private readonly Dictionary<object, string> _names = [];

    public AnswerSetExport(StringBuilder text, int k, Catalog catalog)
    {
        (_text, _k, _catalog) = (text, k, catalog);
        if (k == 0)
            WriteVocabulary();
        WriteHardware();
        foreach (var fact in catalog.Facts)
            Write(fact, fact.Scope);
        foreach (var version in catalog.WrapperVersions)
            Write(version);
        foreach (var renderer in catalog.Titles.SelectMany(title => title.Renderers).Where(renderer => !renderer.IsSoftware))
            Write(renderer);
    }

    public static string Runs(IEnumerable<string> losses) => string.Join(' ', losses.Prepend("runs"));

    /// <summary>States a cell with the order in which equally good routes are preferred; its name in the output.</summary>
    public string Cell(Title title, Setup setup, IEnumerable<Route> routes)
    {
        var name = Name(setup);
        State($"cell({_k},{Name(title)},{name})");
        State($"setup({_k},{name},{Name(setup.Card)},{Name(setup.Driver)},{Name(setup.Os)})");
        foreach (var (route, place) in routes.Select((route, place) => (route, place)))
            State($"rank({_k},{name},{Name(route.Renderer)},{(route.Wrapper is null ? "native" : Name(route.Wrapper))},{place})");
        return $"({_k},{Name(title)},{name})";
    }

    /// <summary>An outcome as the output of clingo is read.</summary>
    public string Text(Outcome outcome) => outcome.Runs
        ? Runs(outcome.Losses.Select(loss => $"({Sign(loss.Need)},{Kind(loss.Kind)},{(int)loss.Strength})").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        : DoesNotRun;

    private static string Kind(LossKind kind) => kind switch
    {
        LossKind.Missing => "missing",
        LossKind.WrongPicture => "wrong",
        LossKind.NotInHardware => "emulated",
        _ => throw new UnreachableException(),
    };

    private static string Of(Capability capability) => $"({Word(capability.Feature)},{capability.Step})";

    private static string Word(Feature feature) => feature.Id.Replace('-', '_');

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();

    /// <summary>What two losses have to have in common to be equal, besides strength and kind.</summary>
    private string Sign(Need need) => Name(string.Join(' ', need.Choices));

    private void State(string atom) => _text.Append(atom).Append(".\n");

    private string Name(object thing)
    {
        if (!_names.TryGetValue(thing, out var name))
            _names.Add(thing, name = (_k * 1000 + _names.Count).ToString(CultureInfo.InvariantCulture));
        return name;
    }

    private void WriteVocabulary()
    {
        foreach (var feature in _catalog.Features)
        {
            State($"step({Word(feature)},1..{feature.Steps})");
            if (feature.IsApi)
                State($"api({Word(feature)})");
            if (feature.NeedsRuntime)
                State($"needsruntime({Word(feature)})");
            foreach (var implied in feature.Implies)
                State($"declared({Word(feature)},{Word(implied.Feature)},{implied.Step})");
        }
    }

    private void WriteHardware()
    {
        foreach (var card in _catalog.Cards)
            State($"card({_k},{Name(card)},{Name(card.Chip)})");
        foreach (var driver in _catalog.Drivers)
        {
            State($"driver({_k},{Name(driver)},{Name(driver.Branch)},{driver.Order})");
            foreach (var os in driver.Oses)
                State($"on({_k},{Name(driver)},{Name(os)})");
        }

        foreach (var os in _catalog.Oses)
        {
            State($"os({_k},{Name(os)})");
            foreach (var limit in os.Runtimes)
                State($"limit({_k},{Name(os)},{Word(limit.Api)},{limit.Highest},{(int)limit.Evidence.Grade})");
        }
    }

    private void Write(SupplyFact fact, Scope? scope)
    {
        State($"fact({_k},{Name(fact)},{Word(fact.Capability.Feature)},{fact.Capability.Step},{Word(fact.Reach)},{Word(fact.Support)},{(int)fact.Evidence.Grade})");
        if (scope is not null)
            Write(Name(fact), scope);
    }

    private void Write(string thing, Scope scope)
    {
        State($"scope({_k},{thing})");
        if (scope.Chip is { } chip)
            State($"ofchip({_k},{thing},{Name(chip)})");
        if (scope.Card is { } card)
            State($"ofcard({_k},{thing},{Name(card)})");
        if (scope.Drivers is { } range)
            State($"ofdrivers({_k},{thing},{Name(range.Branch)},{range.First},{range.Last})");
        if (scope.Os is { } os)
            State($"ofos({_k},{thing},{Name(os)})");
        if (scope.Api is { } api)
            State($"ofapi({_k},{thing},{Word(api)})");
    }

    private void Write(WrapperVersion version)
    {
        var name = Name(version);
        State($"wrapper({_k},{name})");
        foreach (var offer in version.Offers)
            State($"offers({_k},{name},{Word(offer.Feature)},{offer.Step})");
        State($"target({_k},{name},{Word(version.Target.Feature)},{version.Target.Step})");
        State($"wruntime({_k},{name},{Word(version.Runtime.Feature)},{version.Runtime.Step})");
        foreach (var fact in version.Supplies.Distinct())
        {
            Write(fact, null);
            State($"supplies({_k},{name},{Name(fact)})");
        }

        foreach (var passed in version.Passes)
            State($"passes({_k},{name},{Word(passed)})");
        foreach (var need in version.Needs)
            State($"asks({_k},{name},{Of(need.Capability)})");
        foreach (var os in version.Oses)
            State($"runson({_k},{name},{Name(os.Os)},{Word(os.Support)},{(int)os.Evidence.Grade})");
        if (version.IsComplete)
            State($"complete({_k},{name})");
    }

    private void Write(Renderer renderer)
    {
        var name = Name(renderer);
        State($"renderer({_k},{Name(renderer.Title)},{name},{Word(renderer.Api!.Value.Feature)},{renderer.Api.Value.Step},{renderer.Runtime!.Value.Step})");
        foreach (var os in renderer.Oses)
            State($"existson({_k},{name},{Name(os)})");
        foreach (var need in renderer.Needs)
        {
            State($"need({_k},{name},{Name(need)},{(int)need.Strength},{(need.WhenBroken is { } broken ? ((int)broken).ToString(CultureInfo.InvariantCulture) : "unrecorded")},{(need.HardwareOnly ? "hardware" : "any")})");
            State($"sign({_k},{Name(need)},{Sign(need)})");
            foreach (var (choice, place) in need.Choices.Select((choice, place) => (choice, place)))
                State($"choice({_k},{Name(need)},{place},{Of(choice)})");
        }

        foreach (var defect in renderer.Defects)
        {
            var id = Name(new Box(defect));
            State($"defect({_k},{name},{id},{(int)defect.Evidence.Grade})");
            Write(id, defect.Scope);
            if (defect.IfPresent is { } cause)
                State($"cause({_k},{id},{Of(cause)})");
            if (defect.Wrapper is { } wrapper)
                State($"withwrapper({_k},{id},{Name(wrapper)})");
        }
    }

    /// <summary>A defect of one renderer, told apart from an equal one of another.</summary>
    private sealed class Box(Defect defect)
    {
        public Defect Defect { get; } = defect;
    }
}
