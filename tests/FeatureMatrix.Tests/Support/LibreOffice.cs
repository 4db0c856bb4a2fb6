using System.Diagnostics;

namespace FeatureMatrix.Tests.Support;

/// <summary>LibreOffice without a window, each time with a fresh profile of its own, told to recalculate every file it opens.</summary>
internal static class LibreOffice
{
    // By default it trusts the cached values of other programs' files, and a comparison with them would prove nothing.
    private const string AlwaysRecalculate =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <oor:items xmlns:oor="http://openoffice.org/2001/registry">
        <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
        </oor:items>
        """;

    /// <summary>The workbook opened, recalculated and saved again.</summary>
    public static byte[] Recalculate(byte[] workbook) => Convert(workbook, "xlsx");

    /// <summary>The workbook opened, recalculated and saved in another format, which its file extension names.</summary>
    public static byte[] Convert(byte[] workbook, string format)
    {
        var soffice = External.Command("soffice", "libreoffice-calc-nogui");
        var folder = Directory.CreateTempSubdirectory("featurematrix-office-");
        try
        {
            var profile = folder.CreateSubdirectory("profile").CreateSubdirectory("user");
            File.WriteAllText(Path.Combine(profile.FullName, "registrymodifications.xcu"), AlwaysRecalculate);
            var input = Path.Combine(folder.FullName, "book.xlsx");
            File.WriteAllBytes(input, workbook);
            var output = Path.Combine(folder.CreateSubdirectory("out").FullName, $"book.{format}");
            var start = new ProcessStartInfo(soffice)
            {
                ArgumentList =
                {
                    "--headless", "--norestore", $"-env:UserInstallation=file://{profile.Parent!.FullName}",
                    "--convert-to", format, "--outdir", Path.GetDirectoryName(output)!, input,
                },
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            using var process = Process.Start(start)!;
            var said = process.StandardOutput.ReadToEndAsync();
            var complained = process.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.True(File.Exists(output), $"soffice wrote nothing: {said.Result}{complained}");
            return File.ReadAllBytes(output);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
