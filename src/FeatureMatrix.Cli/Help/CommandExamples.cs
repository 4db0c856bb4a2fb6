namespace FeatureMatrix.Cli.Help;

/// <summary>
/// One to three examples of every command, for the help and the manual page. They run on the demo from the project's folder;
/// those of <c>new</c> build on each other, in the collection <c>my-bench</c> that the first of all starts.
/// </summary>
internal static class CommandExamples
{
    private static readonly Dictionary<string, Example[]> All = new(StringComparer.Ordinal)
    {
        [""] =
        [
            new("The demo as a site", "publish data/demo"),
            new("Why one cell says what it says", "explain \"Long Dusk Patrol\" beacon-32"),
            new("To begin a collection of one's own", "new collection my-bench"),
        ],
        ["publish"] =
        [
            new("The whole demo, into the folder out", "publish data/demo"),
            new("On the terms of one library, with a date", "publish --library sluice-evening --date 2026-03-14 --out evening"),
            new("As an edition that later ones are compared with", "publish --edition 2026-spring --date 2026-03-14 --note \"Two boards more.\""),
        ],
        ["preview"] = [new("The demo on this machine, following every change until it is stopped", "preview data/demo")],
        ["coverage"] =
        [
            new("Every title on every card", "coverage"),
            new("Two cards for one library, to be pasted into a forum", "coverage kite-2 beacon-32 --library sluice-evening --short --format forum"),
            new("One card, a column for each driver and system", "coverage tiller-64 --setups"),
        ],
        ["explain"] =
        [
            new("Why a title does what it does on a card", "explain \"Long Dusk Patrol\" beacon-32"),
            new("The same with one system only", "explain ferrymen kite-2 --os windows-98se"),
            new("Only the answer, on one library's terms", "explain peatfire tiller-64 --short --library sluice-evening"),
        ],
        ["compare"] = [new("Which of two cards for this library", "compare tiller-64 beacon-32 --library sluice-evening")],
        ["rank"] =
        [
            new("All cards for a library", "rank --library long-shelf"),
            new("The same on other terms, from a file", "rank --library long-shelf --policy data/policies/no-tinkering.yaml"),
            new("Three of them, as a spreadsheet reads it", "rank kite-2 kite-9 beacon-32 --library long-shelf --format csv"),
        ],
        ["driver"] = [new("Which driver for a library, and what each version changes", "driver kite-2 --os windows-98se --library sluice-evening")],
        ["wrappers"] =
        [
            new("All titles that need or gain by a wrapper", "wrappers"),
            new("On one card", "wrappers tiller-64"),
        ],
        ["plan"] =
        [
            new("The fewest cards and installs", "plan --library long-shelf"),
            new("With cards up to a price", "plan --library long-shelf --budget 60"),
        ],
        ["next"] = [new("What would decide between two cards", "next kite-2 beacon-32 --library sluice-evening")],
        ["worth"] = [new("What a card adds, and the most to pay", "worth kite-9 --library long-shelf")],
        ["losses"] = [new("What a card loses, title by title", "losses kite-9 --library long-shelf")],
        ["memory"] = [new("Modes and textures that fit", "memory kite-2 --library long-shelf")],
        ["whatif"] =
        [
            new("With another system", "whatif kite-2 --os windows-2000"),
            new("With another card", "whatif kite-2 --card beacon-32"),
            new("With less memory on the board", "whatif kite-2 --memory 8MiB"),
        ],
        ["bench"] =
        [
            new("Runs and ladders of a card", "bench --card kite-2"),
            new("All ladders, as CSV", "bench --show ladders --format csv"),
        ],
        ["against"] = [new("Two driver versions on one card", "against 6.31 5.12 --card kite-2")],
        ["headroom"] = [new("How high one can go and keep 30 frames a second", "headroom --floor 30 --card kite-2")],
        ["new collection"] = [new("A folder to begin with", "new collection reed-bench --name \"The reed bench\"")],
        ["new chip"] = [new("A chip", "new chip reed-1 --collection my-bench")],
        ["new card"] = [new("A card with that chip", "new card reed-8 --chip reed-1 --collection my-bench")],
        ["new specimen"] = [new("One board of that card", "new specimen reed-8-mine --card reed-8 --collection my-bench")],
        ["new driver"] = [new("A driver that lists the card", "new driver reed-9x --os windows-98se --card reed-8 --collection my-bench")],
        ["new engine"] = [new("An engine with one renderer", "new engine linnet --api \"direct3d 6\" --collection my-bench")],
        ["new title"] = [new("A title with one renderer", "new title marsh-lights --api \"direct3d 6\" --os windows-98se --collection my-bench")],
        ["new wrapper"] = [new("A wrapper", "new wrapper dimglass --api \"glide 2\" --on \"direct3d 7\" --collection my-bench")],
        ["new rig"] = [new("A PC", "new rig tower --collection my-bench")],
        ["new library"] = [new("A library of all titles so far", "new library winter --collection my-bench")],
        ["new observation"] = [new("That it ran on that card", "new observation marsh-lights-reed-8 --title marsh-lights --card reed-8 --driver \"reed-9x 1.0\" --os windows-98se --wrapper none --runs yes --collection my-bench")],
        ["check"] =
        [
            new("Faults, then what is missing most", "check"),
            new("How much is recorded of each card", "check --cards"),
            new("Stale prices too, and the faults for a code review", "check --date 2026-11-25 --sarif faults.sarif"),
        ],
        ["editions"] = [new("Those kept so far", "editions")],
        ["workbook"] = [new("The collection, to edit", "workbook --out collection.xlsx")],
        ["worksheet"] = [new("The open tests of a card", "worksheet kite-2 --open --out bench.xlsx")],
        ["repeat"] = [new("One result, for somebody else's bench", "repeat peatfire kite-2 --out repeat.xlsx")],
        ["schema"] = [new("To keep beside a collection", "schema")],
        ["import opengl"] =
        [
            new("What would change", "import opengl report.txt --card kite-2 --driver kestrin-kite-9x@6.31"),
            new("For a driver that is not recorded yet", "import opengl report.txt --card kite-2 --driver new --os windows-98se --write"),
        ],
        ["import dump"] = [new("What the probe wrote", "import dump dump.txt --card lantern-7 --driver new --os windows-98se --write")],
        ["import inf"] = [new("Whether a package lists a card", "import inf driver.inf --card kite-2")],
        ["import title"] = [new("What a title's programs ask for", "import title \"Gravel Tide\" --os windows-98se")],
        ["import runs"] = [new("A bench log", "import runs spring-log.csv --write")],
        ["import workbook"] =
        [
            new("What would change", "import workbook collection.xlsx"),
            new("And to write it", "import workbook collection.xlsx --write"),
        ],
        ["import worksheet"] = [new("A worksheet that was filled in", "import worksheet bench.xlsx --write")],
        ["import sheet"] =
        [
            new("A mapping to begin with", "import sheet winter-list.csv"),
            new("What would change", "import sheet winter-list.csv winter-list.sheet"),
        ],
        ["identify"] = [new("Which card this is", "identify \"PCI\\VEN_1234&DEV_5678\"")],
        ["chips"] =
        [
            new("Eight memory chips on the front, none on the back", "chips --front 8 --back 0 --width 16 --density 16"),
            new("Only the front was seen", "chips --front 4 --width 32"),
        ],
        ["difference"] = [new("What another driver changed", "difference old-driver.txt new-driver.txt")],
        ["fit"] = [new("Whether a card's documents agree with a PC's", "fit kite-2 kettle-450")],
        ["completion"] = [new("The script for bash; in ~/.bashrc it is loaded by source <(featmatrix completion bash)", "completion bash")],
        ["manual"] = [new("The page; saved as featmatrix.1, it is read by man ./featmatrix.1", "manual")],
    };

    /// <summary>The commands that have examples; the empty one is the program without a command.</summary>
    public static IEnumerable<string> Commands => All.Keys;

    /// <summary>The examples of a command, by its words; none for one that only groups others.</summary>
    public static IReadOnlyList<Example> Of(string path) => All.GetValueOrDefault(path, []);
}
