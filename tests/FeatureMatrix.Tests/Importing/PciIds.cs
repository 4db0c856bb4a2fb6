using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Tests.Importing.Fuzzing;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing;

public class Reading_a_pci_id_list
{
    private const string List = """
        # a comment

        f0a1  Greywater (works)
        	0007  NL7
        		f0b2 1234  Lantern 7
        f0b2  Lantern
        C 03  Display controller
        	00  VGA compatible controller
        		00  VGA controller
        """;

    private static PciNames Names(PciCard card, string list = List) => PciNames.Of(card, new StringReader(list));

    [Fact]
    public void Board_is_named_part_by_part() => Assert.Equal(
        new PciNames(
            "Greywater (works)", "NL7", "Lantern", "Lantern 7",
            "Display controller", "VGA compatible controller", "VGA controller"),
        Names(new PciCard(new PciDevice(0xF0A1, 7), new PciSubsystem(0x1234, 0xF0B2), 1, new PciClass(3, 0, 0))));

    [Fact]
    public void Swapped_subsystem_is_not_the_board() => Assert.Equal(
        new PciNames("Greywater (works)", "NL7"),
        Names(new PciCard(new PciDevice(0xF0A1, 7), new PciSubsystem(0xF0B2, 0x1234))));

    [Fact]
    public void Silence_names_nothing() => Assert.Equal(new PciNames(), Names(new PciCard(new PciDevice(1, 2))));

    [Fact]
    public void Lines_that_fit_nowhere_are_faults_and_own_nothing() => Assert.Equal(
        [
            new PciIdFault(1, "\t0001  orphan"),
            new PciVendorEntry(2, 0xF0A1, "Greywater"),
            new PciIdFault(3, "\t00x1  bad number"),
            new PciIdFault(4, "S 01  another kind of section"),
            new PciIdFault(5, "\t0007  belongs to the line above"),
        ],
        PciIdList.Read(new StringReader(
            "\t0001  orphan\r\nf0a1  Greywater\n\t00x1  bad number\nS 01  another kind of section\n\t0007  belongs to the line above")));

    [Fact]
    public void Overlong_line_is_cut()
    {
        var entry = Assert.Single(PciIdList.Read(new StringReader("f0a1  " + new string('x', 100_000))));
        Assert.Equal(PciIdList.LongestLine - 6, entry.Name.Length);
    }
}

public class Feeding_the_id_readers_rubbish
{
    private static readonly byte[] List = Encoding.Latin1.GetBytes(
        "f0a1  Greywater\n\t0007  NL7\n\t\tf0b2 1234  Lantern 7\nC 03  Display controller\n\t00  VGA\n\t\t00  VGA controller\n");

    [Fact]
    public void List_gives_one_entry_a_line() => FeedList(1500);

    [Fact]
    public void Id_that_reads_writes_itself_back() => FeedId(3000);

    [Fact, Trait("Category", "campaign")]
    public void Readers_answer_for_every_input_of_a_long_campaign()
    {
        FeedList(200_000);
        FeedId(400_000);
    }

    private static void FeedList(int inputs) => Rubbish.Feed(inputs, List, bytes =>
    {
        var text = Encoding.Latin1.GetString(bytes);
        var lines = text.Split('\n').Count(l => l.Replace("\r", "", StringComparison.Ordinal) is { Length: > 0 } line && line[0] != '#');
        Assert.Equal(lines, PciIdList.Read(new StringReader(text)).Count());
    });

    private static void FeedId(int inputs) => Rubbish.Feed(inputs, Encoding.ASCII.GetBytes(@"PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2&REV_0A"), bytes =>
    {
        var text = Encoding.Latin1.GetString(bytes);
        if (HardwareId.TryParse(text, out var id, out var faultAt))
            Assert.Equal(text, id!.ToString(), ignoreCase: true);
        else
            Assert.InRange(faultAt, 0, text.Length);
    });
}

/// <summary>Against the list that Debian packages, read a second way: by the shape of its lines alone.</summary>
public class Reading_the_packaged_pci_id_list
{
    private static string Packaged => External.File("/usr/share/misc/pci.ids", "pci.ids");

    private static StreamReader Open() => new(Packaged, Encoding.UTF8);

    [Fact]
    public void Every_line_is_understood_and_counted()
    {
        var entries = PciIdList.Read(Open()).ToList();
        var lines = File.ReadAllLines(Packaged).Where(l => l.Length > 0 && l[0] != '#').ToList();
        var classes = lines.FindIndex(l => l.StartsWith("C ", StringComparison.Ordinal));
        var devices = lines.Take(classes).ToList();
        var kinds = lines.Skip(classes).ToList();
        Assert.Equal(
            (0, Depth(devices, 0), Depth(devices, 1), Depth(devices, 2), Depth(kinds, 0), Depth(kinds, 1), Depth(kinds, 2)),
            (entries.OfType<PciIdFault>().Count(),
                entries.OfType<PciVendorEntry>().Count(),
                entries.OfType<PciDeviceEntry>().Count(),
                entries.OfType<PciSubsystemEntry>().Count(),
                entries.OfType<PciBaseClassEntry>().Count(),
                entries.OfType<PciClassEntry>().Count(e => e.Class.Interface is null),
                entries.OfType<PciClassEntry>().Count(e => e.Class.Interface is not null)));

        static int Depth(List<string> lines, int tabs) => lines.Count(l => l.TakeWhile(c => c == '\t').Count() == tabs);
    }

    [Fact]
    public void Every_device_has_the_name_that_its_line_gives()
    {
        var expected = new List<string>();
        var vendor = "";
        foreach (var line in File.ReadLines(Packaged).TakeWhile(l => !l.StartsWith("C ", StringComparison.Ordinal)))
        {
            if (line.Length > 6 && char.IsAsciiHexDigit(line[0]))
                vendor = line[..4];
            else if (line.Length > 7 && line[0] == '\t' && line[1] != '\t')
                expected.Add($"{vendor} {line[1..5]} {line[7..].Trim()}");
        }

        Assert.Equal(
            expected,
            PciIdList.Read(Open()).OfType<PciDeviceEntry>().Select(e => $"{e.Device.Vendor:x4} {e.Device.Device:x4} {e.Name}"));
    }

    // Lines of pci.ids 0.0~2023.04.11-1: vendor 5333 with device 8a22 and its line "105d 0018", vendor 100c with device 3208.
    [Fact]
    public void Subsystem_line_is_found_by_the_id_that_windows_prints()
    {
        var lines = File.ReadAllLines(Packaged);
        var device = Array.FindIndex(lines, Array.FindIndex(lines, l => l.StartsWith("5333  ", StringComparison.Ordinal)),
            l => l.StartsWith("\t8a22  ", StringComparison.Ordinal));
        var board = Array.Find(lines[device..], l => l.StartsWith("\t\t105d 0018  ", StringComparison.Ordinal))!;
        Assert.True(HardwareId.TryParse(@"PCI\VEN_5333&DEV_8A22&SUBSYS_0018105D&REV_04", out var id, out _));
        var names = PciNames.Of(PciCard.From(id!)!, Open());
        Assert.Equal((lines[device][7..], board[13..]), (names.Device, names.Subsystem));
    }
}
