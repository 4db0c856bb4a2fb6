using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Mutation;

// Runner REPORT RESULTS [PLACES [SECONDS]]: the report names the mutants of the library beside this program; each gets a line in the
// results. PLACES is a regular expression for file:line:column, SECONDS the longest that a test may take to be used.
// A mutant that hangs ends the process with code 3 after its line is written; start it again to go on with the next. One that
// ends the process in another way is named in RESULTS.current: it takes a line "killed" and another start.
var (report, results) = (args[0], args[1]);
var only = args.Length > 2 ? args[2] : "";
var longest = TimeSpan.FromSeconds(args.Length > 3 ? double.Parse(args[3], CultureInfo.InvariantCulture) : 5);
var done = File.Exists(results) ? File.ReadLines(results).Select(line => int.Parse(line.Split('\t')[0], CultureInfo.InvariantCulture)).ToHashSet() : [];
var mutants = Mutant.In(report).Where(mutant => !done.Contains(mutant.Id) && Regex.IsMatch(mutant.Place, only, RegexOptions.None, TimeSpan.FromSeconds(1))).ToList();

// Reports of single tests are no news here.
var console = Console.Out;
Console.SetOut(TextWriter.Null);
var control = new MutantControl();
control.Activate(-1);
var tests = QuickTests.Within(longest, control, console);
var usual = tests.Sum(test => test.Usual.TotalSeconds);
console.WriteLine($"{mutants.Count} mutants to try, {tests.Count} tests of {usual:0.0} s in all");

var limit = TimeSpan.FromSeconds(10 + (3 * usual));
var current = (Mutant?)null;
var since = Stopwatch.StartNew();
using var writer = new StreamWriter(results, append: true) { AutoFlush = true };
var watchdog = new Thread(() =>
{
    for (; ; Thread.Sleep(500))
    {
        lock (writer)
        {
            if (current is null || since.Elapsed < limit)
                continue;
            writer.WriteLine(current.Line("killed", "hangs"));
            File.Delete(results + ".current");
            Environment.Exit(3);
        }
    }
}) { IsBackground = true };
watchdog.Start();

foreach (var mutant in mutants)
{
    lock (writer)
        (current, since) = (mutant, Stopwatch.StartNew());
    File.WriteAllText(results + ".current", mutant.Line("killed", "ends the process") + "\n");
    var passing = tests.Where(test => test.Passes.Contains(mutant.Id)).ToList();
    control.Activate(mutant.Id);
    var killer = Killer(passing);
    control.Activate(-1);
    lock (writer)
    {
        current = null;
        writer.WriteLine(mutant.Line(killer is not null ? "killed" : passing.Count == 0 ? "not passed" : "survived", killer));
    }
}
File.Delete(results + ".current");
return 0;

static string? Killer(IReadOnlyList<QuickTest> tests)
{
    foreach (var test in tests)
    {
        try
        {
            test.Run();
        }
        catch (Exception)
        {
            return test.Name;
        }
    }
    return null;
}
