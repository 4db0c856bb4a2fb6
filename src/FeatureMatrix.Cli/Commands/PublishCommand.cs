using System.CommandLine;
using System.Globalization;
using FeatureMatrix.Cli.Browser;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Turns a collection into an edition: the site and everything beside it.</summary>
internal static class PublishCommand
{
    private const string WorkbookName = "edition.xlsx";

    /// <summary>Titles times cards of one edition: each is a page and a cell of the workbook, which the workbook holds in memory as a whole.</summary>
    private const long MostCells = 250_000;

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("folder") { Description = "Folder of the collection. Default: as for --collection.", Arity = ArgumentArity.ZeroOrOne };
        var output = new Option<string>("--out", "-o") { Description = "Folder to write the edition to. Default: out.", DefaultValueFactory = _ => "out", HelpName = "folder" };
        var date = DateOption.Create("Date to print on the edition, as year-month-day. Default: none.");
        var edition = new Option<string?>("--edition") { Description = "Keep this state with the collection as an edition of that name, to which later ones are compared. Needs --date.", HelpName = "name" };
        var note = new Option<string?>("--note") { Description = "What to say of the edition, in a sentence.", HelpName = "text" };
        var templates = new Option<string?>("--templates") { Description = "Folder with templates of your own; what it lacks is taken from ours.", HelpName = "folder" };
        var frames = new Option<bool>("--frames") { Description = "Also write each pair of pictures and, where a Chromium is installed, each chart and each pair of captures as one frame of 1920 by 1080 pixels for video, into frames/." };
        var pdf = new Option<bool>("--pdf") { Description = "Also print the coverage matrix and the cards as PDF, into pdf/. Needs an installed Chromium." };
        var command = new Command("publish", "Publish the collection as a site that opens from its folder.")
        {
            folder, output, date, edition, note, templates, frames, pdf, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            var progress = new Progress(terminal);
            var day = parsed.Day(date);
            var set = Templates.Read(parsed.GetValue(templates));
            var shelf = new EditionShelf(Session.Folder(parsed.GetValue(folder) ?? parsed.GetValue(Session.CollectionOption)));
            if (parsed.GetValue(edition) is { } name)
            {
                shelf.MustBeFree(name);
                if (day is null)
                    throw new UsageException("An edition needs a date: say --date, for example --date 2026-03-14.");
            }

            var chromium = parsed.GetValue(pdf) ? Chromium.FindFor("--pdf") : null;
            if (Session.Open(parsed, terminal, parsed.GetValue(folder)) is not { } session)
                return ExitCode.Faults;
            if ((long)session.Decisions.Titles.Count * session.Catalog.Cards.Count > MostCells)
                throw new UsageException($"{session.Decisions.Titles.Count} titles on {session.Catalog.Cards.Count} cards are more than the 250,000 cells that one edition holds. Publish a library of fewer titles with --library.");
            progress.Step("Resolving.");
            session.Decisions.DecideAll();
            var earlier = shelf.All();
            var kept = parsed.GetValue(edition) is { } called
                ? EditionState.Of(session.Decisions, ProgramVersion.Text, called, day, parsed.GetValue(note) ?? "")
                : null;
            var history = kept is not null ? new EditionHistory([.. earlier, kept])
                : new EditionHistory(earlier, earlier.Count > 0 ? EditionState.Of(session.Decisions, ProgramVersion.Text) : null);
            var whole = EditionReport.Of(session.Decisions, day, history);
            progress.Step("Drawing pages and pictures.");
            // The workbook is made beside the site: each takes one processor for about as long.
            var workbook = Task.Run(() => WorkbookWriter.Write(whole));
            var site = SiteReport.Of(whole);
            IReadOnlyList<OutputFile> files;
            try
            {
                files = [.. SiteRenderer.Render(site, set, PictureCache.Get), new OutputFile(WorkbookName, workbook.GetAwaiter().GetResult())];
            }
            catch (TemplateFaultException fault)
            {
                terminal.Tell(fault.Message);
                terminal.Tell("Nothing was written.");
                return ExitCode.Faults;
            }

            if (parsed.GetValue(frames))
                files = [.. files, .. Frames(site, progress), .. PageFrames(site, files, progress, terminal)];
            if (chromium is not null)
                files = [.. files, .. PdfPages.Of(chromium, files, progress.Step)];
            var target = parsed.GetValue(output)!;
            progress.Step($"Writing {files.Count.ToString(CultureInfo.InvariantCulture)} files.");
            if (new OutputFolder(target).Replace(files) is { } remark)
                terminal.Tell(remark);
            if (kept is not null)
                shelf.Keep(kept);
            PictureCache.Tidy();
            terminal.Print($"Published {site.Name}: {site.Overview.CountText}.\nOpen {Path.Combine(target, "index.html")} in a browser, or {Path.Combine(target, WorkbookName)} in a spreadsheet.\n");
            return ExitCode.Fine;
        });
        return command;
    }

    /// <summary>The charts of all pages and the pairs of captures; none, and a word of it, without a Chromium.</summary>
    private static IReadOnlyList<OutputFile> PageFrames(SiteReport site, IReadOnlyList<OutputFile> files, Progress progress, Terminal terminal)
    {
        if (Chromium.Find() is not { } chromium)
        {
            terminal.Tell($"No Chromium is on the path, so the charts are not among the frames{(site.Captures.All.Count > 0 ? ", nor are the captures" : "")}.");
            return [];
        }

        using var studio = new FrameStudio(chromium, files, progress.Step);
        return [.. ChartFrames.Of(studio, files), .. CaptureFrames.Of(studio, site.Captures)];
    }

    /// <summary>The illustrations of all features in use, both panes with their words on one frame.</summary>
    private static List<OutputFile> Frames(SiteReport site, Progress progress) => site.Features.SelectMany(feature => PictureCatalog.AllFor(feature.Id)).Select(pair =>
    {
        progress.Step($"Drawing the frame of {pair.Id}.");
        return new OutputFile($"frames/{pair.Id}.png", pair.DrawForVideo().ToPng());
    }).ToList();
}
