using System.Diagnostics;
using System.Globalization;
using FeatureMatrix.Benchmarks;
using FeatureMatrix.Benchmarks.Collections;
using FeatureMatrix.Benchmarks.Engines;

// One step in one process, so that whole processes can be timed from outside; "race" times them all.
var watch = Stopwatch.StartNew();
switch (args)
{
    case ["generate", var size, var folder, .. var rest]:
        Workbench.Generate(CollectionSize.Of(size), folder, rest.Contains("--all-different"));
        break;
    case ["compile", var size, var folder, var relations]:
        Workbench.Compile(CollectionSize.Of(size), folder, relations);
        break;
    case ["solve", "bulk", var relations, var answer]:
        BulkEngine.Answer(relations, answer, share: true);
        break;
    case ["solve", "bulk-unshared", var relations, var answer]:
        BulkEngine.Answer(relations, answer, share: false);
        break;
    case ["solve", "linq", var relations, var answer]:
        LinqEngine.Answer(Relations.Read(relations), answer);
        break;
    case ["solve", "duckdb-joins" or "duckdb-masks", var relations, .. var answer]:
        DuckEngine.Answer(Relations.Read(relations), answer.FirstOrDefault(), args[1] == "duckdb-masks");
        break;
    case ["solve", "sqlite", var relations, .. var answer]:
        SqliteEngine.Answer(Relations.Read(relations), answer.FirstOrDefault());
        break;
    case ["write", var bytes, var path]:
        Workbench.WriteBytes(long.Parse(bytes, CultureInfo.InvariantCulture), path);
        break;
    case ["load", var folder]:
        Workbench.Load(folder);
        break;
    case ["parse", var folder]:
        Workbench.Parse(folder);
        break;
    case ["decide", var folder]:
        Workbench.Decide(folder);
        break;
    case ["site", var folder, var output]:
        SiteBench.Run(folder, output);
        break;
    case ["commands", var folder, var program]:
        new WholeCommands(folder, program).Run();
        return 0;
    case ["curves", var table, var picture]:
        GrowthChart.Write(table, picture);
        break;
    case ["preview", var program, var folder, var file, var page, var edits]:
        PreviewRace.Run(program, folder, file, page, int.Parse(edits, CultureInfo.InvariantCulture));
        break;
    case ["workbook", var size, var path]:
        LargeWorkbook.Write(CollectionSize.Of(size), path);
        break;
    case ["race", var folder, var repeats, .. var sizes]:
        Race.Run(folder, int.Parse(repeats, CultureInfo.InvariantCulture), sizes.Select(CollectionSize.Of).ToList());
        return 0;
    default:
        Console.Error.WriteLine("generate SIZE FOLDER [--all-different] | compile SIZE FOLDER RELATIONS | solve ENGINE RELATIONS [ANSWER] | write BYTES PATH | load FOLDER | parse FOLDER | decide FOLDER | site FOLDER OUTPUT | commands FOLDER PROGRAM | curves TABLE PICTURE | preview PROGRAM FOLDER FILE PAGE EDITS | workbook SIZE PATH | race FOLDER REPEATS SIZES");
        return 2;
}

Console.WriteLine(string.Create(
    CultureInfo.InvariantCulture,
    $"{string.Join(' ', args)}: {watch.Elapsed.TotalSeconds:0.000} s, processor {Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds:0.000} s, peak {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB"));
return 0;
