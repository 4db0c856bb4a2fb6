using System.Collections;
using System.Diagnostics;
using System.Reflection;

namespace FeatureMatrix.Mutation;

/// <summary>The switch that dotnet-stryker builds into the library.</summary>
internal sealed class MutantControl
{
    private const BindingFlags Static = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;

    private readonly Type _type = typeof(Model.Catalog).Assembly.GetTypes().Single(type => type.Name == "MutantControl");

    public void Activate(int mutant) => _type.GetField("ActiveMutant", Static)!.SetValue(null, mutant);

    public void Capture(bool on) => _type.GetField("CaptureCoverage", Static)!.SetValue(null, on);

    /// <summary>What was met since the last call.</summary>
    public IReadOnlySet<int> Passed()
    {
        var passed = Numbers("_coveredMutants").ToHashSet();
        Numbers("_coveredMutants").Clear();
        return passed;
    }

    private List<int> Numbers(string field) => (List<int>)_type.GetField(field, Static)!.GetValue(null)!;
}

/// <summary>One test of the test project with its arguments, called directly.</summary>
/// <param name="Name">Class, method and arguments.</param>
/// <param name="Run">Throws where the test fails.</param>
internal sealed record QuickTest(string Name, Action Run)
{
    /// <summary>The mutants that its code passes by.</summary>
    public IReadOnlySet<int> Passes { get; private set; } = new HashSet<int>();

    /// <summary>How long it took on the library without an active mutant.</summary>
    public TimeSpan Usual { get; private set; }

    public QuickTest Timed()
    {
        var watch = Stopwatch.StartNew();
        Run();
        Usual = watch.Elapsed;
        return this;
    }

    public void Follow(MutantControl control)
    {
        control.Capture(true);
        try
        {
            Run();
        }
        finally
        {
            control.Capture(false);
        }
        Passes = control.Passed();
    }
}

/// <summary>The tests that ask nothing of their surroundings: no fixtures, no output, no other program.</summary>
internal static class QuickTests
{
    private static readonly string[] Rooms = ["Resolving", "Model", "Loading", "Vocabulary", "Reports", "Demo", "Deciding"];

    /// <summary>Those that pass within the limit without a mutant, the quickest first.</summary>
    public static IReadOnlyList<QuickTest> Within(TimeSpan limit, MutantControl control, TextWriter console)
    {
        var tests = typeof(Tests.Resolving.RulesTests).Assembly.GetTypes()
            .Where(type => type is { IsClass: true, IsAbstract: false } && Rooms.Any(room => (type.Namespace + ".").StartsWith($"FeatureMatrix.Tests.{room}.", StringComparison.Ordinal)))
            .Where(type => type != typeof(Tests.Resolving.Every_verdict))
            .Where(type => type.GetConstructor(Type.EmptyTypes) is not null)
            .OrderBy(type => type.FullName, StringComparer.Ordinal)
            .SelectMany(Of);
        var quick = new List<QuickTest>();
        foreach (var test in tests)
        {
            try
            {
                // The first call pays for compilation.
                test.Run();
                if (test.Timed().Usual > limit)
                    continue;
                test.Follow(control);
                quick.Add(test);
            }
            catch (Exception e)
            {
                console.WriteLine($"left out, fails without a mutant: {test.Name}: {(e.InnerException ?? e).Message.Split('\n')[0]}");
            }
        }
        return [.. quick.OrderBy(test => test.Usual)];
    }

    private static IEnumerable<QuickTest> Of(Type type) =>
        from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
        let fact = method.GetCustomAttribute<Xunit.FactAttribute>()
        where fact is not null && method.ReturnType == typeof(void) && !method.GetCustomAttributes<Xunit.TraitAttribute>().Any() && !type.GetCustomAttributes<Xunit.TraitAttribute>().Any()
        from arguments in fact is Xunit.TheoryAttribute ? Rows(method) : [[]]
        where arguments.Length == method.GetParameters().Length
        select new QuickTest(
            $"{type.Name}.{method.Name}({string.Join(", ", arguments)})",
            () => method.Invoke(Activator.CreateInstance(type), BindingFlags.DoNotWrapExceptions, null, arguments, null));

    private static IEnumerable<object?[]> Rows(MethodInfo method)
    {
        foreach (var row in method.GetCustomAttributes<Xunit.InlineDataAttribute>())
            yield return row.Data;
        foreach (var member in method.GetCustomAttributes<Xunit.MemberDataAttribute>())
        {
            var source = method.DeclaringType!.GetProperty(member.MemberName)?.GetMethod ?? method.DeclaringType.GetMethod(member.MemberName);
            if (source is null || source.GetParameters().Length > 0)
                continue;
            foreach (var row in (IEnumerable)source.Invoke(null, null)!)
                yield return row is Xunit.ITheoryDataRow data ? data.GetData() : (object?[])row;
        }
    }
}
