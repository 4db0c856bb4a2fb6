using System.CommandLine;
using FeatureMatrix.Importing;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Memory and bus width from what a photo shows.</summary>
internal static class ChipsCommand
{
    public static Command Create(Terminal terminal)
    {
        var front = Count("--front", "Memory chips seen on the front.");
        var back = Count("--back", "Memory chips on the back; 0 for none. Leave it out where it was not seen.");
        var width = Count("--width", "Data width of one chip in bits, from the data sheet of its marking: 4, 8, 16 or 32.");
        var density = Count("--density", "Density of one chip in Mbit, from the data sheet of its marking.");
        var banks = Count("--banks", "Chips that share each data line.");
        var memory = Count("--memory", "Memory in KiB where a document, sticker or start-up screen tells it.");
        var bus = Count("--bus", "Bus width in bits where a document tells it.");
        var command = new Command("chips", "Before buying: work out memory and bus width from the memory chips that a photo shows, and which further photo would settle it.")
        {
            front, back, width, density, banks, memory, bus, TableOptions.FormatOption,
        };
        command.SetAction(parsed =>
        {
            foreach (var option in new[] { front, back, width, density, banks, memory, bus }.Where(option => parsed.GetValue(option) < 0))
                throw new UsageException($"{option.Name} cannot be less than 0.");
            var reading = new MemoryChipReading
            {
                Front = parsed.GetValue(front),
                Back = parsed.GetValue(back),
                WidthBits = parsed.GetValue(width),
                Megabits = parsed.GetValue(density),
                Banks = parsed.GetValue(banks),
                Kibibytes = parsed.GetValue(memory),
                BusBits = parsed.GetValue(bus),
            };
            TableOptions.Print(terminal, parsed, MemoryChipReport.Of(MemoryChips.Candidates(reading)));
            return ExitCode.Fine;
        });
        return command;

        static Option<int?> Count(string name, string description) => new(name) { Description = description, HelpName = "number" };
    }
}
