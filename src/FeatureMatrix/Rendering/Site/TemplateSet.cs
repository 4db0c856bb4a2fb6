using System.Collections.Concurrent;
using System.Reflection;
using FeatureMatrix.Loading.Faults;
using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace FeatureMatrix.Rendering.Site;

/// <summary>
/// Templates and plain files by folder and name, such as <c>pages/card.html</c>. A file of the user's folder takes the place of ours with
/// the same name, so that a folder with one changed file is enough.
/// </summary>
public sealed class TemplateSet : ITemplateLoader
{
    /// <summary>The largest file of a template folder, in bytes; pictures and fonts are well below it.</summary>
    public const int LargestFile = 16 * 1024 * 1024;

    /// <summary>The largest template, in bytes; ours are below a hundredth.</summary>
    public const int LargestTemplate = 512 * 1024;

    private const int MostMessages = 20;

    private const string Plain = "site/";
    private const string Pages = "pages";

    private static readonly string[] Rooms = [Pages, "parts", "site"];

    /// <summary>Turns of all loops of a template: a page of 5,000 by 100 cells takes half a million.</summary>
    private const int MostTurns = 10_000_000;

    private readonly IReadOnlyDictionary<string, SourceFile> _files;
    private readonly ConcurrentDictionary<string, Template> _parsed = [];
    private readonly ConcurrentBag<TemplateContext> _idle = [];

    private TemplateSet(IReadOnlyDictionary<string, SourceFile> files) => _files = files;

    private sealed record SourceFile(string Name, string Origin, byte[] Bytes);

    /// <summary>The files that are copied beside the pages as they are: all of the folder <c>site</c>.</summary>
    public IEnumerable<(string Name, byte[] Bytes)> PlainFiles => _files.Values
        .Where(file => file.Name.StartsWith(Plain, StringComparison.Ordinal))
        .OrderBy(file => file.Name, StringComparer.Ordinal).Select(file => (file.Name[Plain.Length..], file.Bytes));

    /// <summary>Reads our templates and, over them, the user's.</summary>
    /// <param name="ours">The folder that comes with the program.</param>
    /// <param name="users">A folder with changed or added files; null for none.</param>
    /// <exception cref="TemplateFaultException">A file lies where no page would find it, or is too large.</exception>
    public static TemplateSet Read(string ours, string? users)
    {
        var files = new Dictionary<string, SourceFile>();
        foreach (var folder in users is null ? [ours] : new[] { ours, users })
        {
            foreach (var path in Directory.EnumerateFileSystemEntries(folder).Where(path => !IsPassedOver(path)))
            {
                if (!Rooms.Contains(Path.GetFileName(path)) || !Directory.Exists(path))
                    throw new TemplateFaultException($"{path} is in none of the folders that templates have: {string.Join(", ", Rooms)}. Nothing would be made of it.");
            }

            foreach (var room in Rooms.Where(room => Directory.Exists(Path.Combine(folder, room))))
            {
                foreach (var path in Directory.EnumerateFiles(Path.Combine(folder, room)).Where(path => !IsPassedOver(path)))
                {
                    var name = $"{room}/{Path.GetFileName(path)}";
                    var isPlain = name.StartsWith(Plain, StringComparison.Ordinal);
                    if (new FileInfo(path).Length > (isPlain ? LargestFile : LargestTemplate))
                        throw new TemplateFaultException(isPlain ? $"{path} is larger than 16 MiB; no file of a site is." : $"{path} is larger than 512 KiB; no template is.");
                    if (folder == users && room == Pages && !files.ContainsKey(name))
                        throw new TemplateFaultException($"{path}: there is no page of that name.{Suggestion(name, files.Keys)}");
                    files[name] = new SourceFile(name, path, File.ReadAllBytes(path));
                }
            }
        }

        return new TemplateSet(files);
    }

    /// <summary>Renders a template with some globals. May be called from several threads at once.</summary>
    public string Render(string name, ScriptObject globals)
    {
        // A context keeps included templates parsed and knows the members of reports, so one that has finished a page serves the next.
        var context = _idle.TryTake(out var idle) ? idle : NewContext();
        context.PushGlobal(globals);
        try
        {
            var page = Parse(name).Render(context);
            context.PopGlobal();
            _idle.Add(context);
            return page;
        }
        catch (ScriptRuntimeException problem)
        {
            throw new TemplateFaultException(Describe(problem));
        }
    }

    /// <summary>Members are named as in C#, in small letters with underscores: <c>PolicyText</c> is <c>policy_text</c>.</summary>
    public static string Rename(MemberInfo member) => StandardMemberRenamer.Default(member);

    string ITemplateLoader.GetPath(TemplateContext context, SourceSpan callerSpan, string templateName) => Find(templateName).Origin;

    string ITemplateLoader.Load(TemplateContext context, SourceSpan callerSpan, string templatePath) =>
        Text(_files.Values.First(file => file.Origin == templatePath));

    ValueTask<string?> ITemplateLoader.LoadAsync(TemplateContext context, SourceSpan callerSpan, string templatePath) =>
        ValueTask.FromResult<string?>(((ITemplateLoader)this).Load(context, callerSpan, templatePath));

    private TemplateContext NewContext() => new()
    {
        LoopLimit = MostTurns,
        LimitToString = 0,
        RecursiveLimit = 200,
        StrictVariables = true,
        EnableRelaxedMemberAccess = false,
        EnableRelaxedTargetAccess = false,
        TemplateLoader = this,
        NewLine = "\n",
        MemberRenamer = Rename,
    };

    private Template Parse(string name) => _parsed.GetOrAdd(name, _ =>
    {
        var file = Find(name);
        var template = Template.Parse(Text(file), file.Origin);
        return template.HasErrors ? throw new TemplateFaultException(string.Join('\n', template.Messages.Take(MostMessages))) : template;
    });

    private SourceFile Find(string name) =>
        _files.TryGetValue(name, out var file) ? file : throw new TemplateFaultException($"There is no template {name}.");

    private static string Text(SourceFile file) => System.Text.Encoding.UTF8.GetString(file.Bytes).Replace("\r\n", "\n", StringComparison.Ordinal);

    /// <summary>Texts about templates and hidden files. What a link leads to belongs to somebody else; copied into a site it would be published.</summary>
    private static bool IsPassedOver(string path) =>
        Path.GetFileName(path).StartsWith('.') || path.EndsWith(".md", StringComparison.Ordinal) || new FileInfo(path).LinkTarget is not null;

    private static string Suggestion(string name, IEnumerable<string> known) =>
        Nearest.To(name, known) is { } near ? $" Did you mean {Path.GetFileName(near)}?" : "";

    private static string Describe(ScriptRuntimeException problem)
    {
        for (Exception? inner = problem; inner is not null; inner = inner.InnerException)
        {
            if (inner is TemplateFaultException)
                return inner.Message;
        }

        return problem.Message;
    }
}
