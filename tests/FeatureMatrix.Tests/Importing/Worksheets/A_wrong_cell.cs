namespace FeatureMatrix.Tests.Importing.Worksheets;

/// <summary>One cell typed wrong in a worksheet that is otherwise in order: the fault names the sheet and the cell, and nothing is imported.</summary>
public sealed class A_wrong_cell
{
    [Theory]
    [InlineData("Observations/title", "low-mits")]
    [InlineData("Observations/title", "")]
    [InlineData("Observations/renderer", "glied")]
    [InlineData("Observations/card", "dunne")]
    [InlineData("Observations/card", "")]
    [InlineData("Observations/specimen", "dune-z")]
    [InlineData("Observations/driver", "sand-9x 9.9")]
    [InlineData("Observations/driver", "gravel 1.0")]
    [InlineData("Observations/os", "windows-3")]
    [InlineData("Observations/wrapper", "duskglass@1")]
    [InlineData("Observations/mode", "wide")]
    [InlineData("Observations/depth", "many")]
    [InlineData("Observations/rig", "cellar")]
    [InlineData("Observations/runs", "perhaps")]
    [InlineData("Observations/feature 1", "fog-tabel")]
    [InlineData("Observations/seen 1", "a bit")]
    [InlineData("Observations/seen 5", "yes")]
    [InlineData("Observations/date", "14.3.2026")]
    [InlineData("Observations/date", "")]
    [InlineData("Observations/by", "")]
    [InlineData("Observations/grade", "sure")]
    [InlineData("Observations/runs/1", "ran")]
    [InlineData("Observations/note/1", "date")]
    [InlineData("Runs/title", "low-mits")]
    [InlineData("Runs/title", "")]
    [InlineData("Runs/card", "dunne")]
    [InlineData("Runs/renderer", "glied")]
    [InlineData("Runs/driver", "gravel 1.0")]
    [InlineData("Runs/os", "windows-3")]
    [InlineData("Runs/rig", "cellar")]
    [InlineData("Runs/width", "six hundred")]
    [InlineData("Runs/width", "0")]
    [InlineData("Runs/depth", "16.5")]
    [InlineData("Runs/fps", "fast")]
    [InlineData("Runs/fps", "-3")]
    [InlineData("Runs/min-fps", "31,0,0")]
    [InlineData("Runs/vsync", "maybe")]
    [InlineData("Runs/date", "yesterday")]
    [InlineData("Runs/date", "")]
    [InlineData("Runs/by", "")]
    [InlineData("Runs/fps/1", "frames")]
    public void Is_named_by_sheet_and_cell(string cell, string text)
    {
        var import = FilledSheet.Import(FilledSheet.With(FilledSheet.Sound.Append((cell, text))));
        var place = $"{cell.Split('/')[0]}!{FilledSheet.AddressOf(cell)}";
        Assert.Contains(import.Faults, fault => fault.Place == place);
        Assert.Empty(import.Files);
    }

    [Fact]
    public void In_a_name_that_leads_out_of_the_folder_is_refused()
    {
        var saved = new Support.SavedWorkbook(FilledSheet.Empty);
        Assert.Equal("attic-march", saved["Read me", "B2"]);
        var import = Importing(("Read me", "../../elsewhere"));
        Assert.Contains(import.Faults, fault => fault.Place == "Read me!B2");
        Assert.Empty(import.Files);
    }

    [Fact]
    public void Is_the_whole_file_where_it_is_no_workbook()
    {
        foreach (var bytes in new[] { [], "title;card\n"u8.ToArray(), FilledSheet.Empty[..2000] })
            Assert.Equal(["the file"], FilledSheet.Import(bytes).Faults.Select(fault => fault.Place));
    }

    private static FeatureMatrix.Importing.Worksheets.WorksheetImport Importing((string Sheet, string Name) name) =>
        FilledSheet.Import(FilledSheet.With(FilledSheet.Sound, at: [(name.Sheet, "B2", name.Name)]));
}
