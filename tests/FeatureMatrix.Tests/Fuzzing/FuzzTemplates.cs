using System.Text;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Tests.Support;
using Scriban;
using Scriban.Runtime;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>Templates of a user's own, made of ours: they render, or a fault names file, line and column.</summary>
internal static class FuzzTemplates
{
    private const string Words = "subject edition root path tables heading for end if else include func ret capture wrap 1 0 -1 null html.escape array.size string.upcase | . [ ] ( ) { } name";

    private static readonly string Folder = Directory.CreateTempSubdirectory("fuzz-templates").FullName;

    public static FuzzFormat Format(int share)
    {
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Folder, recursive: true);
        string[] names = ["parts/tile.html", "pages/card.html", "pages/rig.html", "pages/frame.html", "pages/wrapper.html"];
        List<byte[]> seeds =
        [
            .. names.Select(name => File.ReadAllBytes(Repository.PathTo("templates", name))),
            "{{ for x in tables }}<b>{{ x | html.escape }}</b>\n{{ end }}\n{{ if subject.name == 'a' }}y\n{{ else }}n\n{{ end }}\n"u8.ToArray(),
            "{{ a = [1, 2, 3] | array.reverse }}\n{{ a[0] + heading.size }}\n{{ capture b }}x{{ path }}{{ end }}\n{{ b | string.upcase | string.slice 0 2 }}\n"u8.ToArray(),
        ];
        return new FuzzFormat("templates", share, Read, new Mutator(seeds, [.. Words.Split(' ').Select(Encoding.UTF8.GetBytes)]).Input);
    }

    private static bool Read(byte[] input)
    {
        var path = Path.Combine(Folder, $"t{Environment.CurrentManagedThreadId}");
        Directory.CreateDirectory(Path.Combine(path, "pages"));
        File.WriteAllBytes(Path.Combine(path, "pages", "x.html"), input);
        var globals = new ScriptObject
        {
            ["subject"] = new ScriptObject { ["name"] = "a" },
            ["root"] = "../",
            ["path"] = "cards/a.html",
            ["heading"] = "A",
            ["tables"] = new[] { "one", "two" },
        };
        SiteFunctions.AddTo(globals, "cards/a.html", "../");
        try
        {
            _ = TemplateSet.Read(path, null).Render("pages/x.html", globals);
            return true;
        }
        catch (TemplateFaultException fault)
        {
            Assert.NotEmpty(fault.Message);
            return input.Length <= TemplateSet.LargestTemplate && !Template.Parse(Encoding.UTF8.GetString(input)).HasErrors;
        }
    }
}
