using System.IO.Compression;
using System.Text;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Tests.Importing.Worksheets;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>Filled worksheets whose parts somebody changed, in packages that are mostly in order.</summary>
internal static class FuzzWorksheets
{
    private static readonly Lazy<IReadOnlyList<(string Name, byte[] Bytes)>> Parts = new(Unpacked);

    private static readonly byte[][] Words =
        [.. "0 1 -1 99999999999 s inlineStr b str A1 ZZZZ9 XFD1048576 sheet1 rId1 Observations Runs yes no 640x480 &amp; &#0; x".Split(' ').Select(Encoding.UTF8.GetBytes)];

    public static FuzzFormat Format(int share) => new("XLSX worksheets", share, Read, Input);

    private static bool Read(byte[] input) => WorksheetReader.Read(input).Faults.All(fault => fault.Message != WorksheetFaultTexts.NoWorkbook);

    // The sheets have one line of XML each: a line end before every row and cell gives the mutator something to take hold of.
    private static IReadOnlyList<(string Name, byte[] Bytes)> Unpacked()
    {
        using var package = new ZipArchive(new MemoryStream(FilledSheet.With(FilledSheet.Sound)));
        return [.. package.Entries.Select(entry =>
        {
            using var reader = new StreamReader(entry.Open());
            return (entry.FullName, Encoding.UTF8.GetBytes(reader.ReadToEnd().Replace("<row", "\n<row", StringComparison.Ordinal).Replace("<c ", "\n<c ", StringComparison.Ordinal)
                .Replace("<x:row", "\n<x:row", StringComparison.Ordinal).Replace("<x:c ", "\n<x:c ", StringComparison.Ordinal)));
        })];
    }

    private static byte[] Input(int number)
    {
        // What decides whether it is a workbook at all is changed in one input of ten.
        var inside = Parts.Value.Where(part => part.Name.Contains("/worksheets/", StringComparison.Ordinal) || part.Name.EndsWith("sharedStrings.xml", StringComparison.Ordinal) || part.Name.EndsWith("styles.xml", StringComparison.Ordinal)).ToList();
        var chosen = (number % 10 == 8 ? Parts.Value[number / 10 % Parts.Value.Count] : inside[number % inside.Count]).Name;
        var stream = new MemoryStream();
        using (var package = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in Parts.Value)
            {
                using var entry = package.CreateEntry(name, CompressionLevel.NoCompression).Open();
                entry.Write(name == chosen ? Mutated(bytes, number) : bytes);
            }
        }

        return number % 20 == 9 ? new Mutator([stream.ToArray()], Words).Input(number) : stream.ToArray();
    }

    // Damage that keeps the XML in form is what gets far: words in place of others, whole lines lost or doubled.
    private static byte[] Mutated(byte[] part, int number)
    {
        var random = new Random(number);
        if (random.Next(8) == 0)
            return new Mutator([part], Words).Input(number);
        var lines = Encoding.UTF8.GetString(part).Split('\n').ToList();
        for (var changes = random.Next(1, 3); changes > 0; changes--)
        {
            var at = random.Next(lines.Count);
            var word = Encoding.UTF8.GetString(Words[random.Next(Words.Length)]);
            var quotes = lines[at].Split('"');
            if (quotes.Length < 3)
                continue;
            quotes[((random.Next(quotes.Length - 1) / 2) * 2) + 1] = word;
            lines[at] = string.Join('"', quotes);
        }

        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }
}
